scantling = 1

piece "Sides with a housing" {
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
  deep   = 200
  bottom = 0
  high   = 400
  mirror = 300
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 200
  bottom = 150
}

joint "shelf" {
  kind  = "housing"
  of    = part.shelf
  into  = part.side
  meets = 2
  stopped = { front = 12.7 }
}
