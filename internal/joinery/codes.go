package joinery

import "scantling/internal/diag"

// Codes of joints that cannot be made. An example is a design document that
// yields that code and nothing else.
const (
	// CodePart: a joint names a part that the piece does not have, or one part twice.
	// Evaluation refuses such names: it comes from pieces that were not evaluated.
	CodePart diag.Code = "joint-part"

	// CodeApart: the parts of a joint do not meet. Evaluation makes pairs of parts that
	// meet: it comes from pieces that were not evaluated.
	CodeApart diag.Code = "joint-apart"

	// CodeNoOverlap: the parts only touch, where the joint lets one into the other.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 18
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind = "housing"
	//	  of   = part.shelf
	//	  into = part.side
	//	}
	CodeNoOverlap diag.Code = "joint-no-overlap"

	// CodeOverlap: the parts overlap, where the joint only holds them against each other.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 12
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind = "butt"
	//	  of   = part.shelf
	//	  into = part.side
	//	}
	CodeOverlap diag.Code = "joint-overlap"

	// CodeTooDeep: a joint goes deeper than the part that it enters is thick. Evaluation
	// refuses such depths: it comes from pieces that were not evaluated.
	CodeTooDeep diag.Code = "joint-too-deep"

	// CodeDepth: the parts as drawn overlap by something else than the joint's depth.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 12
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind  = "housing"
	//	  depth = 5
	//	  of    = part.shelf
	//	  into  = part.side
	//	}
	CodeDepth diag.Code = "joint-depth"

	// CodeStops: the stopped ends leave nothing of the joint.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = part.side.right
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind    = "housing"
	//	  of      = part.shelf
	//	  into    = part.side
	//	  stopped = { front = 120, back = 90 }
	//	}
	CodeStops diag.Code = "joint-stops"

	// CodeFingers: the fingers of a box joint do not add up to its width. Evaluation shares
	// the width out: it comes from pieces that were not evaluated.
	CodeFingers diag.Code = "joint-fingers"

	// CodeGrain: a box joint where the parts do not both meet in end grain.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = 0
	//	  wide   = 200
	//	  front  = 182
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	joint "j" {
	//	  kind = "box"
	//	  of   = part.shelf
	//	  into = part.side
	//	}
	CodeGrain diag.Code = "joint-grain"

	// CodeHalving: a halving of parts that have no common surface to halve.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "rail" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = -100
	//	  wide   = 300
	//	  front  = 50
	//	  deep   = 60
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind = "halving"
	//	  of   = part.rail
	//	  into = part.side
	//	}
	CodeHalving diag.Code = "joint-halving"

	// CodeHoles: dowels or fasteners that have no room in the joint.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = 18
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	joint "j" {
	//	  kind = "butt"
	//	  of   = part.shelf
	//	  into = part.side
	//	  pins = { kind = "panel pin 20", count = 4, margin = 120 }
	//	}
	CodeHoles diag.Code = "joint-holes"

	// CodeClaims: two joints claim the same wood for different parts, and neither says that
	// it goes over the other.
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
	//	  grain  = "up"
	//	  left   = 0
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	part "shelf" {
	//	  of     = material.wood
	//	  grain  = "right"
	//	  left   = part.side.right
	//	  wide   = 300
	//	  front  = 0
	//	  deep   = 200
	//	  bottom = 100
	//	}
	//	part "back" {
	//	  of     = material.wood
	//	  grain  = "up"
	//	  left   = part.side.right
	//	  wide   = 300
	//	  back   = 200
	//	  bottom = 0
	//	  high   = 400
	//	}
	//	joint "j" {
	//	  kind  = "housing"
	//	  depth = 6
	//	  of    = part.shelf
	//	  into  = part.side
	//	}
	//	joint "back" {
	//	  kind  = "rebate"
	//	  depth = 6
	//	  of    = part.back
	//	  into  = part.side
	//	}
	CodeClaims diag.Code = "joint-claims"

	// CodeBuried: a cut that is open to no side of its part. It comes from joints that go
	// over others inside the wood.
	CodeBuried diag.Code = "joint-buried"

	// CodeTooMuch: so many parts lie in each other that the work was cut short. It
	// comes from pieces of thousands of parts on one spot.
	CodeTooMuch diag.Code = "joint-too-much"
)
