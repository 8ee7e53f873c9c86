scantling = 1

# A closed box: the base that the examples of lids that are sawn off add to.
piece "Chest" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 12
}

group "chest" {
  part "side" {
    of     = material.case
    grain  = "back"
    left   = 0
    front  = 0
    back   = 200
    bottom = 0
    high   = 100
    mirror = 300
  }

  part "end" {
    of     = material.case
    repeat = 2
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = (nth - 1) * 188
    bottom = 0
    high   = 100
  }

  joint "corner" {
    kind  = "mitre"
    of    = part.end
    into  = part.side
    glue  = "pva"
    meets = 4
  }

  part "board" {
    of     = material.case
    repeat = 2
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.end[1].back
    back   = part.end[2].front
    bottom = (nth - 1) * 88
  }

  part "divider" {
    of     = material.case
    grain  = "back"
    left   = 100
    front  = part.end[1].back
    back   = part.end[2].front
    bottom = part.board[1].top
    top    = 60
  }

  space "inside" {
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.end[1].back
    back   = part.end[2].front
    bottom = part.board[1].top
    top    = part.board[2].bottom
  }
}
