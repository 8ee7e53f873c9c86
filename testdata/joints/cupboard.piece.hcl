scantling = 1

piece "Small cupboard" {
  units = "mm"
  shop  = "shop.hcl"
}

material "case" {
  asks      = "cherry board"
  thickness = 18
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 200
  bottom = 0
  high   = 400
  mirror = 300
}

part "board" {
  of     = material.case
  repeat = 2
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 200
  bottom = nth == 1 ? 0 : 382
}

joint "corner" {
  kind  = "rebate"
  nails = { kind = "panel pin 1.25 x 25", count = 3, margin = 30 }
  of    = part.board
  into  = part.side
  meets = 4
}

part "door" {                       # lies on the front edges
  of     = material.case
  grain  = "up"
  left   = 0
  wide   = 300
  back   = 0
  bottom = 0
  high   = 400
}

hardware "hinge" {
  kind   = "butt hinge 50"
  count  = 2
  on     = part.side.left
  with   = part.door
  side   = "front"
  toward = "left"                   # the knuckle stands out at the left
  margin = 60
}

hardware "catch" {
  kind = "magnetic catch 32"
  on   = part.side.right
  with = part.door
  side = "inside"
}

hardware "knob" {
  kind   = "knob 25"
  on     = part.door
  side   = "front"
  centre = 270
}
