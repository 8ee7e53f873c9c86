scantling = 1

recipe "dovetailed drawer" {
  about = "A drawer as cabinet makers build it: half-blind dovetails in the front, through ones at the back, a bottom that slides in under the back from behind."
}

input "wide" {
  label  = "Width over the sides"
  length = 300
}

input "long" {
  label  = "Length from front to back"
  length = 350
}

input "high" {
  label  = "Height"
  length = 90
}

input "front_timber" {
  label    = "Timber of the front"
  material = "front"
}

input "side_timber" {
  label    = "Timber of sides and back"
  material = "drawer"
}

input "bottom_sheet" {
  label    = "Sheet of the bottom"
  material = "bottom"
}

input "bottom_up" {
  label  = "Underside of the bottom above the lower edge"
  length = 10
}

part "front" {
  of     = input.front_timber
  grain  = "right"
  left   = 0
  wide   = input.wide
  bottom = 0
  high   = input.high
  front  = 0
  show   = "front"
}

part "side" {
  of     = input.side_timber
  grain  = "back"
  left   = 0
  front  = part.front.back # tails run into the front, less its lap
  back   = part.back.front # and right through the back
  bottom = 0
  high   = input.high
  mirror = input.wide
  show   = "outside"
}

part "back" {
  of     = input.side_timber
  grain  = "right"
  left   = 0
  wide   = input.wide
  back   = input.long
  bottom = part.bottom.top # the bottom slides in under it
  top    = input.high - 6  # and air out over it
}

part "bottom" {
  of     = input.bottom_sheet
  grain  = "back"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = part.front.back
  back   = input.long
  bottom = input.bottom_up
}

joint "front" {
  kind  = "dovetail"
  of    = part.side
  into  = part.front
  lap   = true
  tails = { half_pin = min(part.side.left.thickness / 2, input.bottom_up - 3) } # the groove lies in the lowest tail
  meets = 2
  glue  = "pva"
}

joint "back" {
  kind  = "dovetail"
  of    = part.side
  into  = part.back
  meets = 2
  glue  = "pva"
}

joint "bottom" {
  kind  = "groove"
  of    = part.bottom
  into  = [part.front, part.side]
  meets = 3
  clear = { across = 0.2, deep = 0.4 }
  over  = [joint.front, joint.back]
}
