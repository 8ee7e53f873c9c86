scantling = 1

piece "Bookshelf" {
  units = "mm"
}

input "shelves" {
  count = 2
  from  = 1
  to    = 4
}

input "wide" {
  length = 600
  from   = 400
  to     = 800
}

material "pine" {
  asks      = "hard maple board"
  thickness = 18
}

sizes {
  high = 700
  deep = 200
  gap  = maximum(high, 2) # error: unknown-function
}

group "case" {
  part "side" {
    of     = material.pine
    grain  = "up"
    left   = 0
    front  = 0
    back   = sizes.deep
    bottom = 0
    high   = sizes.high
    mirror = input.wide
  }

  part "shelf" {
    of     = material.pine
    repeat = input.shelves
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = sizes.deep
    bottom = nth * sizes.gap
  }

  joint "shelf" {
    kind  = "housing"
    of    = part.shelf
    into  = part.side
    meets = 2 * input.shelves
  }
}
