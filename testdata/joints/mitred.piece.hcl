scantling = 1

piece "Frame with mitred tenons" {
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

sizes {
  wide = 500
  deep = 400
  high = 700
}

part "leg" {
  of     = material.leg
  repeat = 4
  grain  = "up"
  left   = odd(nth) ? 0 : sizes.wide - 45
  wide   = 45
  front  = nth <= 2 ? 0 : sizes.deep - 45
  deep   = 45
  bottom = 0
  high   = sizes.high
}

part "rail" {                        # front and back
  of     = material.apron
  repeat = 2
  grain  = "right"
  left   = part.leg[1].right
  right  = part.leg[2].left
  front  = nth == 1 ? 5 : sizes.deep - 5 - material.apron.thickness
  bottom = sizes.high - 80
  high   = 80
}

part "end" {
  of     = material.apron
  repeat = 2
  grain  = "back"
  front  = part.leg[1].back
  back   = part.leg[3].front
  left   = nth == 1 ? 5 : sizes.wide - 5 - material.apron.thickness
  bottom = sizes.high - 80
  high   = 80
}

joint "rail" {
  kind  = "tenon"
  of    = part.rail
  into  = part.leg
  meets = 4
  glue  = "pva"
  tenon = { mitred = true }
}

joint "end" {
  kind  = "tenon"
  of    = part.end
  into  = part.leg
  meets = 4
  glue  = "pva"
  tenon = { mitred = true }
}
