package fault

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

	// CodeAlong: a cut of a length does not say where it lies along its run.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "line" {
	//	  kind   = "groove"
	//	  on     = part.shelf
	//	  side   = "top"
	//	  near   = 20
	//	  width  = 6
	//	  depth  = 4
	//	  length = 100
	//	}
	CodeAlong diag.Code = "cut-without-place-along"

	// CodeShort: a channel between two given ends is too short for what must lie
	// flat in it.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "bed" {
	//	  kind   = "channel"
	//	  on     = part.shelf
	//	  side   = "top"
	//	  centre = 100
	//	  radius = 6
	//	  width  = 12
	//	  depth  = 6
	//	  from   = 50
	//	  to     = 150
	//	  holds  = 95
	//	}
	CodeShort diag.Code = "channel-too-short"

	// CodeRound: corners rounder than half the cut is wide.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "bed" {
	//	  kind   = "recess"
	//	  on     = part.shelf
	//	  side   = "top"
	//	  near   = 20
	//	  width  = 12
	//	  depth  = 6
	//	  from   = 50
	//	  to     = 150
	//	  corner = 8
	//	}
	CodeRound diag.Code = "corner-too-round"

	// CodeAngle: an angle that cannot be cut.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "lean" {
	//	  kind  = "bevel"
	//	  on    = part.shelf
	//	  edge  = "front"
	//	  keeps = "top"
	//	  angle = "89 deg"
	//	}
	CodeAngle diag.Code = "angle-range"

	// CodeAngles: a compound angle does not name two sides that keep their length.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "foot" {
	//	  kind   = "compound angle"
	//	  on     = part.side.left
	//	  end    = "bottom"
	//	  angles = { front = "5 deg", back = "5 deg" }
	//	}
	CodeAngles diag.Code = "two-angles"

	// CodeTakesAll: a slice that leaves nothing of the part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "lean" {
	//	  kind  = "bevel"
	//	  on    = part.shelf
	//	  edge  = "front"
	//	  keeps = "top"
	//	  by    = 200
	//	}
	CodeTakesAll diag.Code = "slice-takes-all"

	// CodeSink: a widened mouth that is no wider than its hole.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "screw" {
	//	  kind        = "hole"
	//	  on          = part.shelf
	//	  side        = "top"
	//	  at          = { left = 30, front = 30 }
	//	  diameter    = 5
	//	  through     = true
	//	  countersink = { diameter = 4 }
	//	}
	CodeSink diag.Code = "mouth-not-wider"

	// CodePoint: what stands in a line is neither a corner nor a point of an arc.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "arch" {
	//	  kind = "curved outline"
	//	  on   = part.shelf
	//	  edge = "front"
	//	  line = [[40, 0], [100, 20, 5], [160, 0]]
	//	}
	CodePoint diag.Code = "point-of-a-line"

	// CodeManyPoints: a line of more points than are read.
	//
	// Example is made by the test.
	CodeManyPoints diag.Code = "too-many-points"

	// CodeOutline: a line that encloses nothing, crosses itself or ends in an arc.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	cut "corner" {
	//	  kind    = "notch"
	//	  on      = part.shelf
	//	  side    = "top"
	//	  outline = [[40, 0], [60, 40], [40, 40], [60, 0]]
	//	  through = true
	//	}
	CodeOutline diag.Code = "outline-not-sound"

	// CodeBeyond: an outline that reaches beyond the sizes of its part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "knob" {
	//	  of      = material.case
	//	  grain   = "right"
	//	  left    = 20
	//	  wide    = 60
	//	  front   = 300
	//	  bottom  = 0
	//	  high    = 40
	//	  outline = [[0, 0], [60, 0], { through = [30, 50] }]
	//	}
	CodeBeyond diag.Code = "outline-beyond"

	// CodeNotRound: a round part that is not as thick as it is wide.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "peg" {
	//	  of     = material.case
	//	  form   = "round"
	//	  grain  = "right"
	//	  left   = 20
	//	  wide   = 60
	//	  front  = 300
	//	  deep   = 10
	//	  bottom = 0
	//	  high   = 12
	//	}
	CodeNotRound diag.Code = "not-round"

	// CodeProfile: a profile that does not run from end to end of its part, turns
	// back, or is thicker than the part.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	part "peg" {
	//	  of       = material.case
	//	  grain    = "right"
	//	  left     = 20
	//	  wide     = 60
	//	  front    = 300
	//	  bottom   = 0
	//	  diameter = 12
	//	  profile  = [[0, 10], [50, 12]]
	//	}
	CodeProfile diag.Code = "profile-not-sound"

	// CodePitches: a list of pitches that is not one shorter than the row.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "line" {
	//	  kind    = "groove"
	//	  on      = part.shelf
	//	  side    = "top"
	//	  count   = 4
	//	  width   = 4
	//	  pitches = [10, 12]
	//	  depth   = 4
	//	}
	CodePitches diag.Code = "pitches"

	// CodeHoleRow: a row of holes does not say where it lies across.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	series "pegs" {
	//	  kind     = "hole"
	//	  on       = part.shelf
	//	  side     = "top"
	//	  at       = { front = 20, left = 20 }
	//	  count    = 4
	//	  diameter = 6
	//	  pitch    = 32
	//	  depth    = 8
	//	}
	CodeHoleRow diag.Code = "row-of-holes"
)
