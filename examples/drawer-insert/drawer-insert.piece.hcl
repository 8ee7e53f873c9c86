scantling = 1

piece "Drawer insert" {
  about = "Dividers for a kitchen drawer that is there already: what goes in follows from the smallest of its measures."
  units   = "mm"
  edition = "both"
  shop    = "shop.hcl"
}

# ------------------------------------------------ the drawer as it was measured

input "width_front" {
  label  = "Drawer inside, width at the front"
  length = 447
}

input "width_back" {
  label  = "Drawer inside, width at the back"
  length = 444.5
}

input "depth_left" {
  label  = "Drawer inside, depth at the left"
  length = 478
  from   = 300                      # the long bays and three walls alone take 296
}

input "depth_right" {
  label  = "Drawer inside, depth at the right"
  length = 477
  from   = 300
}

input "back_high" {
  label  = "Drawer inside, height of the lowest side"
  length = 76
}

input "diagonal_left" {
  label  = "Diagonal from the front left corner (0: not taken yet)"
  length = 0
}

input "diagonal_right" {
  label  = "Diagonal from the front right corner (0: not taken yet)"
  length = 0
}

material "wall" {
  asks      = "basswood board"
  thickness = 8
}

material "base" {
  asks = "birch plywood 4"
}

space "drawer" {                    # clear by the smallest of its measures
  left   = 0
  wide   = min(input.width_front, input.width_back)
  front  = 0
  deep   = min(input.depth_left, input.depth_right)
  bottom = 0
  high   = input.back_high
}

fit "insert" {                      # what goes in is so much less
  moves  = insert
  inside = space.drawer
  sides  = 2.5
  behind = 2
  above  = 3
}

sizes {
  wide    = round_down(space.drawer.wide - fit.insert.sides, 0.5)
  deep    = round_down(space.drawer.deep - fit.insert.behind, 0.5)
  most    = space.drawer.high - fit.insert.above
  high    = min(62, sizes.most)
  walls   = sizes.high - material.base.thickness
  t       = material.wall.thickness
  needs   = [70, 75, 85, 130]                     # knives, forks, spoons, servers
  bays    = spread(sizes.needs, sizes.wide - 5 * sizes.t)
  server  = 260                                   # the longest
  spoon   = 140                                   # a teaspoon, across the drawer's back
  long    = 270                                   # a server, and 10 to get under its end
  back    = sizes.deep - 3 * sizes.t - sizes.long # what is left for the teaspoons
  wanted  = 3 * sizes.t + sizes.long + sizes.spoon + 10 + fit.insert.behind
  cross   = sizes.t + sizes.long                  # front of the cross wall
}

group "insert" {
  part "side" {
    of     = material.wall
    grain  = "back"
    left   = 0
    front  = 0
    back   = sizes.deep
    bottom = material.base.thickness
    high   = sizes.walls
    mirror = sizes.wide
  }

  part "end" {                      # front and back, mitred to the sides
    of     = material.wall
    repeat = 2
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = (nth - 1) * (sizes.deep - sizes.t)
    bottom = material.base.thickness
    high   = sizes.walls
  }

  joint "corner" {
    kind  = "mitre"
    of    = part.end
    into  = part.side
    glue  = "pva"
    meets = 4
  }

  part "cross" {                    # between the long bays and the teaspoons
    of     = material.wall
    grain  = "right"
    left   = part.side.left.inside
    right  = part.side.right.inside
    front  = sizes.cross
    bottom = material.base.thickness
    high   = sizes.walls
  }

  joint "cross" {
    kind  = "housing"
    of    = part.cross
    into  = part.side
    depth = 2.7
    meets = 2
  }

  part "divider" {
    of     = material.wall
    repeat = 3
    grain  = "back"
    front  = part.end[1].back
    back   = part.cross.front
    left   = sizes.t + sum(slice(sizes.bays, 1, nth)) + (nth - 1) * sizes.t
    bottom = material.base.thickness
    high   = sizes.walls
  }

  joint "divider" {
    kind  = "housing"
    of    = part.divider
    into  = [part.end[1], part.cross]
    depth = 2.7
    meets = 6
  }

  part "base" {
    of     = material.base
    grain  = "right"
    left   = 0
    right  = sizes.wide
    front  = 0
    back   = sizes.deep
    bottom = 0
  }

  joint "base" {
    kind  = "butt"
    of    = part.base
    into  = [part.side, part.end, part.cross, part.divider]
    glue  = "pva"
    meets = 8
  }
}

measure "walls" {                   # a housing is as wide as its wall really is, not as it was meant
  label  = "What the walls really came out at, all planed at one setting: a cutter of 8 is too wide for one of 7.8"
  of     = [insert.side.left]
  take   = ["thickness"]
  after  = "the walls are planed"
  before = [insert.divider]
}

measure "dividers" {                # planned 270 + 2 × 2.7; what they are cut to is read where they go
  label  = "How long the dividers are cut: from housing bottom to housing bottom"
  of     = insert.divider
  take   = ["length"]
  after  = "sides, ends and cross wall stand together dry"
  before = [insert.divider]
}

step "take them out" {
  text  = "Try how they are taken out, from above and by the end: each bay is ${sizes.bays[1] - 70} wider than its things need and ${sizes.long - sizes.server} longer than the longest, the teaspoons have ${sizes.back - sizes.spoon} to spare. Beside them a finger wants 13: who takes them from the side lowers the front by 20 between its mitres before it is glued."
  after = [insert]
}

require "the smallest reading" {
  that    = max(space.drawer.wide - min(input.width_front, input.width_back), space.drawer.deep - min(input.depth_left, input.depth_right)) <= 0
  message = "The insert is made for ${space.drawer.wide} by ${space.drawer.deep}, and the drawer is ${min(input.width_front, input.width_back)} by ${min(input.depth_left, input.depth_right)} where it is smallest: take the smaller reading of each."
}

require "room for fingers" {
  that    = sizes.long - sizes.server >= 10
  message = "The long bays are ${sizes.long} and the longest server ${sizes.server}; 10 are wanted to get under its end. Make the bays ${sizes.server + 10}."
}

require "depth" {
  that    = sizes.wanted <= space.drawer.deep
  message = "From front to back ${sizes.wanted} are wanted: servers, teaspoons, three walls and room for a finger. The drawer has ${space.drawer.deep}, ${sizes.wanted - space.drawer.deep} too little. Lay the teaspoons elsewhere, or shorten the long bays if the servers allow it."
}

require "walls" {
  that    = sizes.walls >= 30
  message = "The walls come to ${sizes.walls} in a drawer whose lowest side is ${input.back_high}; 30 are wanted to keep the things apart, so it is ${30 - sizes.walls} too low. A thinner base gives some of that; else lay fewer things in, flat."
}

require "squareness of the drawer" {
  warn    = true
  that    = input.diagonal_left > 0 && input.diagonal_right > 0
  message = "Whether the drawer is square is not known: measure both diagonals before anything is cut."
}

require "it goes in" {
  that    = input.diagonal_left == 0 || abs(input.diagonal_left - input.diagonal_right) <= 3
  message = "The drawer is out of square by ${abs(input.diagonal_left - input.diagonal_right)} over its diagonals: take that off the width."
}
