scantling = 1

piece "Sleeve with a bottom in grooves" {
  units = "mm"
}

material "side" {
  asks      = "black cherry board"
  thickness = 12
}

material "bottom" {
  asks = "birch plywood 4"
}

part "side" {
  of     = material.side
  grain  = "back"
  left   = 0
  front  = 0
  deep   = 300
  bottom = 0
  high   = 60
  mirror = 200
}

part "bottom" {
  of     = material.bottom
  grain  = "back"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 300
  bottom = 10
}

joint "bottom" {
  kind  = "groove"
  of    = part.bottom
  into  = part.side
  meets = 2
  clear = { across = 0.2, deep = 1 }
}
