scantling = 1

piece "Tray for jars" {
  units = "mm"
}

contents "jars" {
  kind     = "jar"
  count    = 6
  diameter = 44
  tall     = 60
  play     = 2
  around   = 2
  columns  = 6
  in       = space.inside
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
  deep   = 60
  bottom = 0
  high   = 70
  mirror = 303.9
}

space "inside" {
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 60
  bottom = 0
  top    = part.side.left.top
}
