scantling = 1

piece "Loose" {
  units = "mm"
  shop  = "shop.hcl"
}

material "frame" {
  asks      = "hard maple board"
  thickness = 22
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
  left   = 60
  right  = 340
  front  = 0
  bottom = nth == 1 ? 0 : 420
  high   = 80
}

joint "corner" {
  kind  = "loose tenon"
  of    = part.rail
  into  = part.stile
  meets = 4
  glue  = "pva"
  loose = { count = 1 }
}
