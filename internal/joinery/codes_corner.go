package joinery

import "scantling/internal/diag"

// Codes of tongues, mitres and dovetails that cannot be made. An example is a design
// document that yields that code and nothing else.
const (
	// CodeTongue: a tongue that has no room, or whose groove has no wall beside it.
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
	//	part "first" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = 0
	//	  wide   = 90
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "second" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = part.first.right
	//	  right  = 180
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	joint "j" {
	//	  kind   = "tongue"
	//	  of     = part.second
	//	  into   = part.first
	//	  tongue = { thickness = 8, from = 10 }
	//	}
	CodeTongue diag.Code = "joint-tongue"

	// CodeMitre: a mitre of parts that do not come to a corner, or that are not alike
	// along it, so that the cut faces would not meet.
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
	//	part "side" {
	//	  of     = material.wood
	//	  grain  = "back"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 300
	//	  bottom = 0
	//	  high   = 100
	//	}
	//	part "front" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 0
	//	  wide   = 300
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 80
	//	}
	//	joint "j" {
	//	  kind = "mitre"
	//	  of   = part.front
	//	  into = part.side
	//	}
	CodeMitre diag.Code = "joint-mitre"

	// CodeSlip: a spline or a key that has no room in its mitre.
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
	//	part "side" {
	//	  of     = material.wood
	//	  grain  = "back"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 300
	//	  bottom = 0
	//	  high   = 100
	//	}
	//	part "front" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 0
	//	  wide   = 300
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 100
	//	}
	//	joint "j" {
	//	  kind   = "mitre"
	//	  of     = part.front
	//	  into   = part.side
	//	  spline = { thickness = 4, depth = 12, heel = 10 }
	//	}
	CodeSlip diag.Code = "joint-slip"

	// CodeTails: a dovetail whose tails or pins are too narrow to cut, or a sliding
	// dovetail that has no room or no way in.
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
	//	part "front" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 0
	//	  wide   = 300
	//	  front  = 0
	//	  bottom = 0
	//	  high   = 100
	//	}
	//	part "side" {
	//	  of     = material.wood
	//	  grain  = "back"
	//	  left   = 0
	//	  front  = part.front.back
	//	  back   = 300
	//	  bottom = 0
	//	  high   = 100
	//	}
	//	joint "j" {
	//	  kind  = "dovetail"
	//	  of    = part.side
	//	  into  = part.front
	//	  tails = { count = 4, pin = 1 }
	//	}
	CodeTails diag.Code = "joint-tails"
)
