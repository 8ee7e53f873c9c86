scantling = 1

piece "Two boards" {
  units = "mm"
  shop  = "shop.hcl"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 20
}

part "one" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 300
  front  = 0
  deep   = 80
  bottom = 0
}

part "two" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 300
  front  = 0
  deep   = 80
  bottom = 20
}

joint "glue" {
  kind  = "butt"
  of    = part.two
  into  = part.one
  meets = 1
  glue  = "fish"
}
