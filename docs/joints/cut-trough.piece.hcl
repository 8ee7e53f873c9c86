# cut: Trough
# order: 44
# A wide shallow hollow, across what it meets.
scantling = 1

piece "Trough" {
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
  kind   = "trough"
  on     = part.board
  side   = "top"
  runs   = "back"
  centre = 110
  width  = 60
  depth  = 8
}
