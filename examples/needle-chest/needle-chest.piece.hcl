scantling = 1

piece "Needle chest" {
  about   = "A chest of drawers for straight knitting needles: every needle in a channel of its own."
  units   = "mm"
  edition = input.edition
  shop    = "shop.hcl"
}

# ---------------------------------------------------------------- what may be changed

input "drawers" {
  label = "Drawers"
  count = 3
  from  = 2
  to    = 5
}

input "needle_length" {
  label  = "Needles, overall length"
  length = 350
  from   = 250
  to     = 400
}

input "head_diameter" {
  label  = "Needle heads, diameter"
  length = 12 # our assumption: measure yours
  from   = 8
  to     = 16
}

input "head_length" {
  label  = "Needle heads, length"
  length = 10 # our assumption: measure yours
  from   = 6
  to     = 16
}

input "side_thickness" {
  label  = "Case, thickness of the boards"
  length = 14
  from   = 12
  to     = 18
}

input "timber" {
  label   = "Timber of case, fronts and trays"
  choice  = "black cherry"
  choices = ["black cherry", "black walnut", "hard maple"]
}

input "least_width" {
  label  = "Case, least width"
  length = 220
  from   = 160
  to     = 420
}

input "edition" {
  label   = "Printed in"
  choice  = "mm"
  choices = ["mm", "in"]
}

# ---------------------------------------------------------------- what it must hold

contents "needles" {
  label  = "Straight knitting needles"
  rod    = [2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10]
  each   = 2
  length = input.needle_length
  head   = { diameter = input.head_diameter, length = input.head_length } # thicker than any rod: it sets the pitch
  play   = 3                                                              # along the needle
  mass   = "8 g"                                                          # one, the mean of all sizes in wood: our assumption, weigh yours
}

# ---------------------------------------------------------------- what it is made of

material "case" {
  asks      = "${input.timber} board"
  thickness = input.side_thickness # what it is dressed to; the rack says what it starts from
}

material "front" {
  asks      = "${input.timber} board"
  thickness = 14
}

material "drawer" {
  asks      = "hard maple board"
  thickness = 10
}

material "tray" {
  asks      = "${input.timber} board"
  thickness = 15
}

material "bottom" {
  asks = "birch plywood 4" # nominal; the shop says what it measures, and grooves follow
}

material "back" {
  asks = "birch plywood 6"
}

# ---------------------------------------------------------------- sizes that others follow from

sizes {
  shares = share(contents.needles, input.drawers) # one list of needles for each drawer
  most   = count(shares[1])                       # the first drawers hold the most

  # across: what is thickest sets the pitch, the drawer's needles the width
  pitch        = max(input.head_diameter, contents.needles.thickest) + 2
  margin       = 4
  row          = most * pitch + 2 * margin
  least_inside = input.least_width - 2 * material.case.thickness - fit.drawer.sides - 2 * material.drawer.thickness
  trays        = ceil(max(row, least_inside) / "150 mm") # wider than 150: side by side
  each         = ceil(most / trays)
  tray_slack   = round_up(loose(material.tray, "150 mm"), 0.1) # what one tray may move, and half a millimetre
  tray_wide    = round_up(max(each * pitch + 2 * margin, least_inside / trays - tray_slack), 1)
  slots        = floor((tray_wide - 2 * margin) / pitch) # channels in each tray, spare ones too
  tray_long    = input.needle_length + contents.needles.play
  end_play     = 1

  # drawer
  stop_high   = 5
  bottom_up   = stop_high + 5 # underside of the ply above the drawer's lower edge: clear of the stops
  tray_top    = bottom_up + material.bottom.thickness + material.tray.thickness
  head_above  = input.head_diameter / 2 + 2 # a needle lies half sunk, so its head stands up by half
  scoop       = 16
  drawer_high = round_up(max(tray_top + head_above + scoop, 48), 1)
  drawer_wide = 2 * material.drawer.thickness + trays * (tray_wide + tray_slack)
  drawer_long = material.front.thickness + tray_long + end_play + material.drawer.thickness

  # case: each sum said once
  inside_wide = drawer_wide + fit.drawer.sides
  opening     = drawer_high + fit.drawer.above
  case_wide   = inside_wide + 2 * material.case.thickness
  case_deep   = drawer_long + fit.drawer.behind + material.back.thickness
  case_high   = input.drawers * opening + (input.drawers + 1) * material.case.thickness
}

# ---------------------------------------------------------------- the case

group "case" {
  label = "Case"

  part "side" {
    of     = material.case
    grain  = "up"
    left   = 0
    front  = 0
    bottom = 0
    high   = sizes.case_high
    deep   = sizes.case_deep
    mirror = sizes.case_wide # its twin stands at the right of this width
    show   = "outside"
  }

  part "bottom" {
    of     = material.case
    grain  = "right"
    left   = part.side.left.inside # stretches from face to face; the joint adds its own depth
    right  = part.side.right.inside
    front  = 0
    back   = sizes.case_deep
    bottom = 0
    show   = "bottom"
  }

  part "top" {
    of    = material.case
    grain = "right"
    left  = part.side.left.inside
    right = part.side.right.inside
    front = 0
    back  = sizes.case_deep
    top   = sizes.case_high
    show  = "top"
  }

  part "divider" {
    of     = material.case
    repeat = input.drawers - 1
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0
    back   = part.back.front
    bottom = nth * (material.case.thickness + sizes.opening)
    show   = "front"
  }

  part "back" {
    of     = material.back
    grain  = "up"
    left   = part.side.left.inside
    right  = part.side.right.inside
    bottom = part.bottom.top
    top    = part.top.bottom
    back   = sizes.case_deep
  }

  joint "corner" {
    kind  = "rebate"
    of    = [part.top, part.bottom]
    into  = part.side
    meets = 4
    glue  = "pva"
    pins  = { kind = "panel pin 25", count = 4, margin = 25 }
  }

  joint "divider" {
    kind    = "housing" # depth: a third of the side unless said; the divider grows by it
    of      = part.divider
    into    = part.side
    meets   = 2 * (input.drawers - 1)
    stopped = { front = 8 }
    glue    = "pva"
  }

  joint "back" {
    kind  = "rebate"
    of    = part.back
    into  = [part.side, part.top, part.bottom]
    meets = 4
    depth = joint.corner.depth # as deep as the corner's own rebate: it then runs through and nothing shows
    over  = [joint.corner, joint.divider]
    pins  = { kind = "panel pin 20", count = 4, margin = 20 }
  }

  space "opening" {
    label  = "Opening for drawer ${nth}"
    repeat = input.drawers
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = 0 # open
    back   = part.back.front
    bottom = nth == 1 ? part.bottom.top : part.divider[nth - 1].top
    top    = nth == input.drawers ? part.top.bottom : part.divider[nth].bottom
  }

  part "stop" {
    of     = material.drawer
    repeat = 2 * input.drawers # two to each drawer, on the board it slides on
    grain  = "right"
    wide   = 30
    deep   = 14
    high   = sizes.stop_high # planed thinner than the rest of the drawer stock
    left   = part.side.left.inside + (odd(nth) ? 30 : sizes.inside_wide - 60)
    front  = drawer[ceil(nth / 2)].front.thickness + 0.5
    bottom = space.opening[ceil(nth / 2)].bottom
    after  = measure.drawers # fitted last, to the closed drawer
  }

  joint "stop" {
    kind  = "butt"
    of    = part.stop
    into  = [part.bottom, part.divider]
    meets = 2 * input.drawers
    glue  = "pva"
  }

  part "block" {
    label  = "out-stop block"
    of     = material.drawer
    repeat = input.drawers # under the board above each drawer: the turn button on the drawer's back meets it
    grain  = "right"
    wide   = 16
    deep   = 14
    high   = sizes.stop_high
    left   = part.side.left.inside + 18 # clear of the drawer's side, and of the finger in the scoop
    front  = drawer[nth].front.thickness + 0.5
    top    = space.opening[nth].top
    after  = measure.drawers # with the stops
  }

  joint "block" {
    kind  = "butt"
    of    = part.block
    into  = [part.top, part.divider]
    meets = input.drawers
    glue  = "pva"
  }
}

# ---------------------------------------------------------------- the drawers

group "drawer" {
  label  = "Drawer ${nth}"
  repeat = input.drawers
  inside = case.opening[nth]
  left   = case.opening[nth].left + fit.drawer.sides / 2
  front  = 0
  bottom = case.opening[nth].bottom

  use "drawer" {
    wide         = case.opening[nth].wide - fit.drawer.sides # as the opening comes out, so does its drawer
    high         = case.opening[nth].high - fit.drawer.above
    long         = sizes.drawer_long
    front_timber = material.front
    side_timber  = material.drawer
    bottom_sheet = material.bottom
    bottom_up    = sizes.bottom_up
    scoop_depth  = sizes.scoop
    scoop_wide   = 64
    stop_from    = 30 # the back is notched where it passes over the stops
    stop_wide    = 30
    stop_high    = sizes.stop_high
    block_from   = 18 # and under the out-stop block above
    block_wide   = 16
    block_high   = sizes.stop_high
  }

  use "needle tray" {
    as       = "tray"
    repeat   = sizes.trays
    of       = material.tray
    holds    = slice(sizes.shares[nth_of.drawer], (nth - 1) * sizes.slots + 1, sizes.slots)
    slots    = sizes.slots
    long     = sizes.tray_long
    wide     = sizes.tray_wide
    pitch    = sizes.pitch
    head     = contents.needles.head
    left     = part.side.left.inside + sizes.tray_slack / 2 + (nth - 1) * (sizes.tray_wide + sizes.tray_slack)
    front    = part.front.back + sizes.end_play / 2
    bottom   = part.bottom.top
  }

  hardware "out-stop" {
    kind  = "turn button"
    count = 1
    on    = part.back
    note  = "Screwed to the inside of the drawer back beside the notch in its top edge: turned aside it lets the drawer in under the out-stop block; turned across the notch it meets the block before the drawer falls out."
  }
}

fit "drawer" {
  moves  = drawer
  inside = case.opening
  sides  = 0.8
  above  = round_up(season(sizes.drawer_high, [material.front, material.drawer], 0.5), 0.5)
  behind = round_up(season_dry(sizes.drawer_long + material.back.thickness, [material.case], 2), 1)
}

# ---------------------------------------------------------------- taken from the work

measure "case boards" {
  label  = "What the case boards really came out at"
  of     = [case.side.left, case.top]
  take   = ["thickness"]
  after  = "the case boards are planed"
  before = [case.divider, case.back]
}

measure "openings" {
  label  = "The drawer openings"
  of     = case.opening
  take   = ["width front", "width back", "height left", "height right", "diagonals"]
  after  = "the case is glued and square"
  stage  = case
  before = [drawer]
}

measure "drawers" {
  label  = "How thick the drawer fronts came out: the stops stand behind them"
  of     = drawer.front
  take   = ["thickness"]
  after  = "the drawers run"
  stage  = drawer
  before = [case.stop]
}

# ---------------------------------------------------------------- finish and the maker's own words

finish "outside" {
  kind  = "shellac"
  coats = 3
  on    = [case.side, case.top, case.bottom, drawer.front]
  when  = "after assembly"
}

finish "runners" {
  kind  = "wax"
  coats = 1
  on    = [drawer.side]
  when  = "after assembly"
}

step "sort the needles" {
  text  = "Lay the needles out by size and try each in its channel before any finish goes on."
  after = [drawer.tray]
}

step "lay the trays in" {
  text  = "Lay the trays into their drawers loose, never glued, the trough for the heads to the front: the first of a drawer's trays at the left. What play there is belongs to the seasons."
  after = [drawer]
}

require "front below the scoop" {
  that    = sizes.drawer_high - sizes.scoop >= 20
  message = "Only ${sizes.drawer_high - sizes.scoop} of the drawer front is left below the scoop; 20 is wanted."
}
