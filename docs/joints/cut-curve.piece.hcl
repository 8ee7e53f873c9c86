# cut: Curved outline
# order: 53
# A line of arcs and straights along an edge.
scantling = 1

piece "Curved outline" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "board" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 220
  front  = 0
  deep   = 90
  bottom = 0
  show   = "top"
}

cut "it" {
  kind        = "curved outline"
  on          = part.board
  edge        = "front"
  line        = [[20, 0], { through = [110, 30] }]
  symmetrical = true
}
