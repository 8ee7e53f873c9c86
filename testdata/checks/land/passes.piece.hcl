scantling = 1

piece "Tray" {
  units = "mm"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 14
}

part "board" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 320
  front  = 0
  deep   = 90
  bottom = 0
}

cut "trough" {
  kind  = "trough"
  on    = part.board
  side  = "top"
  runs  = "right"
  near  = 20
  far   = 70
  depth = 7
}
