package stow

import "scantling/internal/diag"

// Codes of what can be wrong with contents. Each example yields exactly its code;
// a test of package evaluate runs them.
const (
	// CodeNotOfKind: a word that this kind of contents does not take.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "jars" {
	//	  kind     = "jar"
	//	  count    = 6
	//	  diameter = 44
	//	  tall     = 96
	//	  flip     = 0.1
	//	}
	CodeNotOfKind diag.Code = "not-of-this-contents"

	// CodeTooFewCells: columns and rows that do not hold all.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "jars" {
	//	  kind     = "jar"
	//	  count    = 24
	//	  diameter = 44
	//	  tall     = 96
	//	  columns  = 6
	//	  rows     = 3
	//	}
	CodeTooFewCells diag.Code = "too-few-cells"

	// CodeUnknownUsual: a usual thing that is not in the table.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "jars" {
	//	  like  = "spice jarr"
	//	  count = 24
	//	}
	CodeUnknownUsual diag.Code = "unknown-usual-thing"

	// CodeSizes: a list of sizes with too few or too many in it.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "tablet" {
	//	  kind  = "box"
	//	  count = 1
	//	  size  = [250, 180]
	//	}
	CodeSizes diag.Code = "sizes-of-contents"

	// CodeTaller: a shoulder higher than its bottle, or a cap that makes no sense.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "bottles" {
	//	  kind     = "bottle"
	//	  count    = 4
	//	  diameter = 25
	//	  tall     = 58
	//	  shoulder = 70
	//	}
	CodeTaller diag.Code = "shoulder-above-bottle"

	// CodeQuantity: a text that is no mass, or no ratio, where one should stand.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "jars" {
	//	  kind     = "jar"
	//	  count    = 6
	//	  diameter = 44
	//	  tall     = 96
	//	  mass     = "160 ml"
	//	}
	CodeQuantity diag.Code = "not-that-quantity"
)
