package operations

import (
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Hand is the machine of work that no machine does.
const Hand = "hand"

// Guide is what work is held against while it is cut; its text is a key of words
// below "guide.".
type Guide string

// The guides.
const (
	ByFence  Guide = "fence"
	ByGauge  Guide = "mitre-gauge" // square to the fence, with a backer
	BySled   Guide = "sled"        // upright on a sled, against a stop
	ByTable  Guide = "table"       // lies on a drill press or band saw table
	ByHand   Guide = "hand"
	ByEdge   Guide = "edge-guide" // a router's own, along an edge of the clamped work
	ByRounds Guide = "bearing"    // along a guide bearing or the fence flush with it
)

// Way is how a cut is offered to a machine. For a hole, a scoop or an eased edge
// only machine, cutter, guide, Work and Long are set.
type Way struct {
	Machine string // the shop's name, or Hand
	Kind    tool.Kind
	Cutter  tool.Cutter // none by hand
	Guide   Guide
	// Size is the circle or kerf that the cutter turns in: the width of one path.
	Size piece.Figure
	// Opens is what one path leaves open at the surface: less than Size for a
	// round-nose cutter that is not sunk to its radius.
	Opens unit.Length
	// Down lies on the table. Run is the axis of the feed, Across that of the
	// fence.
	Down        piece.Side
	Run, Across piece.Local
	// From and To limit the cut along Run; an open end runs out.
	From, To           piece.Figure
	StartOpen, EndOpen bool
	// Near and Far limit it across; Depth is from Down inwards.
	Near, Far, Depth piece.Figure
	// Fences are the sides that may be against the fence, the better one first.
	Fences []piece.Side
	// Paths are how far each path lies beyond the first, from Near on.
	Paths []unit.Length
	// Covered says that the fence stands over part of the cutter: a rebate no
	// wider than it.
	Covered bool
	// Clears says that only the shoulder is set, and everything between it and the
	// open side is cleared kerf by kerf: a rebate at the saw. Against a fence the
	// last kerfs run in a sacrificial facing.
	Clears bool
	// Raise says that the cutter is raised into held work: a cut stopped at both
	// ends, or one that cannot be entered from its open end because the fence does
	// not go that far. A plunge router is lowered into the clamped work instead.
	Raise bool
	// Lean is set where a plane is sawn off with gauge or blade at an angle.
	Lean *Lean
	// Heights are the depths of the passes.
	Heights []unit.Length
	// Long says that the cut is made before the part is cut to length.
	Long bool
	// Work is the size of the workpiece that is offered, and At where each part
	// begins along it.
	Work [3]piece.Figure
	At   []piece.Figure
}

// Passes is how many times the work goes over the cutter.
func (w Way) Passes() int { return max(1, len(w.Paths)) * max(1, len(w.Heights)) }

// Costs in passes of what is less sure than a flat board against a fence. Common
// practice, no source.
const (
	costOnEdge = 8
	costOnEnd  = 24
	costSaw    = 4 // leaves a ribbed bottom, and is set less finely
	costFacing = 8 // a sacrificial facing on the fence of the saw
	costGauge  = 1
	costRaise  = 16
	costPlunge = 6 // the work is clamped and every guide setting is made on the router
	costLong   = 2 // all figures from one end
)

// Cost is what ways are compared by: passes, and what is less sure.
func (w Way) Cost() int {
	cost := w.Passes()
	switch axis, _ := w.Down.Axis(); axis {
	case piece.AlongWidth:
		cost += costOnEdge
	case piece.AlongLength:
		cost += costOnEnd
	}
	if w.Kind == tool.TableSaw {
		cost += costSaw
		if w.Clears && w.Guide == ByFence {
			cost += costFacing
		}
	}
	if w.Guide == ByGauge {
		cost += costGauge
	}
	switch {
	case w.Kind == tool.Router:
		cost += costPlunge
	case w.Raise:
		cost += costRaise
	}
	if w.Long {
		cost += costLong
	}
	return cost
}
