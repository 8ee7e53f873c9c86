scantling = 1

piece "Thin board" {
  units = "mm"
  shop  = "shop.hcl"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 4
}

part "board" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 500
  front  = 0
  deep   = 140
  bottom = 0
}
