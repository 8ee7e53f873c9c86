scantling = 1

piece "Board housed from both faces" {
  units = "mm"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 18
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

cut "above" {
  kind   = "housing"
  on     = part.board
  side   = "top"
  runs   = "back"
  centre = 200
  width  = 12
  depth  = 6
}

cut "below" {
  kind   = "housing"
  on     = part.board
  side   = "bottom"
  runs   = "back"
  centre = 200
  width  = 12
  depth  = 5.1
}
