# title: Loose tenons
# order: 20
# Flat tongues of their own in mortises of both parts.
# gives: Both, the mortises.
# by rule: A third of the thickness. Common practice, no source.
# pull: rail right 60
scantling = 1

piece "Loose tenons" {
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
  kind  = "loose tenon"
  of    = part.rail
  into  = part.leg
  loose = { count = 1 }
}
