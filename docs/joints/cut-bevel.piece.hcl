# cut: Bevel
# order: 49
# An edge or an end that leans; the side that keeps its size is said.
scantling = 1

piece "Bevel" {
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
  kind  = "bevel"
  on    = part.board
  edge  = "front"
  keeps = "top"
  angle = "20 deg"
}
