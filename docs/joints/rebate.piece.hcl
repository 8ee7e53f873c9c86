# title: Rebate
# order: 4
# The end of a board in a step along the edge or the end of another.
# gives: The board with the step.
# by rule: At a corner two thirds of the thickness; sheets in an edge a half. It wants pins or screws, for half of it is end grain. Common practice, no source.
# pull: top up 45
scantling = 1

piece "Rebate" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 16
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 90
  bottom = 0
  high   = 120
}

part "top" {
  of    = material.case
  grain = "right"
  left  = part.side.right
  wide  = 120
  front = 0
  deep  = 90
  top   = part.side.top
}

joint "joint" {
  kind = "rebate"
  of   = part.top
  into = part.side
  pins = { kind = "panel pin 25", count = 3, margin = 15 }
}
