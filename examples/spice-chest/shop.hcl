scantling = 1

shop "Workshop with four cherry boards" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 20
  humidity_now = 50
  humidity_dry = 35
  humidity_wet = 65
}

board "cherry 27" {
  species   = "black cherry"
  state     = "rough"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 0
  price     = 48.00
  sawn      = "flat"
}

board "poplar 18" {
  species   = "yellow-poplar"
  state     = "planed"
  length    = 2400
  width     = 150
  thickness = 18
  count     = 0
  price     = 19.00
  sawn      = "flat"
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

fitting "panel pin 20" {
  price = 0.03
  count = 200
}

fitting "turn button" {
  price = 0.80
  count = 4
}

fitting "knob 25" {
  price = 2.40
}

machine "table saw" {
  kind          = "table saw"
  kerf          = 3
  least_length  = 150  # against the fence or the mitre gauge
  least_rip     = 5
  most_width    = 610
  most_height   = 75
  accuracy      = 0.2
}

machine "band saw" {
  kind         = "band saw"
  kerf         = 1.2
  least_length = 150
  most_height  = 150
  accuracy     = 0.5
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
  least_thickness = 4
  most_thickness  = 150
  accuracy        = 0.1
}

machine "router table" {
  kind         = "router table"
  least_length = 305
  most_fence   = 320 # cutter to fence, at most
  shank        = 12.7
  accuracy     = 0.1
}

machine "drill press" {
  kind     = "drill press"
  throat   = 160
  accuracy = 0.3
}

cutter "straight 6.35" {
  kind           = "straight"
  diameter       = 6.35
  cutting_length = 19
  rpm_most       = 24000
}

cutter "straight 12.7" {
  kind           = "straight"
  diameter       = 12.7
  cutting_length = 25
  rpm_most       = 22000
}

cutter "straight 3.2" {
  kind           = "straight"
  diameter       = 3.2
  cutting_length = 10
  rpm_most       = 24000
}

cutter "round-nose 3.2" {
  kind           = "round nose"
  diameter       = 3.2
  cutting_length = 8
  rpm_most       = 24000
}

cutter "round-nose 6.35" {
  kind           = "round nose"
  diameter       = 6.35
  cutting_length = 10
  rpm_most       = 24000
}

cutter "round-nose 12.7" {
  kind           = "round nose"
  diameter       = 12.7
  cutting_length = 12
  rpm_most       = 22000
}

cutter "rounding-over 1" {
  kind     = "rounding over"
  radius   = 1
  rpm_most = 22000
}

cutter "drill 1" {
  kind     = "drill"
  diameter = 1
}

cutter "drill 4.5" {
  kind           = "drill"
  diameter       = 4.5
  cutting_length = 50
}
