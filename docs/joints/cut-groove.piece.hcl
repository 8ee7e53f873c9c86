# cut: Groove and housing
# order: 41
# A trench with the grain is a groove, across it a housing; either may stop.
scantling = 1

piece "Groove and housing" {
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

cut "groove" {
  kind  = "groove"
  on    = part.board
  side  = "top"
  near  = 60
  width = 6
  depth = 7
}

cut "housing" {
  kind  = "housing"
  on    = part.board
  side  = "top"
  runs  = "back"
  near  = 140
  width = 16
  depth = 6
  from  = 0
  to    = 70
}
