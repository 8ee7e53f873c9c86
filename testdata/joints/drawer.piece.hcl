scantling = 1

piece "Drawer on slides" {
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
  deep   = 400
  bottom = 0
  high   = 300
  mirror = 400
}

part "drawer" {
  of     = material.wood
  grain  = "back"
  left   = part.side.left.inside + 12.7
  front  = 0
  deep   = 350
  bottom = 50
  high   = 100
}

hardware "slide" {
  kind   = "ball-bearing slide 300"
  on     = part.side.left
  with   = part.drawer
  side   = "inside"
  runs   = "back"
  margin = 155
  centre = 100
}
