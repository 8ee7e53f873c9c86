scantling = 1

piece "Spice chest" {
  about = "A chest of four equal drawers, each for twenty-four jars that stand with their labels up."
  units = "mm"
  shop  = "shop.hcl"
}

contents "jars" {
  label    = "Spice jars"
  kind     = "jar"
  count    = 96
  among    = 4
  columns  = 6
  rows     = 4
  diameter = 44
  cap      = 44
  tall     = 96
  mass     = "0.16 kg"
  play     = 2
  around   = 2
  above    = 4.4                    # over the caps: at least 3, and no more than a label can be read by
  in       = drawer.inside
}

material "case" {
  asks      = "black cherry board"
  thickness = 20
}

material "front" {
  asks      = "black cherry board"
  thickness = 18
}

material "drawer" {
  asks      = "yellow-poplar board"
  thickness = 12
}

material "bottom" {
  asks = "birch plywood 6"
}

sizes {
  drawer  = 114                     # 8 + 5.6 + 96 + 3 = 112.6, rounded up
  opening = 116                     # 2 over each drawer
  wide    = contents.jars.wide + 2 * material.drawer.thickness    # of a drawer: 304
  long    = contents.jars.deep + material.front.thickness + material.drawer.thickness    # 218
  clear   = wide + 1                # 305 between the sides
  stop_high = 5
  depth   = long + fit.drawer.behind + material.bottom.thickness # 236 with its back
  high    = 4 * opening + 5 * material.case.thickness
}

group "case" {
  part "side" {
    of     = material.case
    grain  = "up"
    left   = 0
    front  = 0
    back   = sizes.depth
    bottom = 0
    high   = sizes.high
    mirror = sizes.clear + 2 * material.case.thickness
    show   = "outside"
  }

  part "board" {                    # bottom, three dividers that end at the back, top
    of     = material.case
    repeat = 5
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = nth == 1 || nth == 5 ? sizes.depth : sizes.depth - material.bottom.thickness
    bottom = (nth - 1) * (sizes.opening + material.case.thickness)
  }

  part "back" {                     # let into the case all round: it keeps it square
    of     = material.bottom
    grain  = "up"
    left   = part.side.left.inside
    right  = part.side.right.inside
    bottom = part.board[1].top
    top    = part.board[5].bottom
    back   = sizes.depth
  }

  joint "ends" {
    kind  = "rebate"
    of    = [part.board[1], part.board[5]]
    into  = part.side
    meets = 4
    glue  = "pva"
    pins  = { kind = "panel pin 20", count = 3, margin = 30 }
  }

  joint "dividers" {
    kind  = "housing"
    of    = [part.board[2], part.board[3], part.board[4]]
    into  = part.side
    depth = 6
    meets = 6
    glue  = "pva"
  }

  joint "back" {
    kind  = "rebate"
    of    = part.back
    into  = [part.side, part.board[1], part.board[5]]
    meets = 4
    depth = joint.ends.depth
    over  = [joint.ends, joint.dividers]
    pins  = { kind = "panel pin 20", count = 5, margin = 25 }
  }

  part "stop" {                     # two to each drawer, on the board that it slides on
    of     = material.drawer
    repeat = 8
    grain  = "right"
    left   = part.side.left.inside + (odd(nth) ? 30 : sizes.clear - 60)
    wide   = 30
    front  = drawer[ceil(nth / 2)].front.thickness + 0.5
    deep   = 14
    bottom = part.board[ceil(nth / 2)].top
    high   = sizes.stop_high        # planed thinner than the rest of the drawer stock
    after  = measure.openings       # fitted last, to the closed drawer
  }

  joint "stop" {
    kind  = "butt"
    of    = part.stop
    into  = part.board
    meets = 8
    glue  = "pva"
  }

  part "block" {                    # under the board above: the turn button on the back meets it
    label  = "out-stop block"
    of     = material.drawer
    repeat = 4
    grain  = "right"
    left   = part.side.left.inside + 18
    wide   = 16
    front  = drawer[nth].front.thickness + 0.5
    deep   = 14
    top    = part.board[nth + 1].bottom
    high   = sizes.stop_high
    after  = measure.openings
  }

  joint "block" {
    kind  = "butt"
    of    = part.block
    into  = part.board
    meets = 4
    glue  = "pva"
  }

  space "opening" {                 # from below upwards
    repeat = 4
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = part.back.front
    bottom = part.board[nth].top
    top    = part.board[nth + 1].bottom
  }
}

group "drawer" {
  repeat = 4
  inside = case.opening[nth]
  left   = case.opening[nth].left + 0.5
  front  = 0
  bottom = case.opening[nth].bottom

  use "drawer" {
    wide         = sizes.wide
    high         = sizes.drawer
    long         = sizes.long
    front_timber = material.front
    side_timber  = material.drawer
    scoop_depth  = 0
    stop_high    = sizes.stop_high  # the back is notched over the stops
    block_high   = sizes.stop_high  # and under the block
  }

  hardware "out-stop" {
    kind  = "turn button"
    count = 1
    on    = part.back
    note  = "Screwed to the inside of the drawer's back beside the notch in its top edge: turned across the notch it meets the block before the drawer falls out."
  }

  space "inside" {
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.front.back
    back   = part.back.front
    bottom = part.bottom.top
    top    = part.side.left.top
  }
}

fit "drawer" {
  moves  = drawer
  inside = case.opening
  sides  = 1
  above  = 2
  behind = 12.4                     # at least 10, for the stops and the turn buttons
}

hardware "knob" {                   # one in the middle: two pulls would rack a drawer that is wider than long
  kind = "knob 25"
  on   = drawer.front
  side = "front"
}

together "fronts" {                 # 4 × 304 + 3 × 3 of one board
  of = drawer.front
}

measure "openings" {
  of     = case.opening
  take   = ["width front", "width back", "height left", "height right", "diagonals"]
  after  = "the case is glued and square"
  stage  = case
  before = [drawer]
}

step "fix it" {
  text    = "Fix the chest to the wall."
  caution = "With three full drawers out it falls forward: it must be fixed before the drawers are filled."
}
