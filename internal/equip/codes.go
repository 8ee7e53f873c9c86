package equip

import "scantling/internal/diag"

// Codes of what can be wrong with a shop document and what is asked of its rack. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeNotInRack: nothing in the rack is what a material asks for.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "teak board"
	//	  thickness = 14
	//	}
	CodeNotInRack diag.Code = "not-in-rack"

	// CodeTooThinInRack: what is in the rack does not clean up to the thickness.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "cherry board"
	//	  thickness = 60
	//	}
	CodeTooThinInRack diag.Code = "too-thin-in-rack"

	// CodeUnknownWood: a wood that is not known.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "chery board"
	//	  thickness = 14
	//	}
	CodeUnknownWood diag.Code = "unknown-wood"

	// CodeWhichWood: a name that means several woods.
	//
	// Example, added to evaluate/testdata/small.shop.hcl:
	//
	//	board "cherry 20" {
	//	  species   = "cherry"
	//	  length    = 2000
	//	  width     = 140
	//	  thickness = 20
	//	  count     = 1
	//	}
	CodeWhichWood diag.Code = "which-wood"

	// CodeUnknownKind: a kind of machine or cutter that is not known.
	//
	// Example, added to evaluate/testdata/small.shop.hcl:
	//
	//	machine "saw" {
	//	  kind = "tabel saw"
	//	}
	CodeUnknownKind diag.Code = "unknown-kind"

	// CodePrice: a price below nought, or finer than a hundredth.
	//
	// Example, added to evaluate/testdata/small.shop.hcl:
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

	// CodeShopName: a shop document refers to something by name.
	//
	// Example, added to evaluate/testdata/small.shop.hcl:
	//
	//	fitting "hinge" {
	//	  price = input.price
	//	}
	CodeShopName diag.Code = "no-names-in-a-shop"

	// CodeQuantity: a time or temperature without its unit, or in another's.
	//
	// Example, added to evaluate/testdata/small.shop.hcl:
	//
	//	glue "my white glue" {
	//	  like  = "white pva"
	//	  clamp = 40
	//	}
	CodeQuantity diag.Code = "quantity-with-unit"
)
