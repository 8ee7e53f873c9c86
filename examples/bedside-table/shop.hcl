scantling = 1

# Rough ash in two thicknesses, drawer sides bought planed: there is no band saw to open a
# board with.
shop "Workshop with three boards of ash" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 18
  humidity_now = 38  # in February
  humidity_dry = 35
  humidity_wet = 65
}

board "ash 27" {
  species   = "American white ash"
  state     = "rough"
  length    = 2400
  width     = 180
  thickness = 27
  count     = 2
  price     = 31.00
  sawn      = "flat"
}

board "ash 52" {
  species   = "American white ash"
  state     = "rough"
  length    = 1500
  width     = 120
  thickness = 52
  count     = 1
  price     = 28.00
  sawn      = "flat"
}

board "drawer sides 10" {
  species   = "American white ash"
  state     = "finished" # used as it is bought
  length    = 1000
  width     = 100
  thickness = 10
  count     = 1
  price     = 14.00
  sawn      = "flat"
}

sheet "birch ply 6" {
  kind      = "birch plywood"
  nominal   = 6
  thickness = 5.6 # as it measures
  length    = 600
  width     = 600
  count     = 1
  price     = 9.00
}

fitting "panel pin 20" {
  price = 0.03
  count = 50
}

fitting "dowel 8" {
  price = 0.05
  count = 40
}

fitting "screw 4 x 35" {
  price = 0.08
  count = 20
}

fitting "turn button" {
  price = 0.80
  count = 1
}

fitting "knob 25" {
  price = 2.40
}

machine "table saw" {
  kind         = "table saw"
  kerf         = 3
  least_length = 150  # against the fence or the mitre gauge
  least_rip    = 5
  most_width   = 610
  most_height  = 75
  accuracy     = 0.2
}

machine "jointer" {
  kind            = "jointer"
  least_length    = 300
  most_width      = 200
  least_thickness = 10
  accuracy        = 0.1
}

machine "thicknesser" {
  kind            = "thicknesser"
  least_length    = 305
  most_width      = 300
  least_thickness = 6
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
  cutting_length = 32
  rpm_most       = 24000
}

cutter "straight 12.7" {
  kind           = "straight"
  diameter       = 12.7
  cutting_length = 32
  rpm_most       = 22000
}

cutter "straight 3.2" {
  kind           = "straight"
  diameter       = 3.2
  cutting_length = 10
  rpm_most       = 24000
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

cutter "drill 2.5" {
  kind           = "drill"
  diameter       = 2.5
  cutting_length = 50
}

cutter "drill 8" {
  kind           = "drill"
  diameter       = 8
  cutting_length = 60
}

cutter "drill 4.5" {
  kind           = "drill"
  diameter       = 4.5
  cutting_length = 50
}

rule "allowance end" {
  length = 12.5
  why    = "strips for a top creep in the clamps"
}

rule "allowance edge" {
  length = 3
  why    = "a top is cut to width after it is flat"
}
