# title: Butt joint
# order: 1
# An end or an edge against a face, held by glue and by what goes across: pins, nails, screws or dowels.
# gives: Neither; they only touch.
# by rule: Glue on end grain holds badly: a check asks for something across it. Common practice, no source.
# pull: shelf right 40
# from: right front up
scantling = 1

piece "Butt joint" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 16
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 90
  bottom = 0
  high   = 150
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.right
  wide   = 120
  front  = 0
  deep   = 90
  bottom = 70
}

joint "joint" {
  kind   = "butt"
  of     = part.shelf
  into   = part.side
  glue   = "pva"
  screws = { kind = "screw 4 x 40", count = 2, margin = 20 }
}
