# cut: Mitre
# order: 50
# An end at an angle.
scantling = 1

piece "Mitre" {
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
  kind  = "mitre"
  on    = part.board
  end   = "right"
  keeps = "back"
  angle = "45 deg"
}
