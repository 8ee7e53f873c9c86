scantling = 1

# One cherry board, hand-fed machines, a plunge router with an edge guide.
shop "Workshop with one cherry board" {
  units       = "mm"
  region      = "en-GB"
  currency    = "EUR"
  resolution  = 0.1
  denominator = 32

  temperature  = 18
  humidity_now = 50
  humidity_dry = 35
  humidity_wet = 65
}

board "cherry 27" {
  species   = "black cherry"
  state     = "rough"
  length    = 1100
  width     = 150
  thickness = 27
  count     = 1
  price     = 22.00
  sawn      = "flat"
  moisture  = 9.5 # percent, read in a fresh cut
}

machine "table saw" {
  kind         = "table saw"
  kerf         = 3
  least_length = 150
  least_rip    = 5
  most_width   = 610
  most_height  = 75
  accuracy     = 0.2
}

machine "jointer" {
  kind            = "jointer"
  least_length    = 300
  most_width      = 150
  least_thickness = 10
  accuracy        = 0.1
}

machine "thicknesser" {
  kind            = "thicknesser"
  least_length    = 305
  most_width      = 300
  least_thickness = 6
  accuracy        = 0.1
}

machine "router table" {
  kind         = "router table"
  least_length = 305
  most_fence   = 320
  shank        = 12.7
  accuracy     = 0.1
}

machine "plunge router" {
  kind     = "router"
  plunges  = true
  base     = 75    # from the spindle to the edge of the base that runs against a stop
  shank    = 12.7
  accuracy = 0.2
}

cutter "core box 25.4" {
  kind           = "core box"
  diameter       = 25.4
  cutting_length = 16
  shank          = 12.7
  rpm_most       = 22000
}

rule "depth per pass" {
  length = 3
  why    = "a wide round-nose cutter in hardwood: this maker's habit"
}
