scantling = 1

piece "Pen tray" {
  about = "A tray whose trough leaves too thin a floor."
  units = "mm"
}

material "tray" {
  asks      = "black cherry board"
  thickness = 14
}

part "tray" {
  of     = material.tray
  grain  = "right"
  left   = 0
  wide   = 320
  front  = 0
  deep   = 90
  bottom = 0
}

cut "trough" {
  kind  = "trough"
  on    = part.tray
  side  = "top"
  runs  = "right"
  near  = 20
  far   = 70
  depth = 9.5
}
