scantling = 1

piece "Frame" {
  units = "mm"
  shop  = "shop.hcl"
}

material "frame" {
  asks      = "hard maple board"
  thickness = 21
}

part "stile" {
  of     = material.frame
  repeat = 2
  grain  = "up"
  left   = nth == 1 ? 0 : 340
  wide   = 60
  front  = 0
  bottom = 0
  high   = 500
}

part "rail" {
  of     = material.frame
  repeat = 2
  grain  = "right"
  left   = 0
  right  = 400
  front  = 0
  bottom = nth == 1 ? 0 : 450
  high   = 50
}

joint "corner" {
  kind  = "bridle"
  of    = part.rail
  into  = part.stile
  meets = 4
  glue  = "pva"
}
