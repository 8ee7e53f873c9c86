# title: Dowels
# order: 19
# Round pegs across a butt joint.
# gives: Both, the holes.
# by rule: Diameter up to half of the thickness, 30 into long grain. Common practice, no source.
# pull: rail right 45
# from: right front up
scantling = 1

piece "Dowels" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

material "rail" {
  asks      = "cherry board"
  thickness = 16
}

part "leg" {
  of     = material.case
  grain  = "up"
  left   = 0
  wide   = 40
  front  = 0
  bottom = 0
  high   = 160
}

part "rail" {
  of     = material.rail
  grain  = "right"
  left   = part.leg.right
  wide   = 110
  front  = 2
  bottom = 50
  high   = 60
}

joint "joint" {
  kind   = "dowel"
  of     = part.rail
  into   = part.leg
  dowels = { diameter = 8, count = 2, margin = 15 }
  glue   = "pva"
}
