scantling = 1

piece "Tall narrow case" {
  units = "mm"
}

material "case" {
  asks      = "black cherry board"
  thickness = 20
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 536
  bottom = 0
  high   = 1500
  mirror = 500
}

part "shelf" {
  of     = material.case
  repeat = 4
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 536
  bottom = (nth - 1) * 493
}

joint "shelf" {
  kind  = "housing"
  of    = part.shelf
  into  = part.side
  meets = 8
}
