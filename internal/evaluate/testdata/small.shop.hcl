scantling = 1

# A shop with little in it: the base that the examples of shop codes add to.
shop "Small" {
  units = "mm"
}

board "cherry" {
  species   = "black cherry"
  state     = "rough"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 1
}

sheet "ply 6" {
  kind      = "birch plywood"
  nominal   = 6
  thickness = 5.6
  length    = 1220
  width     = 610
  count     = 1
}
