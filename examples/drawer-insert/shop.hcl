scantling = 1

# An inch rule on the bench, a metric kitchen.
shop "Workshop with an inch rule" {
  units       = "mm"
  region      = "en-US"
  currency    = "USD"
  resolution  = 0.1
  denominator = 32

  temperature  = 20
  humidity_now = 45
  humidity_dry = 35
  humidity_wet = 65
}

board "basswood 12" {
  species   = "American basswood"
  state     = "planed"
  length    = 1500
  width     = 150
  thickness = 12
  count     = 3
  price     = 14.00
  sawn      = "flat"
}

sheet "birch ply 4" {
  kind      = "birch plywood"
  nominal   = 4
  length    = 1220
  width     = 610
  count     = 1
  price     = 14.50
  grain     = "length"
}

machine "table saw" {
  kind         = "table saw"
  kerf         = 3
  least_length = 150
  least_rip    = 5
  most_width   = 610
  most_height  = 75
  accuracy     = 0.2
}

machine "jointer" {
  kind            = "jointer"
  least_length    = 300
  most_width      = 150
  least_thickness = 6
  accuracy        = 0.1
}

machine "thicknesser" {
  kind            = "thicknesser"
  least_length    = 305
  most_width      = 300
  least_thickness = 6
  accuracy        = 0.1
}

machine "router table" {
  kind         = "router table"
  least_length = 150
  most_fence   = 320
  shank        = 12.7
  accuracy     = 0.1
}

cutter "straight 6.35" {
  kind           = "straight"
  diameter       = 6.35
  cutting_length = 19
  rpm_most       = 24000
}

cutter "straight 8" {
  kind           = "straight"
  diameter       = 8
  cutting_length = 19
  rpm_most       = 24000
}
