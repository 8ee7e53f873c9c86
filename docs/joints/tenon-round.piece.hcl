# title: Mortise and tenon, round-ended
# order: 17
# The mortise keeps the round ends of its cutter and the tenon is rounded to match.
# gives: As of the stopped tenon.
# by rule: As of the stopped tenon.
# pull: rail right 50
scantling = 1

piece "Mortise and tenon, round-ended" {
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
  tenon = { round = true }
}
