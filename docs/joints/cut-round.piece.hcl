# cut: Round-over
# order: 56
# An edge rounded.
scantling = 1

piece "Round-over" {
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
  kind   = "round-over"
  on     = part.board
  edges  = [["top", "front"], ["top", "right"]]
  radius = 9
}
