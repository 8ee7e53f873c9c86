scantling = 1

shop "Workshop with one sheet" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 20
  humidity_now = 50
  humidity_dry = 35
  humidity_wet = 65

  trim_ends  = 5
  trim_edges = 5
}

sheet "birch ply 18" {
  kind      = "birch plywood"
  nominal   = 18
  thickness = 17.6 # as it measures
  length    = 2440
  width     = 1220
  count     = 1
  price     = 92.00
  grain     = "length"
}

machine "table saw" {
  kind         = "table saw"
  kerf         = 3
  least_length = 150
  least_rip    = 5
  most_width   = 1250
  most_height  = 75
  accuracy     = 0.3
}

machine "router table" {
  kind         = "router table"
  least_length = 305
  most_fence   = 400
  shank        = 12.7
  accuracy     = 0.2
}

cutter "straight 12.7" {
  kind           = "straight"
  diameter       = 12.7
  cutting_length = 25
  shank          = 12.7
  rpm_most       = 22000
}

fitting "panel pin 25" {
  price = 0.03
  count = 100
}
