# cut: Recess
# order: 46
# A flat hollow of any outline; its corners are as round as its cutter, or chopped square.
scantling = 1

piece "Recess" {
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

cut "round" {
  kind   = "recess"
  on     = part.board
  side   = "top"
  middle = 60
  length = 60
  centre = 45
  width  = 40
  depth  = 6
  radius = 6
}

cut "square" {
  kind   = "recess"
  on     = part.board
  side   = "top"
  middle = 160
  length = 60
  centre = 45
  width  = 40
  depth  = 6
}
