package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with joints, fits and measures. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeMeets: a joint joins another number of pairs than it says, or none.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind  = "butt"
	//	  of    = part.shelf
	//	  into  = part.side
	//	  meets = 3
	//	}
	CodeMeets diag.Code = "pairs-that-meet"

	// CodeTooDeepJoint: a joint as deep as the part that it goes into is thick.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "divider" {
	//	  of     = material.case
	//	  grain  = "up"
	//	  left   = 100
	//	  front  = 0
	//	  back   = 200
	//	  bottom = part.shelf.top
	//	  high   = 40
	//	}
	//
	//	joint "divider" {
	//	  kind  = "housing"
	//	  of    = part.divider
	//	  into  = part.shelf
	//	  depth = 14
	//	}
	CodeTooDeepJoint diag.Code = "joint-too-deep"

	// CodeStopped: a joint is stopped at an end that it does not run to.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind    = "butt"
	//	  of      = part.shelf
	//	  into    = part.side
	//	  stopped = { left = 8 }
	//	}
	CodeStopped diag.Code = "stopped-across"

	// CodeShoulder: a tenon has a shoulder at a side that it has no edge at.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind  = "tenon"
	//	  of    = part.shelf
	//	  into  = part.side
	//	  tenon = { left = 5 }
	//	}
	CodeShoulder diag.Code = "shoulder-across"

	// CodeUnknownSize: a hole is to follow from a fastener whose size is not known.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind = "butt"
	//	  of   = part.shelf
	//	  into = part.side
	//	  pins = { kind = "pin", count = 2, pilot = true }
	//	}
	CodeUnknownSize diag.Code = "fastener-size-unknown"

	// CodeNoDepth: the depth of a joint that has none.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "plain" {
	//	  kind = "butt"
	//	  of   = part.shelf
	//	  into = part.side
	//	}
	//
	//	sizes {
	//	  deep = joint.plain.depth
	//	}
	CodeNoDepth diag.Code = "no-depth"

	// CodeSlope: a dovetail whose sides are said to lean out of all measure.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "tail" {
	//	  kind  = "sliding dovetail"
	//	  of    = part.shelf
	//	  into  = part.side
	//	  depth = 4
	//	  slide = { slope = 0.5 }
	//	}
	CodeSlope diag.Code = "slope"

	// CodeJointWord: a joint says something that is nothing to its kind.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind  = "butt"
	//	  of    = part.shelf
	//	  into  = part.side
	//	  tails = 3
	//	}
	CodeJointWord diag.Code = "joint-word"

	// CodeCornerDepth: a depth where a part goes right through the other.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "lid" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = 0
	//	  right  = 300
	//	  front  = 0
	//	  back   = 200
	//	  top    = 120
	//	}
	//
	//	joint "lid" {
	//	  kind  = "mitre"
	//	  of    = part.lid
	//	  into  = part.side
	//	  depth = 14
	//	}
	CodeCornerDepth diag.Code = "corner-depth"

	// CodeFitPairs: a fit with another number of moving groups than of spaces.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	space "below" {
	//	  left   = part.side.left.inside
	//	  right  = part.side.right.inside
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 0
	//	  top    = part.shelf.bottom
	//	}
	//
	//	group "box" {
	//	  repeat = 2
	//	}
	//
	//	fit "box" {
	//	  moves  = box
	//	  inside = space.below
	//	}
	CodeFitPairs diag.Code = "fit-pairs"

	// CodeReading: a reading that nobody takes.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	measure "sides" {
	//	  of   = part.side
	//	  take = ["thicknes"]
	//	}
	CodeReading diag.Code = "unknown-reading"
)
