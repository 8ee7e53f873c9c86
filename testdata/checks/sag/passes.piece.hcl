scantling = 1

piece "Shelf for records" {
  units = "mm"
}

material "case" {
  asks      = "black cherry board"
  thickness = 20
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 250
  bottom = 0
  high   = 400
  mirror = 1262
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 250
  bottom = 100
}

joint "shelf" {
  kind  = "housing"
  of    = part.shelf
  into  = part.side
  meets = 2
}

space "above" {
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 250
  bottom = part.shelf.top
  top    = part.side.left.top
}

contents "books" {
  kind    = "box"
  size    = [30, 200, 220]
  count   = 20
  columns = 20
  mass    = "1 kg"
  in      = space.above
}
