scantling = 1

piece "Closed chest" {
  units = "mm"
}

material "wood" {
  asks      = "cherry board"
  thickness = 12
}

group "chest" {
  part "side" {
    of     = material.wood
    grain  = "back"
    left   = 0
    front  = 0
    back   = 200
    bottom = 0
    high   = 100
    mirror = 320
  }

  part "end" {
    of     = material.wood
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
    keys  = { count = 2, thickness = 3, depth = 12, margin = 20 }
    glue  = "pva"
    meets = 4
  }
}

cut "lid" {
  kind  = "lid"
  on    = chest
  base  = 73.5
  kerf  = 3
  clean = 0
}
