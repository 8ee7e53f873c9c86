# cut: Chamfer
# order: 55
# An edge taken off flat; it may stop.
scantling = 1

piece "Chamfer" {
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
  kind  = "chamfer"
  on    = part.board
  edges = [["top", "front"]]
  leg   = 8
  from  = 40
  to    = 180
}
