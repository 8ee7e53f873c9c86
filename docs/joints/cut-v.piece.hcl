# cut: V channel
# order: 43
# Two walls that meet; the angle lies between them.
scantling = 1

piece "V channel" {
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
  kind   = "V channel"
  on     = part.board
  side   = "top"
  centre = 45
  width  = 16
  angle  = "90 deg"
}
