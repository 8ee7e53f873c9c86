scantling = 1

recipe "drawer" {
  about = "A drawer: the front rebated over the sides, the back let into rebates of the sides, a ply bottom in grooves all round that show nowhere."
}

input "wide" {
  label  = "Width over the sides"
  length = 200
}

input "long" {
  label  = "Length from front to back"
  length = 300
}

input "high" {
  label  = "Height"
  length = 60
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
  length = 8
}

input "scoop_depth" {
  label  = "Finger scoop in the front's top edge, depth (0 for none)"
  length = 16
}

input "scoop_wide" {
  label  = "Finger scoop, width"
  length = 64
}

input "stop_from" {
  label  = "Drawer stops, from the outside of the sides"
  length = 30
}

input "stop_wide" {
  label  = "Drawer stops, width"
  length = 30
}

input "stop_high" {
  label  = "Drawer stops, height (0 for none): the back is notched over them"
  length = 0
}

input "block_from" {
  label  = "Out-stop block, from the drawer's left side"
  length = 18
}

input "block_wide" {
  label  = "Out-stop block, width"
  length = 16
}

input "block_high" {
  label  = "Out-stop block, height (0 for none): the back is notched under it"
  length = 0
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
  front  = part.front.back # runs into the front's rebate
  back   = input.long
  bottom = 0
  high   = input.high
  mirror = input.wide
  show   = "outside"
}

part "back" {
  of     = input.side_timber
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  back   = input.long
  bottom = 0
  high   = input.high
}

part "bottom" {
  of     = input.bottom_sheet
  grain  = "back"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = part.front.back
  back   = part.back.front
  bottom = input.bottom_up
}

joint "front" {
  kind  = "rebate"
  of    = part.side
  into  = part.front
  meets = 2
  glue  = "pva"
  pins  = { kind = "panel pin 20", count = 2, margin = input.bottom_up + 10 } # clear of the groove
}

joint "back" {
  kind  = "rebate"
  of    = part.back
  into  = part.side
  meets = 2
  glue  = "pva"
  pins  = { kind = "panel pin 20", count = 2, margin = input.bottom_up + 10 } # clear of the groove
}

joint "bottom" {
  kind  = "groove"
  of    = part.bottom
  into  = [part.front, part.side, part.back]
  meets = 4
  clear = { across = 0.2, deep = 0.5 }
  over  = [joint.front, joint.back]
}

cut "scoop" {
  if     = input.scoop_depth > 0
  kind   = "scoop"
  on     = part.front
  edge   = "top"
  centre = input.wide / 2
  chord  = input.scoop_wide
  depth  = input.scoop_depth
}

cut "eased" {
  kind   = "eased"
  on     = part.front
  edges  = [["top", "front"]]
  radius = 1
}

# The drawer is put in over its stops.
cut "notch left" {
  if    = input.stop_high > 0
  kind  = "notch"
  on    = part.back
  side  = "bottom"
  runs  = "back"
  near  = part.side.left.outside + input.stop_from - 4
  width = input.stop_wide + 8
  depth = input.stop_high + 1
}

cut "notch right" {
  if    = input.stop_high > 0
  kind  = "notch"
  on    = part.back
  side  = "bottom"
  runs  = "back"
  near  = part.side.right.outside - input.stop_from - input.stop_wide - 4
  width = input.stop_wide + 8
  depth = input.stop_high + 1
}

# A turn button on the back closes this notch once the drawer is in.
cut "notch above" {
  if    = input.block_high > 0
  kind  = "notch"
  on    = part.back
  side  = "top"
  runs  = "back"
  near  = part.side.left.outside + input.block_from - 4
  width = input.block_wide + 8
  depth = input.block_high + 1
}

output "inside_wide" {
  value = part.side.right.inside - part.side.left.inside
}

output "inside_long" {
  value = part.back.front - part.front.back
}
