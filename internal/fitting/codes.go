package fitting

import "scantling/internal/diag"

// Codes of fittings that cannot be fitted. Each example yields exactly its code; a
// test of package evaluate runs them.
const (
	// CodePlace: a fitting that cannot stand where it is to stand.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	hardware "slide" {
	//	  kind = "ball-bearing slide 300"
	//	  on   = part.side.left
	//	  with = part.side.right
	//	  side = "inside"
	//	  runs = "back"
	//	}
	CodePlace diag.Code = "fitting-place"

	// CodeRoom: a recess or a hole that its part has no room for.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	hardware "button" {
	//	  kind = "turn-button 40"
	//	  on   = part.shelf
	//	  side = "top"
	//	}
	CodeRoom diag.Code = "fitting-room"

	// CodeTilted: a fitting on a part that stands at an angle. No document is known to
	// yield it: it comes from pieces that were not evaluated.
	CodeTilted diag.Code = "fitting-tilted"
)
