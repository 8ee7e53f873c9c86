# title: Mitre, keyed
# order: 8
# The corner of a box: mitred and glued, then slips let in across it from outside.
# gives: Both, at the mitre; both lose the kerfs of the keys.
# by rule: Keys a quarter of the thickness, two thirds of the way in. They are sawn after glue-up. Common practice, no source.
# pull: side right 60
scantling = 1

piece "Mitre, keyed" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 14
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

part "side" {
  of     = material.case
  grain  = "back"
  right  = part.front.right
  front  = part.front.back
  deep   = 110
  bottom = 0
  high   = 90
}

joint "joint" {
  kind = "mitre"
  of   = part.side
  into = part.front
  keys = 3
  glue = "pva"
}
