# cut: Mortise, square and round-ended
# order: 47
# 
scantling = 1

piece "Mortise, square and round-ended" {
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

cut "square" {
  kind   = "mortise"
  on     = part.board
  side   = "top"
  middle = 60
  length = 50
  centre = 45
  width  = 8
  depth  = 14
}

cut "round" {
  kind   = "mortise"
  on     = part.board
  side   = "top"
  middle = 150
  length = 50
  centre = 45
  width  = 8
  depth  = 14
  ends   = "round"
}
