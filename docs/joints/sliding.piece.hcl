# title: Sliding dovetail
# order: 12
# A shelf whose dovetailed end slides in from behind and holds the sides together.
# gives: The side: a housing wider at its foot; the shelf at both sides of its neck.
# by rule: A third of the thickness deep, the neck two thirds of its part, slope one in eight or six. Common practice, no source.
# pull: shelf right 60
scantling = 1

piece "Sliding dovetail" {
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
  high   = 150
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.right
  wide   = 120
  front  = 0
  deep   = 90
  bottom = 70
}

joint "joint" {
  kind    = "sliding dovetail"
  of      = part.shelf
  into    = part.side
  stopped = { front = 14 }
}
