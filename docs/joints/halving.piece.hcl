# title: Halving
# order: 13
# Two parts cross in one plane, each let into the other by half.
# gives: Each, half of the depth.
# by rule: Half. Common practice, no source.
# pull: rail front 45
scantling = 1

piece "Halving" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "stile" {
  of     = material.case
  grain  = "up"
  left   = 50
  wide   = 40
  front  = 0
  bottom = 0
  high   = 140
}

part "rail" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 140
  front  = 0
  bottom = 50
  high   = 40
}

joint "joint" {
  kind = "halving"
  of   = part.rail
  into = part.stile
}
