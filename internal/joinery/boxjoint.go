package joinery

import "scantling/internal/piece"

// box shares the corner of two parts out in fingers along their common edge,
// from its low end: the first kept by A, unless the joint says B, then by turns.
// Each part has a socket where the other has a finger. Both must come to the
// corner with their end grain.
//
// With overlap ta × tb × w in n fingers f: kept by A ta tb Σf of its own fingers.
// A and B meet between fingers, (n - 1) ta tb, and at the bottom of the sockets,
// tb Σf for A's fingers and ta Σf for B's.
func (w *work) box(i int) {
	j := &w.joints[i]
	edge, ok := w.commonEdge(j)
	if !ok {
		return
	}
	o := j.meets.region
	fingers := j.Fingers
	if len(fingers) == 0 {
		fingers = w.evenFingers(j, o, edge)
	}
	name := string(j.Address) + ".finger"
	width := w.ledger.Less(name, o[edge].High, o[edge].Low)
	if len(fingers) < 2 {
		w.fail(j, fingersDiffer(j, piece.Figure{}, width))
		return
	}
	if sum := w.ledger.Sum(name, fingers...); sum.Nm != width.Nm {
		w.fail(j, fingersDiffer(j, sum, width))
		return
	}
	j.meets.run = edge
	byA := j.First != "b"
	at := o[edge].Low
	for n, f := range fingers {
		if f.Nm <= 0 {
			w.fail(j, fingersDiffer(j, f, width))
			return
		}
		next := o[edge].High
		if n < len(fingers)-1 {
			next = w.ledger.Sum(name, at, f)
		}
		finger := o.with(edge, false, at).with(edge, true, next)
		keeper, loser, cut := j.a, j.b, j.partB
		if !byA {
			keeper, loser, cut = j.b, j.a, j.partA
		}
		run, _ := cut.Frame.Thickness.Axis()
		w.add(claim{
			joint: i, loser: loser, keeper: keeper, cut: finger, kept: finger,
			kind: piece.Socket, open: endAt(cut, o), run: run,
		})
		at, byA = next, !byA
	}
	w.fasten(j)
}

// commonEdge checks that both parts come to the corner with their end grain, flush,
// and returns the axis along which the fingers follow each other.
func (w *work) commonEdge(j *joint) (piece.Axis, bool) {
	turn, ok := w.endGrain(j)
	if !ok {
		return 0, false
	}
	if !w.flush(j, j.partA, j.partB, turn.alongA, piece.Figure{}) || !w.flush(j, j.partB, j.partA, turn.alongB, piece.Figure{}) {
		return 0, false
	}
	return turn.run, true
}

// endAt returns the direction of the part's end that lies in the region.
func endAt(p *piece.Part, region box) piece.Direction {
	a, _ := p.Frame.Length.Axis()
	if region[a].High.Nm == p.Extent[a].High.Nm {
		return piece.Toward(a, 1)
	}
	return piece.Toward(a, -1)
}

// evenFingers shares the width out in an odd number of fingers of about the
// joint's finger, else of about A's thickness.
func (w *work) evenFingers(j *joint, o box, edge piece.Axis) []piece.Figure {
	pitch := j.Finger.Nm
	if pitch <= 0 {
		pitch = j.partA.Thickness.Nm
	}
	n := int64(max(3, min(999, (o.size(edge)+pitch/2)/pitch)))
	if n%2 == 0 {
		n--
	}
	name := string(j.Address) + ".finger"
	whole := w.ledger.Less(name, o[edge].High, o[edge].Low)
	out := make([]piece.Figure, n)
	before := w.ledger.Less(name, whole, whole)
	for k := range n {
		upTo := whole
		if k < n-1 {
			upTo = w.ledger.Times(name, whole, k+1, n)
		}
		out[k] = w.ledger.Less(name, upTo, before)
		before = upTo
	}
	return out
}
