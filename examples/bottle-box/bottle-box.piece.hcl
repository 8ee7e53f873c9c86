scantling = 1

piece "Bottle box" {
  about = "A box for twenty-four small bottles, six by four, with dividers halved into each other; its lid is sawn off the closed box."
  units = "mm"
  shop  = "shop.hcl"
}

contents "bottles" {
  label        = "Small bottles"
  kind         = "bottle"
  count        = 24
  diameter     = 25
  tall         = 58
  shoulder     = 45
  cap          = 20
  mass         = "40 g"
  columns      = 6
  rows         = 4
  play         = 2                  # cells of 27
  divider      = 5
  divider_high = 38                 # 20 of each stand out
  around       = 0.5
  lining       = 2
  above        = 1
  in           = space.inside
}

material "case" {
  asks      = "black walnut board"
  thickness = 10
}

material "divider" {
  asks = "birch plywood 5"
}

material "bottom" {
  asks = "birch plywood 6"
}

sizes {
  t    = material.case.thickness
  up   = 5                          # wood under the bottom, and over the top
  wide = contents.bottles.wide + 2 * sizes.t
  deep = contents.bottles.deep + 2 * sizes.t
  rim  = 40                         # of the base over the bottom: the bottles stand out of it
  high = contents.bottles.high + 2 * (sizes.up + material.bottom.thickness) + cut.lid.takes
}

group "box" {
  part "side" {
    of     = material.case
    grain  = "back"
    left   = 0
    front  = 0
    back   = sizes.deep
    bottom = 0
    high   = sizes.high
    mirror = sizes.wide
    show   = "outside"
  }

  part "end" {                      # front and back, mitred to the sides
    of     = material.case
    repeat = 2
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = (nth - 1) * (sizes.deep - sizes.t)
    bottom = 0
    high   = sizes.high
  }

  joint "corner" {
    kind  = "mitre"
    of    = part.end
    into  = part.side
    keys  = { count = 3, thickness = 3, depth = 12, margin = 15 }
    glue  = "pva"
    meets = 4
  }

  part "bottom" {
    of     = material.bottom
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.end[1].back
    back   = part.end[2].front
    bottom = sizes.up
  }

  part "top" {
    of     = material.bottom
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.end[1].back
    back   = part.end[2].front
    bottom = sizes.high - sizes.up - material.bottom.thickness
  }

  joint "panel" {
    kind  = "groove"
    of    = [part.bottom, part.top]
    into  = [part.side, part.end]
    depth = 5
    clear = { across = 0.2, deep = 0.5 }
    over  = [joint.corner]
    meets = 8
  }
}

cut "lid" {                         # sawn off when the closed box is glued
  kind  = "lid"
  on    = box
  base  = box.bottom.top + sizes.rim
  clean = 0                         # only rubbed level
}

space "inside" {
  left   = box.side.left.inside
  right  = box.side.right.inside
  front  = box.end[1].back
  back   = box.end[2].front
  bottom = box.bottom.top
  top    = box.top.bottom           # less what the saw takes between
}

group "grid" {                      # stands loose on the felt
  left   = sizes.t + contents.bottles.around
  front  = sizes.t + contents.bottles.around
  bottom = sizes.up + material.bottom.thickness + contents.bottles.lining

  part "long" {
    of     = material.divider
    repeat = contents.bottles.rows - 1
    grain  = "right"
    left   = 0
    wide   = contents.bottles.wide - 2 * contents.bottles.around
    front  = contents.bottles.slot_first_deep - material.divider.thickness / 2 + (nth - 1) * contents.bottles.pitch_deep
    bottom = 0
    high   = contents.bottles.divider_high
  }

  part "short" {
    of     = material.divider
    repeat = contents.bottles.columns - 1
    grain  = "back"
    front  = 0
    deep   = contents.bottles.deep - 2 * contents.bottles.around
    left   = contents.bottles.slot_first_wide - material.divider.thickness / 2 + (nth - 1) * contents.bottles.pitch_wide
    bottom = 0
    high   = contents.bottles.divider_high
  }

  joint "slot" {
    kind  = "halving"
    of    = part.long
    into  = part.short
    meets = 15
  }
}

hardware "hinge" {
  kind  = "butt hinge 25"
  count = 2
  on    = box.end[2]
  note  = "Half of each into the edge of the base, half into that of the lid, the knuckle outside at the back."
}
