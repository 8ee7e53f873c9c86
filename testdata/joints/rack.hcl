# Added to the built-in shop: boards thick enough for legs, and a drill.
board "maple 52" {
  species   = "hard maple"
  state     = "rough"
  length    = 2400
  width     = 200
  thickness = 52
  count     = 4
  price     = 60
}

board "maple 28" {
  species   = "hard maple"
  state     = "rough"
  length    = 2400
  width     = 200
  thickness = 32
  count     = 4
  price     = 40
}

cutter "drill 2.1" {
  kind           = "drill"
  diameter       = 2.1
  cutting_length = 40
  rpm_most       = 3000
}
