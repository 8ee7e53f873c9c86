scantling = 1

# Four shelves that no board gives in one width.
piece "Four shelves" {
  units = "mm"
  shop  = "shop.hcl"
}

input "deep" {
  label  = "Depth of the shelves"
  length = 280
  from   = 250
  to     = 400
}

material "shelf" {
  asks      = "white ash board"
  thickness = 20
}

part "shelf" {
  of     = material.shelf
  grain  = "right"
  left   = 0
  wide   = 1100
  front  = 0
  deep   = input.deep
  repeat = 4
  bottom = (nth - 1) * 300
}
