# title: Bridle
# order: 18
# An open mortise at the end of a part: a tenon as wide as the rail.
# gives: The stile the slot, the rail both cheeks.
# by rule: Thirds. Common practice, no source.
# pull: rail right 60
scantling = 1

piece "Bridle" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 18
}

part "stile" {
  of     = material.case
  grain  = "up"
  left   = 0
  wide   = 50
  front  = 0
  bottom = 0
  high   = 140
}

part "rail" {
  of    = material.case
  grain = "right"
  left  = 0
  wide  = 140
  front = 0
  top   = part.stile.top
  high  = 50
}

joint "joint" {
  kind = "bridle"
  of   = part.rail
  into = part.stile
}
