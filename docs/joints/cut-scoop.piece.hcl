# cut: Scoop
# order: 54
# An arc out of an edge, for a finger.
scantling = 1

piece "Scoop" {
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
  kind   = "scoop"
  on     = part.board
  edge   = "front"
  centre = 110
  chord  = 80
  depth  = 18
}
