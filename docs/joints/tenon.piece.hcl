# title: Mortise and tenon, stopped
# order: 14
# A tenon in a mortise that does not show on the far side.
# gives: The leg the mortise, the rail its cheeks and shoulders.
# by rule: A third of the rail thick, two thirds of the leg deep with at least 6 left; 1.5 of glue room below; shoulders of a tenth. Glue holds on the cheeks, where long grain meets long grain. Common practice, no source.
# pull: rail right 50
scantling = 1

piece "Mortise and tenon, stopped" {
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
  kind = "tenon"
  of   = part.rail
  into = part.leg
  glue = "pva"
}
