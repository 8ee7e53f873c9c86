scantling = 1

piece "Gouge tray" {
  about = "A tray for seven carving gouges, each in a round-bottomed channel with closed ends."
  units = "mm"
  shop  = "shop.hcl"
}

input "gouges" {
  label = "Gouges"
  count = 7
  from  = 3
  to    = 9
}

input "sunk" {
  label  = "Depth of the channels"
  length = 8
  from   = 6
  to     = 10
}

contents "gouges" {
  label  = "Carving gouges"
  rod    = 25                     # across the corners of the handle
  sides  = 8
  each   = input.gouges
  length = 262                    # the longest, over all
  play   = 8
  finger = 13                     # to take one by the handle, between two
  sharp  = true
}

material "tray" {
  asks      = "black cherry board"
  thickness = 20
}

sizes {
  pitch = contents.gouges.pitch
  edge  = 25                      # from the tray's side to the first centre
  wall  = 13.2                    # wood left beyond the mouth at each end
}

part "tray" {
  of     = material.tray
  grain  = "back"
  left   = 0
  wide   = (input.gouges - 1) * sizes.pitch + 2 * sizes.edge
  front  = 0
  deep   = 320
  bottom = 0
  show   = "top"
}

series "bed" {                    # closed at both ends, as the cutter leaves them
  kind   = "channel"
  on     = part.tray
  side   = "top"
  holds  = contents.gouges
  cutter = "core box 25.4"
  depth  = input.sunk
  pitch  = sizes.pitch
  margin = sizes.edge - mouth(25.4, input.sunk) / 2
  from   = sizes.wall
  flat   = contents.gouges.place
}

cut "soft" {
  kind   = "eased"
  on     = part.tray
  edges  = [["top", "left"], ["top", "right"], ["top", "front"], ["top", "back"]]
  radius = 2
}

finish "all over" {
  kind  = "shellac"
  coats = 3
  on    = part.tray
}

require "walls" {
  that    = part.tray.deep - sizes.wall * 2 - contents.gouges.place >= 23.5
  message = "The round ends need ${contents.gouges.place + 23.6} of length between the walls."
}
