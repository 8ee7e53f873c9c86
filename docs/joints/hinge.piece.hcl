# title: Hinge, let in
# order: 21
# A bought hinge takes up room of its own: recesses in both edges and lead holes.
# gives: Both, half of the closed hinge less its gap.
# by rule: (knuckle - gap) / 2. From the hinge's own sizes in the catalogue.
# pull: lid up 40
# from: right back up
scantling = 1

piece "Hinge, let in" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 18
}

part "back" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 150
  back   = 90
  bottom = 0
  high   = 70
}

part "lid" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 150
  front  = 0
  back   = 90
  bottom = part.back.top
}

hardware "hinge" {
  kind   = "butt hinge 38"
  count  = 2
  on     = part.back
  with   = part.lid
  side   = "top"
  toward = "back"
  margin = 30
}
