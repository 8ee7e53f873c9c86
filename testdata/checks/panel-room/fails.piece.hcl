scantling = 1

piece "Panel in a frame" {
  units = "mm"
}

material "frame" {
  asks      = "black cherry board"
  thickness = 20
}

material "panel" {
  asks      = "black cherry board"
  thickness = 8
}

part "stile" {
  of     = material.frame
  grain  = "up"
  left   = 0
  wide   = 50
  front  = 0
  bottom = 0
  high   = 400
  mirror = 340
}

part "rail" {
  of     = material.frame
  repeat = 2
  grain  = "right"
  left   = part.stile.left.inside
  right  = part.stile.right.inside
  front  = 0
  bottom = (nth - 1) * 350
  high   = 50
}

part "panel" {
  of     = material.panel
  grain  = "up"
  left   = part.stile.left.inside
  right  = part.stile.right.inside
  front  = 6
  bottom = part.rail[1].top
  top    = part.rail[2].bottom
}

joint "corner" {
  kind   = "dowel"
  of     = part.rail
  into   = part.stile
  meets  = 4
  glue   = "pva"
  dowels = { diameter = 8, count = 2, margin = 12 }
}

joint "panel" {
  kind  = "groove"
  of    = part.panel
  into  = [part.stile, part.rail]
  meets = 4
  depth = 10
  clear = { across = 0.2, deep = 1.1 }
}
