scantling = 1

# A small open box: the base that the examples of the diagnostic codes add to.
piece "Box" {
  units = "mm"
}

input "wide" {
  length = 300
  from   = 200
  to     = 400
}

contents "rods" {
  rod    = [4, 6]
  each   = 2
  length = 180
}

material "case" {
  asks      = "cherry board"
  thickness = 14
}

material "bottom" {
  asks = "birch plywood 6"
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  back   = 200
  bottom = 0
  high   = 120
  mirror = input.wide
  show   = "outside"
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  back   = 200
  bottom = 50
}

joint "shelf" {
  kind  = "housing"
  of    = part.shelf
  into  = part.side
  meets = 2
}
