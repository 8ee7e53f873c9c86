scantling = 1

piece "Grooved board" {
  units = "mm"
  shop  = "shop.hcl"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 20
}

part "board" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 400
  front  = 0
  deep   = 140
  bottom = 0
}

material "bottom" {
  asks = "birch plywood 6"
}

part "bottom" {
  of     = material.bottom
  grain  = "right"
  left   = 0
  wide   = 100
  front  = 300
  deep   = 100
  bottom = 0
}

cut "groove" {
  kind  = "groove"
  on    = part.board
  side  = "top"
  near  = 20
  width = 6
  depth = 6
}
