package formula

import "scantling/internal/diag"

// Codes of what can be wrong with the attributes of a block. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeWrongReference: a thing of one kind where one of another is wanted.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "wrong" {
	//	  kind = "butt"
	//	  of   = material.case
	//	  into = part.side
	//	}
	CodeWrongReference diag.Code = "wrong-reference"

	// CodeUnknownWord: a word that is none of those that may stand there.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	finish "outside" {
	//	  kind = "oil"
	//	  on   = [part.side]
	//	  when = "after assembley"
	//	}
	CodeUnknownWord diag.Code = "unknown-word"

	// CodeMissing: a block says too little.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	finish "outside" {
	//	  on = [part.side]
	//	}
	CodeMissing diag.Code = "missing"

	// CodeUnknownField: a name that the braces do not take.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	joint "again" {
	//	  kind  = "groove"
	//	  of    = part.shelf
	//	  into  = part.side
	//	  clear = { acros = 0.2 }
	//	}
	CodeUnknownField diag.Code = "unknown-field"

	// CodeNotPositive: a size of nought or less.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "lid" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = 0
	//	  wide   = 0 - 5
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 120
	//	}
	CodeNotPositive diag.Code = "not-above-nought"

	// CodeRefused: a rule of the trade does not cover what is asked; the text is the rule's own.
	//
	// Example is made by the test.
	CodeRefused diag.Code = "refused"
)
