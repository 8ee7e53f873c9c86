package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with parts and materials. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodePlaces: too little or too much is said of where something is.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
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

	// CodeThicker: a part thicker than its material, or a sheet of another thickness.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
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
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	material "lid" {
	//	  asks = "black walnut board"
	//	}
	CodeNoThickness diag.Code = "no-thickness"

	// CodeRodTwice: a size of rod is listed twice.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	contents "more" {
	//	  rod    = [4, 4]
	//	  each   = 2
	//	  length = 180
	//	}
	CodeRodTwice diag.Code = "rod-twice"

	// CodeLeans: a part's lean does not say where to, by how much and which side
	// stays, or there are more than three.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "leg" {
	//	  of     = material.case
	//	  grain  = "up"
	//	  left   = 400
	//	  wide   = 14
	//	  front  = 0
	//	  deep   = 14
	//	  bottom = 0
	//	  high   = 100
	//	  leans  = { toward = "up", by = "5 deg", from = "bottom" }
	//	}
	CodeLeans diag.Code = "leans"

	// CodeMeetsNothing: a cut on a group that meets none of its parts.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	group "stand" {
	//	  part "foot" {
	//	    of     = material.case
	//	    repeat = 2
	//	    grain  = "back"
	//	    left   = 400 + nth * 100
	//	    front  = 0
	//	    deep   = 100
	//	    bottom = 0
	//	    high   = 30
	//	  }
	//	}
	//
	//	cut "line" {
	//	  kind  = "groove"
	//	  on    = stand
	//	  side  = "top"
	//	  runs  = "back"
	//	  near  = 50
	//	  width = 6
	//	  depth = 4
	//	}
	CodeMeetsNothing diag.Code = "cut-meets-nothing"

	// CodeNoSide: a fitting says where it lies, and not on which side of its part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	hardware "knob" {
	//	  kind   = "knob 25"
	//	  on     = part.shelf
	//	  centre = 30
	//	}
	CodeNoSide diag.Code = "fitting-without-side"
)
