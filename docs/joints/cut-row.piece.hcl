# cut: A row of cuts
# order: 58
# Any of channel, groove, housing, mortise, notch, recess and hole, by an even pitch, by pitches, by the land between, or by the things it holds.
scantling = 1

piece "A row of cuts" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "board" {
  of     = material.case
  grain  = "right"
  left   = 0
  wide   = 220
  front  = 0
  deep   = 90
  bottom = 0
  show   = "top"
}

series "it" {
  kind    = "notch"
  on      = part.board
  side    = "front"
  runs    = "up"
  width   = 10
  depth   = 14
  pitches = [24, 28, 32, 36]
  margin  = 20
}
