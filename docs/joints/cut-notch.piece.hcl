# cut: Notch
# order: 52
# Out of an edge or a corner, straight or of any outline.
scantling = 1

piece "Notch" {
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
  kind    = "notch"
  on      = part.board
  side    = "top"
  runs    = "back"
  near    = 40
  width   = 30
  from    = 0
  to      = 20
  through = true
}

cut "round" {
  kind    = "notch"
  on      = part.board
  side    = "top"
  outline = [[120, 0], [120, 15], { through = [140, 35] }, [160, 15], [160, 0]]
  through = true
}
