# title: Groove
# order: 5
# A panel or a bottom in a groove along the grain, free to move.
# gives: The part with the groove.
# by rule: Half the thickness deep; clearance across and below as the document says. Common practice, no source.
# pull: bottom right 55
scantling = 1

piece "Groove" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 16
}

material "ply" {
  asks = "birch plywood 6"
}

part "side" {
  of     = material.case
  grain  = "back"
  left   = 0
  front  = 0
  deep   = 140
  bottom = 0
  high   = 70
}

part "bottom" {
  of     = material.ply
  grain  = "right"
  left   = part.side.right
  wide   = 120
  front  = 0
  deep   = 140
  bottom = 12
}

joint "joint" {
  kind  = "groove"
  of    = part.bottom
  into  = part.side
  clear = { across = 0.2, deep = 0.5 }
}
