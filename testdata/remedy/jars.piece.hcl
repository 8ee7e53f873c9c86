scantling = 1

piece "Drawer for jars" {
}

# A millimetre is missing from the height: less over the caps is what would do.
contents "jars" {
  kind         = "jar"
  count        = 24
  diameter     = 44
  tall         = 96
  play         = 2
  above        = 3
  around       = 2
  columns      = 6
  divider      = 4
  divider_high = 85
  in           = space.inside
}

material "side" {
  asks      = "black cherry board"
  thickness = 12
}

part "side" {
  of     = material.side
  grain  = "back"
  left   = 0
  front  = 0
  deep   = 330
  bottom = 0
  high   = 98
  mirror = contents.jars.wide + 2 * material.side.thickness
}

space "inside" {
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 220
  bottom = 0
  top    = part.side.left.top
}
