# title: Stopped housing
# order: 3
# The trench ends short of the front, so that it does not show there; the shelf is notched to go over the wood that stays.
# gives: The side in the trench, the shelf in the notch.
# by rule: Depth as of a housing; stopped by the depth where no distance is said. Common practice, no source.
# pull: shelf right 50
scantling = 1

piece "Stopped housing" {
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
  kind    = "housing"
  of      = part.shelf
  into    = part.side
  stopped = { front = 12 }
}
