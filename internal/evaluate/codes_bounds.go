package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with the bounds of an evaluation. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeTooDeep: more values wait for each other than are followed.
	//
	// Example is made by the test.
	CodeTooDeep diag.Code = "waits-too-long"

	// CodeTooManyParts: more parts, spaces, groups and cuts than are worked out.
	//
	// Example is made by the test.
	CodeTooManyParts diag.Code = "too-many-parts"

	// CodeTooManyPairs: a joint would have to be held against too many pairs of parts.
	//
	// Example is made by the test.
	CodeTooManyPairs diag.Code = "too-many-pairs"

	// CodeTooManyThings: more things in the contents than are worked out.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "many" {
	//	  rod    = [4, 6]
	//	  each   = 4000
	//	  length = 180
	//	}
	CodeTooManyThings diag.Code = "too-many-things"
)
