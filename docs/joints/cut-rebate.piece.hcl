# cut: Rebate
# order: 40
# A step along an edge or an end.
scantling = 1

piece "Rebate" {
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
  kind  = "rebate"
  on    = part.board
  side  = "top"
  near  = 0
  width = 12
  depth = 8
}
