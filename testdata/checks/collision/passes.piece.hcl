scantling = 1

piece "Two boards" {
  units = "mm"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 20
}

part "one" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 300
  front  = 0
  deep   = 100
  bottom = 0
}

part "two" {
  of     = material.wood
  grain  = "up"
  left   = 100
  front  = 0
  deep   = 100
  bottom = 20
  high   = 200
}
