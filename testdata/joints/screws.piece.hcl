scantling = 1

piece "Screwed" {
  units = "mm"
  shop  = "shop.hcl"
}

material "wood" {
  asks      = "hard maple board"
  thickness = 18
}

part "side" {
  of     = material.wood
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 200
  bottom = 0
  high   = 400
  mirror = 400
}

part "shelf" {
  of     = material.wood
  repeat = 2
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = 200
  bottom = nth * 120
}

joint "plugged" {
  kind   = "butt"
  of     = part.shelf[1]
  into   = part.side
  meets  = 2
  screws = { kind = "screw 4 x 40", count = 3, margin = 30, plug = true }
}

joint "sunk" {
  kind   = "butt"
  of     = part.shelf[2]
  into   = part.side
  meets  = 2
  screws = { kind = "screw 4 x 40", count = 3, margin = 30 }
}
