# cut: Channel, through and stopped
# order: 42
# Round-bottomed. Where it stops it keeps the ball end of its cutter; what is square-ended lies flat only as far as the round. One that is blind at both ends wants a plunge router with a guide and two stops.
scantling = 1

piece "Channel, through and stopped" {
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
  wide   = 330
  front  = 0
  deep   = 90
  bottom = 0
  show   = "top"
}

cut "through" {
  kind   = "channel"
  on     = part.board
  side   = "top"
  centre = 25
  width  = 12.7
  depth  = 6
  radius = 6.35
}

cut "stopped" {
  kind   = "channel"
  on     = part.board
  side   = "top"
  centre = 60
  width  = 12.7
  depth  = 6
  radius = 6.35
  from   = 40
  ends   = "round"
}
