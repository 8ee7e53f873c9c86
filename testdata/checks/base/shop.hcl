scantling = 1

shop "Small shop" {
  units = "mm"
  temperature  = 18
  humidity_now = 45
  humidity_dry = 35
  humidity_wet = 65
}

board "cherry 27" {
  species   = "black cherry"
  state     = "rough"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 6
  price     = 38
  sawn      = "flat"
}
