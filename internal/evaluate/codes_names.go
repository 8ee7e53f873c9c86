package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with names and words. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeUnknownName: a name that means nothing where it stands.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  height = 120
	//	  twice  = 2 * sizes.heigth
	//	}
	CodeUnknownName diag.Code = "unknown-name"

	// CodeNoMember: a member that the thing before the point does not have.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  tone = material.case.colour
	//	}
	CodeNoMember diag.Code = "no-such-member"

	// CodeSeveral: a name that stands for several things, or none, where one is wanted.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  inside = part.side.inside
	//	}
	CodeSeveral diag.Code = "name-means-several"

	// CodeBeyond: a number beyond the last of repeated things.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  up = part.shelf[2].top
	//	}
	CodeBeyond diag.Code = "number-beyond"

	// CodeNoNth: nth where nothing repeats.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  twice = 2 * nth
	//	}
	CodeNoNth diag.Code = "no-nth"

	// CodeNoHand: inside or outside of a part that is no pair.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  inside = part.shelf.inside
	//	}
	CodeNoHand diag.Code = "not-a-pair"

	// CodeCircle: values that wait for each other in a circle.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	sizes {
	//	  high = wide + 2
	//	  wide = high - 2
	//	}
	CodeCircle diag.Code = "circle"

	// CodeName: a name that could not stand in a formula.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "upper shelf" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = 20
	//	  wide   = 60
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 90
	//	}
	CodeName diag.Code = "name-not-usable"

	// CodeNameTaken: two things of one name in one place.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	space "shelf" {
	//	  left   = part.side.left.inside
	//	  right  = part.side.right.inside
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 0
	//	  top    = part.shelf.bottom
	//	}
	CodeNameTaken diag.Code = "name-taken"

	// CodeWrongAxis: a place along one direction used along another.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "lid" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = part.shelf.top
	//	  wide   = 100
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 120
	//	}
	CodeWrongAxis diag.Code = "wrong-axis"
)
