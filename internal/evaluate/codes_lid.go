package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with a lid that is sawn off. Each example yields exactly
// its code; a test of package evaluate runs them.
const (
	// CodeLidHeight: a lid does not say how high its base is, or how high it is itself,
	// or says both.
	//
	// Example, added to evaluate/testdata/chest.piece.hcl:
	//
	//	cut "lid" {
	//	  kind = "lid"
	//	  on   = chest
	//	}
	CodeLidHeight diag.Code = "lid-height"

	// CodeLidOutside: base and kerf leave nothing of the closed box for a lid.
	//
	// Example, added to evaluate/testdata/chest.piece.hcl:
	//
	//	cut "lid" {
	//	  kind = "lid"
	//	  on   = chest
	//	  base = 98
	//	}
	CodeLidOutside diag.Code = "lid-outside"

	// CodeLidHeld: a part inside the box stands through the line, where a blade that is
	// set to the walls does not reach.
	//
	// Example, added to evaluate/testdata/chest.piece.hcl:
	//
	//	cut "lid" {
	//	  kind = "lid"
	//	  on   = chest
	//	  base = 30
	//	}
	CodeLidHeld diag.Code = "lid-held"

	// CodeLidGrazes: a part ends in what is sawn away.
	//
	// Example, added to evaluate/testdata/chest.piece.hcl:
	//
	//	cut "lid" {
	//	  kind = "lid"
	//	  on   = chest
	//	  base = 58
	//	}
	CodeLidGrazes diag.Code = "lid-grazes"

	// CodeLidWord: a word that says nothing of a lid.
	//
	// Example, added to evaluate/testdata/chest.piece.hcl:
	//
	//	cut "lid" {
	//	  kind  = "lid"
	//	  on    = chest
	//	  base  = 70
	//	  width = 3
	//	}
	CodeLidWord diag.Code = "lid-word"
)
