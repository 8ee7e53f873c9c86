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

cut "bed" {
  kind   = "channel"
  on     = bench.seat
  side   = "top"
  centre = 40
  cutter = "round-nose 12.7"
  depth  = 6.35
  from   = 100
  to     = 280
  holds  = 176 # error: channel-too-short
}
