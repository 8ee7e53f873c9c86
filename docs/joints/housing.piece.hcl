# title: Housing
# order: 2
# The end of a shelf in a trench across the side, from front to back.
# gives: The side: it loses the trench; the shelf is longer by its depth.
# by rule: A third of the thickness it goes into. Common practice, no source.
# pull: shelf right 50
scantling = 1

piece "Housing" {
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
  kind = "housing"
  of   = part.shelf
  into = part.side
}
