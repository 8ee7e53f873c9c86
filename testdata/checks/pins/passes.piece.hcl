scantling = 1

piece "Box with a bottom" {
  units = "mm"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 12
}

material "bottom" {
  asks = "birch plywood 4"
}

part "side" {
  of     = material.wood
  grain  = "back"
  left   = 0
  front  = 0
  deep   = 200
  bottom = 0
  high   = 60
  mirror = 160
}

part "end" {
  of     = material.wood
  repeat = 2
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = (nth - 1) * 188
  bottom = 0
  high   = 60
}

part "bottom" {
  of     = material.bottom
  grain  = "back"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = part.end[1].back
  back   = part.end[2].front
  bottom = 10
}

joint "corner" {
  kind  = "rebate"
  of    = part.end
  into  = part.side
  meets = 4
  glue  = "pva"
  pins  = { kind = "panel pin 20", count = 2, margin = 20 }
}

joint "bottom" {
  kind  = "groove"
  of    = part.bottom
  into  = [part.side, part.end]
  meets = 4
  clear = { across = 0.2, deep = 0.4 }
  over  = [joint.corner]
}
