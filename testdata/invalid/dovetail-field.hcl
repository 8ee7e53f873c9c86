scantling = 1

piece "Drawer" {
  units = "mm"
}

material "oak" {
  asks      = "hard maple board"
  thickness = 14
}

part "front" {
  of     = material.oak
  grain  = "right"
  left   = 0
  right  = 300
  front  = 0
  bottom = 0
  high   = 90
}

part "side" {
  of     = material.oak
  grain  = "back"
  left   = 0
  front  = part.front.back
  back   = 350
  bottom = 0
  high   = 90
  mirror = 300
}

joint "corner" {
  kind  = "dovetail"
  of    = part.side
  into  = part.front
  tails = { count = 3, tan = 8 } # error: unknown-field
  meets = 2
}
