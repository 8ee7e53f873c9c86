scantling = 1

piece "Box with a drawer" {
  units = "mm"
}

material "case" {
  asks      = "black cherry board"
  thickness = 14
}

material "front" {
  asks      = "black cherry board"
  thickness = 14
}

material "drawer" {
  asks      = "hard maple board"
  thickness = 10
}

material "bottom" {
  asks = "birch plywood 4"
}

sizes {
  wide = 260
  deep = 300
  high = 100
}

group "case" {
  part "side" {
    of     = material.case
    grain  = "up"
    left   = 0
    front  = 0
    back   = sizes.deep
    bottom = 0
    high   = sizes.high
    mirror = sizes.wide
  }

  part "board" {
    of     = material.case
    repeat = 2
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = sizes.deep
    bottom = (nth - 1) * (sizes.high - material.case.thickness)
  }

  joint "corner" {
    kind  = "box"
    of    = part.board
    into  = part.side
    meets = 4
    glue  = "pva"
  }

  space "opening" {
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = sizes.deep
    bottom = part.board[1].top
    top    = part.board[2].bottom
  }

  part "stop" {
    of     = material.drawer
    repeat = 2
    grain  = "right"
    wide   = 30
    deep   = 14
    high   = 5
    left   = part.side.left.inside + (odd(nth) ? 30 : sizes.wide - 28 - 60)
    front  = 14.5
    bottom = space.opening.bottom
  }

  joint "stop" {
    kind  = "butt"
    of    = part.stop
    into  = part.board[1]
    meets = 2
    glue  = "pva"
  }
}

group "drawer" {
  inside = case.opening
  left   = case.opening.left + fit.drawer.sides / 2
  front  = 0
  bottom = case.opening.bottom

  use "drawer" {
    wide         = case.opening.wide - fit.drawer.sides
    high         = case.opening.high - fit.drawer.above
    long         = sizes.deep - 26
    front_timber = material.front
    side_timber  = material.drawer
    bottom_sheet = material.bottom
    bottom_up    = 10
    scoop_depth  = 16
    scoop_wide   = 64
    stop_from    = 30
    stop_wide    = 30
    stop_high    = 5
  }

  hardware "out-stop" {
    kind  = "turn button"
    count = 1
    on    = part.back
  }
}

fit "drawer" {
  moves  = drawer
  inside = case.opening
  sides  = 0.8
  above  = 2
}

measure "opening" {
  of     = case.opening
  take   = ["width front", "width back", "height left", "height right", "diagonals"]
  after  = "the case is glued and square"
  stage  = case
  before = [drawer]
}
