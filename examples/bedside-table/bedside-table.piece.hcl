scantling = 1

piece "Bedside table" {
  about = "A small table with tapered legs and one drawer on wooden runners."
  units = "mm"
  shop  = "shop.hcl"
}

contents "tablet" {
  label = "Tablet"
  kind  = "box"
  count = 1
  size  = [250, 180, 8]             # along the drawer's width
  mass  = "0.5 kg"
  in    = drawer.place[1]
}

contents "spectacles" {             # in front of it
  label = "Spectacle case"
  kind  = "box"
  count = 1
  size  = [165, 65, 45]
  mass  = "0.1 kg"
  in    = drawer.place[2]
}

material "leg" {
  asks      = "American white ash board"
  thickness = 40
}

material "frame" {
  asks      = "American white ash board"
  thickness = 20
}

material "front" {
  asks      = "American white ash board"
  thickness = 18
}

material "back" {
  asks      = "American white ash board"
  thickness = 12
}

material "side" {
  asks      = "American white ash board"
  thickness = 10                    # bought: no band saw here opens a board of 27
}

material "bottom" {
  asks = "birch plywood 6"
}

sizes {
  wide     = 390                    # of the frame: the top stands out by 30 all round
  deep     = 340
  high     = 580                    # under the top
  overhang = 30
  leg      = material.leg.thickness
  rail     = material.frame.thickness
  opening  = 85
  apron    = rail + opening + rail
  drawer   = opening - fit.drawer.above
  long     = 300                    # of the drawer: 340 - 20 of the apron leave 20 for the stop
}

group "frame" {
  part "leg" {                      # 1 and 2 in front, 3 and 4 behind
    of     = material.leg
    repeat = 4
    grain  = "up"
    left   = odd(nth) ? 0 : sizes.wide - sizes.leg
    wide   = sizes.leg
    front  = nth <= 2 ? 0 : sizes.deep - sizes.leg
    bottom = 0
    high   = sizes.high
    show   = nth <= 2 ? "front" : "back"
  }

  part "apron" {                    # left, right
    label  = "side apron"
    of     = material.frame
    repeat = 2
    grain  = "back"
    left   = nth == 1 ? 0 : sizes.wide - sizes.rail
    front  = part.leg[nth].back
    back   = part.leg[nth + 2].front
    high   = sizes.apron
    top    = sizes.high
    show   = nth == 1 ? "left" : "right"
  }

  part "back" {
    label  = "back apron"
    of     = material.frame
    grain  = "right"
    left   = part.leg[3].right
    right  = part.leg[4].left
    back   = sizes.deep
    high   = sizes.apron
    top    = sizes.high
    show   = "back"
  }

  part "rail" {                     # under the drawer and over it
    of     = material.frame
    repeat = 2
    grain  = "right"
    left   = part.leg[1].right
    right  = part.leg[2].left
    front  = 0
    deep   = sizes.leg
    bottom = nth == 1 ? sizes.high - sizes.apron : sizes.high - sizes.rail
    show   = "front"
  }

  # The mortises lie 5 from the outside: so those of a back leg do not run into one another.
  joint "left" {
    kind  = "tenon"
    of    = part.apron[1]
    into  = [part.leg[1], part.leg[3]]
    depth = 25
    tenon = { thickness = 6.35, from = 5, round = true }
    glue  = "pva"
    meets = 2
  }

  joint "right" {
    kind  = "tenon"
    of    = part.apron[2]
    into  = [part.leg[2], part.leg[4]]
    depth = 25
    tenon = { thickness = 6.35, from = sizes.rail - 5 - 6.35, round = true }
    glue  = "pva"
    meets = 2
  }

  joint "back" {
    kind  = "tenon"
    of    = part.back
    into  = [part.leg[3], part.leg[4]]
    depth = 25
    tenon = { thickness = 6.35, from = sizes.rail - 5 - 6.35, round = true }
    glue  = "pva"
    meets = 2
  }

  joint "rail" {
    kind   = "dowel"
    of     = part.rail
    into   = [part.leg[1], part.leg[2]]
    dowels = { diameter = 8, count = 2, margin = 10 }
    glue   = "pva"
    meets  = 4
  }

  # The two inner sides of each leg, from below the aprons to the floor.
  cut "taper front left" {
    kind   = "taper"
    on     = part.leg[1]
    sides  = ["right", "back"]
    end    = "bottom"
    from   = sizes.high - sizes.apron - 30
    leaves = 25
  }

  cut "taper front right" {
    kind   = "taper"
    on     = part.leg[2]
    sides  = ["left", "back"]
    end    = "bottom"
    from   = sizes.high - sizes.apron - 30
    leaves = 25
  }

  cut "taper back left" {
    kind   = "taper"
    on     = part.leg[3]
    sides  = ["right", "front"]
    end    = "bottom"
    from   = sizes.high - sizes.apron - 30
    leaves = 25
  }

  cut "taper back right" {
    kind   = "taper"
    on     = part.leg[4]
    sides  = ["left", "front"]
    end    = "bottom"
    from   = sizes.high - sizes.apron - 30
    leaves = 25
  }

  part "runner" {                   # the drawer slides on it
    of     = material.frame
    repeat = 2
    grain  = "back"
    left   = nth == 1 ? part.apron[1].right : part.apron[2].left - 40
    wide   = 40
    front  = part.rail[1].back
    back   = part.leg[3].front
    bottom = part.rail[1].bottom
  }

  part "kicker" {                   # keeps the drawer from tipping; holds the top
    of     = material.frame
    repeat = 2
    grain  = "back"
    left   = nth == 1 ? part.apron[1].right : part.apron[2].left - 40
    wide   = 40
    front  = part.rail[2].back
    back   = part.leg[3].front
    bottom = part.rail[2].bottom
  }

  part "guide" {                    # flush with the legs inside
    of     = material.frame
    repeat = 2
    grain  = "back"
    left   = nth == 1 ? part.apron[1].right : part.apron[2].left - 20
    wide   = 20
    front  = part.rail[1].back
    back   = part.leg[3].front
    bottom = part.runner[1].top
  }

  joint "runner" {
    kind  = "butt"
    of    = [part.runner, part.kicker]
    into  = part.apron
    glue  = "pva"
    meets = 4
  }

  joint "guide" {
    kind  = "butt"
    of    = part.guide
    into  = part.runner
    glue  = "pva"
    meets = 2
  }

  part "stop" {                     # planed until the front is flush
    of     = material.frame
    grain  = "right"
    left   = sizes.wide / 2 - 40
    wide   = 80
    back   = part.back.front
    bottom = part.rail[1].top
    high   = 40
    after  = measure.opening
  }

  joint "stop" {
    kind  = "butt"
    of    = part.stop
    into  = part.back
    glue  = "pva"
  }

  space "opening" {
    left   = part.leg[1].right
    right  = part.leg[2].left
    front  = 0
    back   = part.back.front
    bottom = part.rail[1].top
    top    = part.rail[2].bottom
  }
}

part "top" {
  of     = material.frame
  grain  = "right"
  left   = frame.leg[1].left - sizes.overhang
  right  = frame.leg[2].right + sizes.overhang
  front  = frame.leg[1].front - sizes.overhang
  back   = frame.leg[3].back + sizes.overhang
  bottom = frame.leg[1].top
  show   = "top"
}

joint "top" {                       # up through the kickers: the middle screw tight, the others in slots
  kind   = "butt"
  of     = frame.kicker
  into   = part.top
  slides = true
  screws = { kind = "screw 4 x 35", count = 3, margin = 40, slot = 3, pilot = 2.5, sink = false }
  meets  = 2
}

cut "arris" {
  kind   = "eased"
  on     = part.top
  edges  = [["top", "left"], ["top", "right"], ["top", "front"], ["top", "back"]]
  radius = 1
}

group "drawer" {
  inside = frame.opening
  left   = frame.opening.left + fit.drawer.sides / 2
  front  = 0
  bottom = frame.opening.bottom

  part "front" {
    of     = material.front
    grain  = "right"
    left   = 0
    wide   = frame.opening.wide - fit.drawer.sides
    bottom = 0
    high   = sizes.drawer
    front  = 0
    show   = "front"
  }

  part "side" {
    of     = material.side
    grain  = "back"
    left   = 0
    front  = part.front.back
    back   = sizes.long
    bottom = 0
    high   = sizes.drawer
    mirror = part.front.wide
    show   = "outside"
  }

  part "back" {
    of     = material.back
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    back   = sizes.long
    bottom = 0
    high   = sizes.drawer
  }

  part "bottom" {
    of     = material.bottom
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.front.back
    back   = part.back.front
    bottom = 10
  }

  joint "front" {
    kind  = "rebate"
    of    = part.side
    into  = part.front
    glue  = "pva"
    pins  = { kind = "panel pin 20", count = 2, margin = 20 }
    meets = 2
  }

  joint "back" {
    kind  = "rebate"
    of    = part.back
    into  = part.side
    glue  = "pva"
    pins  = { kind = "panel pin 20", count = 2, margin = 20 }
    meets = 2
  }

  joint "bottom" {
    kind  = "groove"
    of    = part.bottom
    into  = [part.front, part.side, part.back]
    clear = { across = 0.2, deep = 0.5 }
    over  = [joint.front, joint.back]
    meets = 4
  }

  hardware "out-stop" {
    kind  = "turn button"
    count = 1
    on    = part.back
    note  = "Screwed to the inside of the drawer's back: turned up it meets the rail over the drawer before the drawer falls out."
  }

  space "inside" {
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = part.front.back
    back   = part.back.front
    bottom = part.bottom.top
    top    = part.side.left.top
  }

  space "place" {                   # behind for the tablet, in front of it for the spectacle case
    repeat = 2
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = nth == 1 ? part.back.front - contents.tablet.deep : part.front.back
    back   = nth == 1 ? part.back.front : part.back.front - contents.tablet.deep
    bottom = part.bottom.top
    top    = part.side.left.top
  }
}

require "both lie side by side" {
  that    = contents.tablet.deep + contents.spectacles.deep <= drawer.inside.deep && contents.spectacles.high <= drawer.inside.high
  message = "The tablet and the spectacle case want ${contents.tablet.deep + contents.spectacles.deep} of ${drawer.inside.deep}, and ${contents.spectacles.high} of ${drawer.inside.high} in height."
}

fit "drawer" {
  moves  = drawer
  inside = frame.opening
  sides  = 2
  above  = 2
}

hardware "knob" {                   # a little over the middle of a front of 83
  kind   = "knob 25"
  on     = drawer.front
  side   = "front"
  centre = 45
}

measure "opening" {
  of     = frame.opening
  take   = ["width front", "width back", "height left", "height right", "diagonals"]
  after  = "the frame is glued and square"
  stage  = frame
  before = [drawer]
}

finish "outside" {
  kind  = "danish oil"
  coats = 3
  on    = [part.top, frame.leg, frame.apron, frame.back, frame.rail]
}

finish "running" {                  # no oil inside a drawer: it smells for years
  kind  = "wax"
  coats = 1
  on    = [frame.runner, frame.kicker, frame.guide, drawer.side]
}
