# title: Mortise and tenon, haunched
# order: 16
# At the end of a leg the tenon is narrower, so that the mortise does not break out; a short haunch keeps the rail from twisting.
# gives: The leg the mortise and the haunch's groove; the rail the rest.
# by rule: A shoulder of a third, the haunch as long as the tenon is thick. Common practice, no source.
# pull: rail right 50
scantling = 1

piece "Mortise and tenon, haunched" {
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
  bottom = 100
  high   = 60
}

joint "joint" {
  kind = "tenon"
  of   = part.rail
  into = part.leg
}
