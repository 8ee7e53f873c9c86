scantling = 1

# The built-in inch shop: a small workshop with common machines. Replace it by
# your own: sizes are what your rule says, limits what your manuals say.
shop "Inch workshop" {
  units       = "in"
  region      = "en-US"
  currency    = "USD"
  resolution  = "0.1 mm"
  denominator = 32

  temperature  = 20
  humidity_now = 45 # percent, read today
  humidity_dry = 30 # where the piece will live, winter
  humidity_wet = 65 # and late summer
}

# ---------------------------------------------------------------- the rack

board "cherry 4/4" {
  species   = "black cherry"
  state     = "rough"
  nominal   = "4/4"
  length    = "8 ft"
  width     = 7
  thickness = 1
  count     = 4
  price     = 46.00
  sawn      = "flat"
}

board "walnut 4/4" {
  species   = "black walnut"
  state     = "rough"
  nominal   = "4/4"
  length    = "8 ft"
  width     = 7
  thickness = 1
  count     = 0 # to be bought
  price     = 72.00
  sawn      = "flat"
}

board "maple 4/4" {
  species   = "hard maple"
  state     = "rough"
  nominal   = "4/4"
  length    = "8 ft"
  width     = 7
  thickness = 1
  count     = 2
  price     = 41.00
  sawn      = "flat"
}

board "maple 1/2 planed" {
  species   = "hard maple"
  state     = "planed"
  nominal   = "1/2"
  length    = "4 ft"
  width     = "5 1/2"
  thickness = "1/2"
  count     = 2
  price     = 19.00
  sawn      = "flat"
}

sheet "birch ply 1/4" {
  kind      = "birch plywood"
  nominal   = "1/4 in"
  thickness = "7/32"
  length    = "48 in"
  width     = "24 in"
  count     = 1
  price     = 19.50
  grain     = "length"
}

sheet "birch ply 1/8" {
  kind      = "birch plywood"
  nominal   = "1/8 in"
  thickness = "1/8"
  length    = "48 in"
  width     = "24 in"
  count     = 0
  price     = 14.00
  grain     = "length"
}

# ---------------------------------------------------------------- machines

machine "table saw" {
  kind         = "table saw"
  kerf         = "1/8"
  least_length = 6
  least_rip    = "1/4"
  most_width   = 24
  most_height  = 3
  accuracy     = "1/64"
}

machine "band saw" {
  kind         = "band saw"
  kerf         = "3/64"
  least_length = 6
  most_height  = 6
  accuracy     = "1/32"
}

machine "jointer" {
  kind            = "jointer"
  least_length    = 12
  most_width      = 6
  least_thickness = "3/8"
  accuracy        = "1/64"
}

machine "planer" {
  kind            = "thickness planer"
  least_length    = 12
  most_width      = 12
  least_thickness = "3/16"
  most_thickness  = 6
  accuracy        = "1/64"
}

machine "router table" {
  kind         = "router table"
  least_length = 12
  most_fence   = 12
  shank        = "1/2"
  accuracy     = "1/64"
}

machine "drill press" {
  kind     = "drill press"
  throat   = 6
  accuracy = "1/64"
}

# ---------------------------------------------------------------- cutters

cutter "straight 1/8" {
  kind           = "straight"
  diameter       = "1/8"
  cutting_length = "3/8"
  rpm_most       = 24000
}

cutter "straight 1/4" {
  kind           = "straight"
  diameter       = "1/4"
  cutting_length = "3/4"
  rpm_most       = 24000
}

cutter "straight 1/2" {
  kind           = "straight"
  diameter       = "1/2"
  cutting_length = 1
  rpm_most       = 22000
}

cutter "round-nose 1/8" {
  kind           = "round nose"
  diameter       = "1/8"
  cutting_length = "5/16"
  rpm_most       = 24000
}

cutter "round-nose 1/4" {
  kind           = "round nose"
  diameter       = "1/4"
  cutting_length = "3/8"
  rpm_most       = 24000
}

cutter "round-nose 1/2" {
  kind           = "round nose"
  diameter       = "1/2"
  cutting_length = "1/2"
  rpm_most       = 22000
}

cutter "rounding-over 1/16" {
  kind     = "rounding over"
  radius   = "1/16"
  rpm_most = 22000
}

# Drills as sold singly, by sixty-fourths to 1/4: common practice, no source.
cutter "drill 3/64" {
  kind     = "drill"
  diameter = "3/64"
}

cutter "drill 1/16" {
  kind     = "drill"
  diameter = "1/16"
}

cutter "drill 5/64" {
  kind     = "drill"
  diameter = "5/64"
}

cutter "drill 3/32" {
  kind     = "drill"
  diameter = "3/32"
}

cutter "drill 7/64" {
  kind     = "drill"
  diameter = "7/64"
}

cutter "drill 1/8" {
  kind     = "drill"
  diameter = "1/8"
}

cutter "drill 9/64" {
  kind     = "drill"
  diameter = "9/64"
}

cutter "drill 5/32" {
  kind     = "drill"
  diameter = "5/32"
}

cutter "drill 11/64" {
  kind     = "drill"
  diameter = "11/64"
}

cutter "drill 3/16" {
  kind     = "drill"
  diameter = "3/16"
}

cutter "drill 13/64" {
  kind     = "drill"
  diameter = "13/64"
}

cutter "drill 7/32" {
  kind     = "drill"
  diameter = "7/32"
}

cutter "drill 15/64" {
  kind     = "drill"
  diameter = "15/64"
}

cutter "drill 1/4" {
  kind     = "drill"
  diameter = "1/4"
}

cutter "drill 5/16" {
  kind     = "drill"
  diameter = "5/16"
}

cutter "drill 3/8" {
  kind     = "drill"
  diameter = "3/8"
}

cutter "drill 7/16" {
  kind     = "drill"
  diameter = "7/16"
}

cutter "drill 1/2" {
  kind     = "drill"
  diameter = "1/2"
}

# ---------------------------------------------------------------- fittings

fitting "panel pin 20" {
  price = 0.03
  count = 200
}

fitting "panel pin 25" {
  price = 0.03
  count = 200
}

fitting "turn button" {
  price = 0.90
  count = 0
}

# ---------------------------------------------------------------- habits of this house

rule "depth per pass" {
  length = "1/8"
  why    = "hardwood, round-nose cutters: a common habit"
}
