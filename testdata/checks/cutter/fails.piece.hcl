scantling = 1

piece "Tray" {
  units = "mm"
  shop  = "short.hcl"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 20
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

cut "bed" {
  kind   = "channel"
  on     = part.board
  side   = "top"
  runs   = "right"
  centre = 40
  cutter = "round-nose 6.35"
  depth  = 3
}
