scantling = 1

piece "Board" {
  units = "mm"
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
