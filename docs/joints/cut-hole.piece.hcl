# cut: Holes
# order: 45
# Through, blind, countersunk, counterbored.
scantling = 1

piece "Holes" {
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

cut "through" {
  kind     = "hole"
  on       = part.board
  side     = "top"
  at       = { right = 30, front = 45 }
  diameter = 10
  through  = true
}

cut "blind" {
  kind     = "hole"
  on       = part.board
  side     = "top"
  at       = { right = 80, front = 45 }
  diameter = 10
  depth    = 12
}

cut "sunk" {
  kind        = "hole"
  on          = part.board
  side        = "top"
  at          = { right = 130, front = 45 }
  diameter    = 10
  through     = true
  countersink = { diameter = 20 }
}

cut "bored" {
  kind        = "hole"
  on          = part.board
  side        = "top"
  at          = { right = 180, front = 45 }
  diameter    = 10
  through     = true
  counterbore = { diameter = 20, depth = 8 }
}
