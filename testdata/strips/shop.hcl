scantling = 1

shop "Shelf shop" {
  units        = "mm"
  temperature  = 18
  humidity_now = 45
  humidity_dry = 35
  humidity_wet = 65
}

board "ash 27" {
  species   = "white ash"
  state     = "rough"
  length    = 2400
  width     = 200
  thickness = 27
  count     = 1
  price     = 40
  sawn      = "flat"
}

machine "saw" {
  kind      = "table saw"
  kerf      = 3
  least_rip = 30
}

machine "jointer" {
  kind         = "jointer"
  least_length = 300
  most_width   = 200
}

machine "thicknesser" {
  kind         = "thicknesser"
  least_length = 300
  most_width   = 300
}
