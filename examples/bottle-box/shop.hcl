scantling = 1

# Two lengths of walnut, a band saw for resawing, dividers bought at their thickness.
shop "Workshop with two lengths of walnut" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 18
  humidity_now = 50
  humidity_dry = 35
  humidity_wet = 65
}

board "walnut 27" {
  species   = "black walnut"
  state     = "rough"
  length    = 800
  width     = 100
  thickness = 27
  count     = 2
  price     = 24.00
  sawn      = "flat"
}

sheet "divider stock 5" {
  kind      = "birch plywood"
  nominal   = 5
  thickness = 5 # bought at this thickness and measured
  length    = 600
  width     = 300
  count     = 1
  price     = 9.00
}

sheet "birch ply 6" {
  kind      = "birch plywood"
  nominal   = 6
  thickness = 5.6 # as it measures
  length    = 1220
  width     = 610
  count     = 1
  price     = 16.00
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
  least_thickness = 10
  accuracy        = 0.1
}

machine "thicknesser" {
  kind            = "thicknesser"
  least_length    = 305
  most_width      = 300
  least_thickness = 6
  accuracy        = 0.1
}

machine "band saw" {
  kind       = "band saw"
  kerf       = 1.5
  most_width = 100
  accuracy   = 0.3
}

machine "router table" {
  kind         = "router table"
  least_length = 150
  most_fence   = 320
  shank        = 12.7
  accuracy     = 0.1
}

cutter "straight 5" {
  kind           = "straight"
  diameter       = 5
  cutting_length = 16
  rpm_most       = 24000
}

fitting "butt hinge 25" {
  price = 2.60
  count = 2
}
