# cut: Compound angle
# order: 51
# An end that leans away from two sides, as of a splayed leg or a hopper.
scantling = 1

piece "Compound angle" {
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
  kind   = "compound angle"
  on     = part.board
  end    = "right"
  angles = { back = "25 deg", top = "15 deg" }
}
