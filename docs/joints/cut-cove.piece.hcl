# cut: Cove
# order: 57
# An edge hollowed.
scantling = 1

piece "Cove" {
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
  kind   = "cove"
  on     = part.board
  edges  = [["top", "front"]]
  radius = 10
}
