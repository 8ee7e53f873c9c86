# title: Dovetail, half-blind
# order: 11
# As of a drawer: the tails do not show in front.
# gives: As of the through dovetail, but the front keeps the lap.
# by rule: Lap a fifth of the front; makers keep 3 to 6 mm. Common practice, no source.
# pull: side back 45
# from: left back up
scantling = 1

piece "Dovetail, half-blind" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "side" {
  of     = material.case
  grain  = "back"
  left   = 0
  front  = part.front.back
  deep   = 120
  bottom = 0
  high   = 90
}

part "front" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 150
  front  = 0
  bottom = 0
  high   = 90
}

joint "joint" {
  kind  = "dovetail"
  of    = part.side
  into  = part.front
  tails = 3
  lap   = true
}
