scantling = 1

recipe "needle tray" {
  about = "A loose tray of solid timber, grain along the needles: a channel for each, a trough across one end for the heads, a finger hollow across the middle."
}

input "of" {
  label    = "Timber"
  material = "tray"
}

input "holds" {
  label  = "The needles, in order"
  things = []
}

input "slots" {
  label = "Channels, spare ones too"
  count = 8
}

input "long" {
  label  = "Length, along the needles"
  length = 353
}

input "wide" {
  label  = "Width"
  length = 120
}

input "pitch" {
  label  = "From channel to channel"
  length = 14
}

input "head" {
  label = "Needle heads"
  head  = { diameter = 12, length = 10 }
}

part "tray" {
  of     = input.of
  grain  = "back"
  left   = 0
  wide   = input.wide
  front  = 0
  deep   = input.long
  bottom = 0
  show   = "top"
}

# A trough across the front end takes the heads; it is cut first.
cut "heads" {
  kind  = "trough"
  on    = part.tray
  side  = "top"
  runs  = "right"
  near  = 0
  far   = input.head.length + 3
  depth = input.head.diameter / 2 + 0.5
}

# One finger hollow across the channels, near the middle, cut before them.
cut "hollow" {
  kind   = "trough"
  on     = part.tray
  side   = "top"
  runs   = "right"
  centre = round(input.long / 2, 1)
  width  = 40
  depth  = 7
  cutter = "round-nose 12.7"
}

series "channel" {
  kind   = "channel"
  on     = part.tray
  side   = "top"
  runs   = "back"
  holds  = input.holds # one channel for each, as wide as the shop's cutter leaves it
  slots  = input.slots # the rest are spare, cut as the last needle's
  pitch  = input.pitch
  place  = "centred"
  after  = [cut.heads, cut.hollow]
}
