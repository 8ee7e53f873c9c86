package joinery

import "scantling/internal/diag"

// Codes of tenons, bridles and parts that stand at an angle. An example is a design
// document that yields that code and nothing else.
const (
	// CodeTenon: a tenon, a bridle or a loose tenon that its parts have no room for; a
	// warning where it leaves too little wood.
	//
	// Example:
	//
	//	scantling = 1
	//	piece "Trial" {
	//	  units = "mm"
	//	}
	//	material "wood" {
	//	  asks      = "hard maple board"
	//	  thickness = 18
	//	}
	//	part "leg" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = 0
	//	  wide   = 60
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "rail" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = part.leg.right
	//	  right  = 400
	//	  front  = 0
	//	  bottom = 200
	//	  high   = 60
	//	}
	//	joint "j" {
	//	  kind  = "tenon"
	//	  of    = part.rail
	//	  into  = part.leg
	//	  tenon = { thickness = 18 }
	//	}
	CodeTenon diag.Code = "joint-tenon"

	// CodeTilted: the parts of a joint lean out of each other's square.
	//
	// Example:
	//
	//	scantling = 1
	//	piece "Trial" {
	//	  units = "mm"
	//	}
	//	material "wood" {
	//	  asks      = "hard maple board"
	//	  thickness = 18
	//	}
	//	part "leg" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = 0
	//	  wide   = 60
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 400
	//	  leans  = [{ toward = "left", by = "8 deg", from = "top" }]
	//	}
	//	part "rail" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = part.leg.right
	//	  right  = 400
	//	  front  = 0
	//	  bottom = 200
	//	  high   = 60
	//	}
	//	joint "j" {
	//	  kind = "tenon"
	//	  of   = part.rail
	//	  into = part.leg
	//	}
	CodeTilted diag.Code = "joint-tilted"
)
