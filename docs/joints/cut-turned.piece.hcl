# cut: Turned part
# order: 59
# Round about its length, by a profile of straights and arcs.
scantling = 1

piece "Turned part" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "leg" {
  of       = material.case
  grain    = "down"
  left     = 0
  front    = 0
  diameter = 18
  bottom   = 0
  high     = 200
  profile  = [[0, 10], [40, 12], { through = [60, 18] }, [80, 12], [150, 18], [200, 18]]
}
