package joinery

import (
	"math/big"

	"scantling/internal/message"
	"scantling/internal/piece"
)

// turning is a corner at which two boards meet with their ends: A crosses B's
// thickness along one axis, B crosses A's along another, and the joint runs along
// the third.
type turning struct {
	alongA, alongB, run piece.Axis
	// endA and endB are the ways that the ends at the corner look.
	endA, endB piece.Direction
}

// endGrain checks that both parts come to a corner with their end grain, so that
// what is left between the cuts is long grain and holds.
func (w *work) endGrain(j *joint) (turning, bool) {
	ta, _ := j.partA.Frame.Thickness.Axis()
	tb, _ := j.partB.Frame.Thickness.Axis()
	la, _ := j.partA.Frame.Length.Axis()
	lb, _ := j.partB.Frame.Length.Axis()
	if ta == tb || la == lb {
		w.fail(j, fault{CodeGrain, "joint.fingers-need-end-grain", pairArgs(j.Joint)})
		return turning{}, false
	}
	short := j.partA
	if la == tb {
		short = j.partB
	}
	if la != tb || lb != ta {
		w.fail(j, fault{CodeGrain, "joint.short-grain", append(pairArgs(j.Joint), message.Address("short", short.Address))})
		return turning{}, false
	}
	o := j.meets.region
	return turning{la, lb, 3 - la - lb, endAt(j.partA, o), endAt(j.partB, o)}, true
}

// flush checks that the end of one part comes out flush with the face of another,
// or short of it by so much.
func (w *work) flush(j *joint, in, through *piece.Part, a piece.Axis, short piece.Figure) bool {
	e, b := in.Extent[a], through.Extent[a]
	o := j.meets.region.size(a)
	flush := (e.Low.Nm == b.Low.Nm+short.Nm && e.High.Nm >= b.High.Nm) || (e.High.Nm == b.High.Nm-short.Nm && e.Low.Nm <= b.Low.Nm)
	if !flush || o != b.Size()-short.Nm {
		w.fail(j, notFlush(in, through, o, b.Size()))
		return false
	}
	return true
}

// root returns the whole square root of a² + b², in units of a and b, times c,
// rounded down.
func root(a, b, c *big.Int) *big.Int {
	s := new(big.Int).Mul(a, a)
	s.Add(s, new(big.Int).Mul(b, b))
	s.Mul(s, c).Mul(s, c)
	return s.Sqrt(s)
}
