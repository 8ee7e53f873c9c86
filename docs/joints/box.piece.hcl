# title: Box joint
# order: 9
# Fingers of both ends lie by turns. Only where both parts meet with their end grain: fingers across the grain break off.
# gives: Each between the other's fingers.
# by rule: Fingers as near to the thickness as an odd number of them comes. Common practice, no source.
# pull: side back 45
# from: left front up
scantling = 1

piece "Box joint" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 12
}

part "side" {
  of     = material.case
  grain  = "back"
  left   = 0
  front  = part.front.back
  deep   = 120
  bottom = 0
  high   = 90
}

part "front" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 150
  front  = 0
  bottom = 0
  high   = 90
}

joint "joint" {
  kind = "box"
  of   = part.side
  into = part.front
}
