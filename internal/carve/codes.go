package carve

import "scantling/internal/diag"

// Codes of what can be wrong with cuts and series. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeCutPlace: a cut does not say where it lies.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "line" {
	//	  kind  = "groove"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  near  = 20
	//	  depth = 4
	//	}
	CodeCutPlace diag.Code = "cut-without-place"

	// CodeCutMisses: a cut lies beside its part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "line" {
	//	  kind  = "groove"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  near  = 220
	//	  width = 6
	//	  depth = 4
	//	}
	CodeCutMisses diag.Code = "cut-misses"

	// CodeCutThrough: a cut as deep as the part is thick.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "line" {
	//	  kind  = "groove"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  near  = 20
	//	  width = 6
	//	  depth = 14
	//	}
	CodeCutThrough diag.Code = "cut-through"

	// CodeNotAnEdge: a scoop in a face instead of an edge.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "grip" {
	//	  kind   = "scoop"
	//	  on     = part.shelf
	//	  edge   = "top"
	//	  centre = 100
	//	  chord  = 60
	//	  depth  = 10
	//	}
	CodeNotAnEdge diag.Code = "not-an-edge"

	// CodeScoop: a scoop deeper than half its width.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "grip" {
	//	  kind   = "scoop"
	//	  on     = part.shelf
	//	  edge   = "front"
	//	  centre = 100
	//	  chord  = 40
	//	  depth  = 25
	//	}
	CodeScoop diag.Code = "scoop-too-deep"

	// CodeEdges: an edge is not named by two faces that meet.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "soft" {
	//	  kind   = "eased"
	//	  on     = part.shelf
	//	  edges  = [["top", "bottom"]]
	//	  radius = 2
	//	}
	CodeEdges diag.Code = "edges"

	// CodeNoCutter: a cutter that the shop does not have.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "line" {
	//	  kind   = "groove"
	//	  on     = part.shelf
	//	  side   = "top"
	//	  near   = 20
	//	  width  = 12
	//	  depth  = 4
	//	  cutter = "straight 12.6"
	//	}
	CodeNoCutter diag.Code = "no-such-cutter"

	// CodeSeriesWide: a series that does not fit the width of its part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "line" {
	//	  kind  = "groove"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  count = 30
	//	  width = 4
	//	  pitch = 8
	//	  depth = 4
	//	}
	CodeSeriesWide diag.Code = "series-too-wide"

	// CodeSeriesOverlap: neighbours of a series run into each other.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "line" {
	//	  kind  = "groove"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  count = 3
	//	  width = 12
	//	  pitch = 8
	//	  depth = 4
	//	}
	CodeSeriesOverlap diag.Code = "series-overlaps"

	// CodeTooFewSlots: a series has fewer slots than things to hold.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "channel" {
	//	  kind  = "channel"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  holds = contents.rods
	//	  slots = 3
	//	  pitch = 12
	//	}
	CodeTooFewSlots diag.Code = "too-few-slots"

	// CodeNoSpare: a series of spare slots only, with nothing to be like.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "channel" {
	//	  kind  = "channel"
	//	  on    = part.shelf
	//	  side  = "top"
	//	  holds = []
	//	  slots = 3
	//	  pitch = 12
	//	}
	CodeNoSpare diag.Code = "spare-like-nothing"
)
