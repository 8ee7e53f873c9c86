# cut: Outline
# order: 60
# A part of any outline, with holes.
scantling = 1

piece "Outline" {
  units = "mm"
}

material "case" {
  asks      = "cherry board"
  thickness = 20
}

part "seat" {
  of      = material.case
  grain   = "right"
  left    = 0
  wide    = 220
  front   = 0
  deep    = 120
  bottom  = 0
  outline = [[20, 0], [200, 0], { through = [220, 60] }, [200, 120], [20, 120], { through = [0, 60] }]
  holes   = [{ centre = [110, 60], diameter = 30 }]
}
