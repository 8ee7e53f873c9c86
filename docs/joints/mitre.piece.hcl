# title: Mitre, splined
# order: 7
# Both ends at half the angle, so that no end grain shows; a loose strip across it, with its grain across the joint.
# gives: Both, at the line from the inner to the outer corner; both lose the groove.
# by rule: Spline a third of the thickness, half of it into either part. Common practice, no source.
# pull: rail right 20
# pull: rail up 50
scantling = 1

piece "Mitre, splined" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "stile" {
  of     = material.case
  grain  = "up"
  left   = 0
  wide   = 60
  front  = 0
  bottom = 0
  high   = 150
}

part "rail" {
  of    = material.case
  grain = "right"
  left  = part.stile.right
  wide  = 110
  front = 0
  top   = part.stile.top
  high  = 60
}

joint "joint" {
  kind   = "mitre"
  of     = part.rail
  into   = part.stile
  spline = true
  glue   = "pva"
}
