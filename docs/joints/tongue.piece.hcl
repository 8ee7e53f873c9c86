# title: Tongue and groove
# order: 6
# A tongue on the edge or end of one board in a groove of the next. With a gap the boards may swell.
# gives: Both: cheeks beside the tongue, the groove in the other.
# by rule: A third of the thinner part thick, and as long. Common practice, no source.
# pull: slat[2] right 40
scantling = 1

piece "Tongue and groove" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 16
}

part "slat" {
  of     = material.case
  repeat = 2
  grain  = "up"
  left   = (nth - 1) * 80
  wide   = 80 + (nth < 2 ? joint.slat.depth : 0)
  front  = 0
  bottom = 0
  high   = 130
}

joint "slat" {
  kind   = "tongue"
  of     = part.slat
  into   = part.slat
  tongue = { gap = 1 }
  clear  = { deep = 1 }
  slides = true
}
