scantling = 1

# The built-in metric shop: a small workshop with common machines. Replace it by
# your own: sizes are what your rule says, limits what your manuals say.
shop "Metric workshop" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 18
  humidity_now = 45 # percent, read today
  humidity_dry = 35 # where the chest will live, winter
  humidity_wet = 65 # and late summer
}

# ---------------------------------------------------------------- the rack

board "cherry 27" {
  species   = "black cherry"
  state     = "rough"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 4
  price     = 38.00
  sawn      = "flat"
}

board "cherry planed 20" {
  species   = "black cherry"
  state     = "planed"
  nominal   = "20 mm"
  length    = 1800
  width     = 145
  thickness = 19.6
  count     = 2
  price     = 31.50
  sawn      = "flat"
}

board "walnut 27" {
  species   = "black walnut"
  state     = "rough"
  length    = 2400
  width     = 180
  thickness = 27
  count     = 0 # to be bought
  price     = 64.00
  sawn      = "flat"
}

board "maple 27" {
  species   = "hard maple"
  state     = "rough"
  length    = 2100
  width     = 160
  thickness = 27
  count     = 1
  price     = 36.00
  sawn      = "flat"
}

board "maple planed 13" {
  species   = "hard maple"
  state     = "planed"
  nominal   = "13 mm"
  length    = 1800
  width     = 140
  thickness = 12.8
  count     = 2
  price     = 24.00
  sawn      = "flat"
}

sheet "birch ply 4" {
  kind      = "birch plywood"
  nominal   = 4
  thickness = 3.8
  length    = 1220
  width     = 610
  count     = 0
  price     = 14.50
  grain     = "length"
}

sheet "birch ply 6" {
  kind      = "birch plywood"
  nominal   = 6
  thickness = 5.6
  length    = 1220
  width     = 610
  count     = 1
  price     = 17.00
  grain     = "length"
}

# ---------------------------------------------------------------- machines, from their manuals

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

# ---------------------------------------------------------------- cutters in the drawer

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

# A drill index as sold, 1 to 10 in halves: common practice, no source.
cutter "drill 1" {
  kind     = "drill"
  diameter = 1
}

cutter "drill 1.5" {
  kind     = "drill"
  diameter = 1.5
}

cutter "drill 2" {
  kind     = "drill"
  diameter = 2
}

cutter "drill 2.5" {
  kind     = "drill"
  diameter = 2.5
}

cutter "drill 3" {
  kind     = "drill"
  diameter = 3
}

cutter "drill 3.5" {
  kind     = "drill"
  diameter = 3.5
}

cutter "drill 4" {
  kind     = "drill"
  diameter = 4
}

cutter "drill 4.5" {
  kind     = "drill"
  diameter = 4.5
}

cutter "drill 5" {
  kind     = "drill"
  diameter = 5
}

cutter "drill 5.5" {
  kind     = "drill"
  diameter = 5.5
}

cutter "drill 6" {
  kind     = "drill"
  diameter = 6
}

cutter "drill 6.5" {
  kind     = "drill"
  diameter = 6.5
}

cutter "drill 7" {
  kind     = "drill"
  diameter = 7
}

cutter "drill 7.5" {
  kind     = "drill"
  diameter = 7.5
}

cutter "drill 8" {
  kind     = "drill"
  diameter = 8
}

cutter "drill 8.5" {
  kind     = "drill"
  diameter = 8.5
}

cutter "drill 9" {
  kind     = "drill"
  diameter = 9
}

cutter "drill 9.5" {
  kind     = "drill"
  diameter = 9.5
}

cutter "drill 10" {
  kind     = "drill"
  diameter = 10
}

# ---------------------------------------------------------------- fittings and what they cost

fitting "panel pin 20" {
  price = 0.03
  count = 200
}

fitting "panel pin 25" {
  price = 0.03
  count = 200
}

fitting "turn button" {
  price = 0.80
  count = 0
}

# ---------------------------------------------------------------- habits of this house

rule "depth per pass" {
  length = 3
  why    = "hardwood, round-nose cutters: this maker's habit"
}
