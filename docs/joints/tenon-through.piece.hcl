# title: Mortise and tenon, through
# order: 15
# The tenon's end shows and may be wedged.
# gives: The leg right through; the rail its cheeks and shoulders.
# by rule: As of the stopped tenon.
# pull: rail right 70
scantling = 1

piece "Mortise and tenon, through" {
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
  kind  = "tenon"
  of    = part.rail
  into  = part.leg
  tenon = { through = true }
}
