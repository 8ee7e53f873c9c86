scantling = 1

piece "Case with a tray that slides" {
  units = "mm"
}

material "case" {
  asks      = "black cherry board"
  thickness = 14
}

group "case" {
  part "side" {
    of     = material.case
    grain  = "up"
    left   = 0
    front  = 0
    back   = 250
    bottom = 0
    high   = 100
    mirror = 260
  }

  space "opening" {
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = 250
    bottom = 0
    top    = part.side.left.top
  }
}

group "drawer" {
  inside = case.opening
  left   = case.opening.left + 0.4
  front  = 0
  bottom = 0

  part "tray" {
    of     = material.case
    grain  = "back"
    left   = 0
    wide   = 231.2
    front  = 0
    back   = 240
    bottom = 0
  }
}

fit "drawer" {
  moves  = drawer
  inside = case.opening
  sides  = 0.8
  above  = 2
}
