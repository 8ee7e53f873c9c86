# title: Dovetail, through
# order: 10
# Tails on the side, pins on the front: it cannot be pulled off the way it is loaded.
# gives: The side between its tails, the front between its pins.
# by rule: A tail for every two thicknesses; half pins of half a thickness; slope one in eight in hardwood, one in six in softwood. Practitioners draw both. Common practice, no source.
# pull: side back 45
# from: left front up
scantling = 1

piece "Dovetail, through" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 16
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
  kind  = "dovetail"
  of    = part.side
  into  = part.front
  tails = 3
}
