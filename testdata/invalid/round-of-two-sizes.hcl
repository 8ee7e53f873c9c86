scantling = 1

piece "Bench" {
  units = "mm"
}

material "ash" {
  asks      = "cherry board"
  thickness = 20
}

group "bench" {
  part "seat" {
    of     = material.ash
    grain  = "right"
    left   = 0
    wide   = 400
    front  = 0
    deep   = 140
    bottom = 300
  }

  part "leg" {
    of     = material.ash
    grain  = "up"
    left   = 30
    wide   = 30
    front  = 55
    deep   = 20
    bottom = 0
    high   = 300
  }
}

part "rail" { # error: not-round
  of     = material.ash
  form   = "round"
  grain  = "right"
  left   = 0
  wide   = 200
  front  = 200
  deep   = 18
  bottom = 0
  high   = 16
}
