scantling = 1

piece "Record rack" {
  about = "A rack for three hundred records and a third more, on the floor: two levels of two bays."
  units = "mm"
  shop  = "shop.hcl"
}

input "records" {
  label = "Records to be held"
  count = 300
  from  = 150
  to    = 320
}

input "upright" {
  label  = "An upright in the middle"
  choice = "yes"
  choices = ["yes", "no"]
}

contents "records" {
  label  = "Long-playing records"
  kind   = "sheet"
  count  = input.records
  growth = 0.3                          # the shelves must bear those to come as well
  flip   = 0.05                         # to leaf through them
  size   = [315, 315]
  thick  = 4                            # 62 of them measured 248
  mass   = "0.26 kg"                    # and weighed 16.1 kg
  among  = input.upright == "yes" ? 4 : 2
  above  = 15                           # to get a finger over them
  in     = [space.low, space.high]
}

material "case" {
  asks = "birch plywood 18"
}

sizes {
  inside = 850
  high   = 3 * material.case.thickness + 2 * contents.records.high
  deep   = 330
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = sizes.deep
  bottom = 0
  high   = sizes.high
  mirror = sizes.inside + 2 * material.case.thickness
  show   = "outside"
}

part "shelf" {                          # bottom, middle, top
  of     = material.case
  repeat = 3
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  deep   = sizes.deep
  bottom = (nth - 1) * (contents.records.high + material.case.thickness)
}

part "upright" {
  if     = input.upright == "yes"
  of     = material.case
  repeat = 2
  grain  = "up"
  left   = material.case.thickness + (sizes.inside - material.case.thickness) / 2
  front  = 0
  deep   = sizes.deep
  bottom = nth == 1 ? part.shelf[1].top : part.shelf[2].top
  top    = nth == 1 ? part.shelf[2].bottom : part.shelf[3].bottom
}

joint "ends" {                          # bottom and top lie at the ends of the sides
  kind   = "rebate"
  of     = [part.shelf[1], part.shelf[3]]
  into   = part.side
  depth  = 6
  meets  = 4
  glue   = "pva"
  pins   = { kind = "panel pin 25", count = 4, margin = 30 }
}

joint "middle" {
  kind  = "housing"
  of    = part.shelf[2]
  into  = part.side
  depth = 6
  meets = 2
  glue  = "pva"
}

joint "upright in the middle" {         # 5, not 6: two housings lie back to back there
  if    = input.upright == "yes"
  kind  = "housing"
  of    = part.upright
  into  = part.shelf[2]
  depth = 5
  meets = 2
  glue  = "pva"
}

joint "upright at the ends" {
  if    = input.upright == "yes"
  kind  = "housing"
  of    = part.upright
  into  = [part.shelf[1], part.shelf[3]]
  depth = 6
  meets = 2
  glue  = "pva"
}

space "low" {                           # the bays of the lower row
  repeat = input.upright == "yes" ? 2 : 1
  left   = nth == 1 ? part.side.left.inside : part.upright[1].right
  right  = input.upright == "yes" && nth == 1 ? part.upright[1].left : part.side.right.inside
  front  = 0
  back   = sizes.deep
  bottom = part.shelf[1].top
  top    = part.shelf[2].bottom
}

space "high" {                          # and of the upper one
  repeat = input.upright == "yes" ? 2 : 1
  left   = nth == 1 ? part.side.left.inside : part.upright[2].right
  right  = input.upright == "yes" && nth == 1 ? part.upright[2].left : part.side.right.inside
  front  = 0
  back   = sizes.deep
  bottom = part.shelf[2].top
  top    = part.shelf[3].bottom
}

step "fix it" {
  text    = "Fix the rack to the wall at its top shelf."
  caution = "Full, it weighs more than a person and is top-heavy when pulled: it must be fixed before it is loaded."
}
