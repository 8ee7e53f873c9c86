scantling = 1

piece "Table with buttons" {
  units = "mm"
  shop  = "shop.hcl"
}

material "leg" {
  asks      = "hard maple board"
  thickness = 45
}

material "apron" {
  asks      = "hard maple board"
  thickness = 20
}

part "leg" {
  of     = material.leg
  repeat = 4
  grain  = "up"
  left   = odd(nth) ? 0 : 455
  wide   = 45
  front  = nth <= 2 ? 0 : 355
  deep   = 45
  bottom = 0
  high   = 700
}

part "rail" {
  of     = material.apron
  repeat = 2
  grain  = "right"
  left   = part.leg[1].right
  right  = part.leg[2].left
  front  = nth == 1 ? 5 : 375
  bottom = 620
  high   = 80
}

part "top" {
  of     = material.apron
  grain  = "right"
  left   = -30
  wide   = 560
  front  = -30
  deep   = 460
  bottom = 700
}

joint "rail" {
  kind  = "tenon"
  of    = part.rail
  into  = part.leg
  meets = 4
  pins  = { kind = "peg 8", count = 2, margin = 36, pilot = 8 }
}

hardware "button" {
  kind   = "table button 45"
  count  = 3
  on     = part.top
  with   = part.rail[1]
  side   = "bottom"
  margin = 60
}
