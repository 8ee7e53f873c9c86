package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with shop documents. Each example yields exactly its
// code; a test runs them.
const (
	// CodeUnknownKind: a kind of machine or cutter that is not known.
	//
	// Example, added to testdata/small.shop.hcl:
	//
	//	machine "saw" {
	//	  kind = "tabel saw"
	//	}
	CodeUnknownKind diag.Code = "unknown-kind"

	// CodePrice: a price below nought, or finer than a hundredth.
	//
	// Example, added to testdata/small.shop.hcl:
	//
	//	fitting "hinge" {
	//	  price = 0 - 4
	//	}
	CodePrice diag.Code = "price"

	// CodeDenominator: a denominator that no rule has.
	//
	// Example, alone as a shop:
	//
	//	scantling = 1
	//
	//	shop "Odd" {
	//	  denominator = 12
	//	}
	CodeDenominator diag.Code = "denominator"
)
