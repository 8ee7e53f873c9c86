package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with parts and materials. Each example yields exactly its
// code; a test runs them.
const (
	// CodePlaces: too little or too much is said of where something is.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	part "lid" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = 0
	//	  front  = 0
	//	  back   = 200
	//	  bottom = 120
	//	}
	CodePlaces diag.Code = "places"

	// CodeNotPositive: a size of nought or less.
	//
	// Example, added to testdata/box.piece.hcl:
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

	// CodeThicker: a part thicker than its material, or a sheet of another thickness.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	part "block" {
	//	  of     = material.case
	//	  grain  = "right"
	//	  left   = 20
	//	  wide   = 60
	//	  front  = 0
	//	  deep   = 40
	//	  bottom = 90
	//	  high   = 25
	//	}
	CodeThicker diag.Code = "thicker-than-material"

	// CodeNoThickness: a material that does not say what it is dressed to.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks = "black walnut board"
	//	}
	CodeNoThickness diag.Code = "no-thickness"

	// CodeNotInRack: nothing in the rack is what a material asks for.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "teak board"
	//	  thickness = 14
	//	}
	CodeNotInRack diag.Code = "not-in-rack"

	// CodeTooThinInRack: what is in the rack does not clean up to the thickness.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "cherry board"
	//	  thickness = 60
	//	}
	CodeTooThinInRack diag.Code = "too-thin-in-rack"

	// CodeUnknownWood: a wood that is not known.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks      = "chery board"
	//	  thickness = 14
	//	}
	CodeUnknownWood diag.Code = "unknown-wood"

	// CodeWhichWood: a name that means several woods.
	//
	// Example, added to testdata/small.shop.hcl:
	//
	//	board "cherry 20" {
	//	  species   = "cherry"
	//	  length    = 2000
	//	  width     = 140
	//	  thickness = 20
	//	  count     = 1
	//	}
	CodeWhichWood diag.Code = "which-wood"

	// CodeRefused: a rule of the trade does not cover what is asked; the text is the rule's own.
	//
	// Example is made by the test.
	CodeRefused diag.Code = "refused"

	// CodeRodTwice: a size of rod is listed twice.
	//
	// Example, added to testdata/box.piece.hcl:
	//
	//	contents "more" {
	//	  rod    = [4, 4]
	//	  each   = 2
	//	  length = 180
	//	}
	CodeRodTwice diag.Code = "rod-twice"
)
