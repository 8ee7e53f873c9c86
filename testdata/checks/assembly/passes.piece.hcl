scantling = 1

piece "Box with a sliding lid" {
  units = "mm"
}

material "wood" {
  asks      = "black cherry board"
  thickness = 12
}

material "lid" {
  asks = "birch plywood 4"
}

group "box" {
  part "side" {
    of     = material.wood
    grain  = "back"
    left   = 0
    front  = 0
    back   = 200
    bottom = 0
    high   = 60
    mirror = 150
  }

  part "end" {
    of     = material.wood
    grain  = "right"
    left   = part.side.left.outside
    right  = part.side.right.outside
    back   = 0
    bottom = 0
    high   = 48
  }

  part "back" {
    of     = material.wood
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    back   = 200
    bottom = 0
    high   = 60
  }

  joint "corner" {
    kind  = "butt"
    of    = [part.end, part.back]
    into  = part.side
    meets = 4
    glue  = "pva"
  }
}

group "lid" {
  part "lid" {
    of     = material.lid
    grain  = "right"
    left   = box.side.left.inside
    right  = box.side.right.inside
    front  = 0
    back   = box.back.front
    bottom = 48
  }
}

joint "lid" {
  kind   = "groove"
  of     = lid.lid
  into   = [box.side, box.back]
  depth  = 4
  clear  = { across = 0.2, deep = 0.5 }
  slides = true
  meets  = 3
}
