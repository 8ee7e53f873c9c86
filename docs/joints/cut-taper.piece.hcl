# cut: Taper
# order: 48
# An edge or a face that runs off toward an end, on one side or several.
scantling = 1

piece "Taper" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "board" {
  of     = material.case
  grain  = "up"
  left   = 0
  wide   = 40
  front  = 0
  bottom = 0
  high   = 200
}

cut "it" {
  kind   = "taper"
  on     = part.board
  sides  = ["right"]
  end    = "bottom"
  from   = 140
  leaves = 20
}
