package joinery

import "scantling/internal/piece"

// halving cuts both parts away to half where they cross: A keeps the upper half
// (the half behind, or at the right, where the halves do not lie one above the
// other), B the other. The joint's depth, if it is given, is how much A keeps.
//
// With overlap p × q × h: each keeps p q h/2, and they meet over p q between the
// halves and on the walls of either notch.
func (w *work) halving(i int) {
	j := &w.joints[i]
	axis, ok := halved(j)
	if !ok {
		w.fail(j, fault{CodeHalving, "joint.nothing-to-halve", pairArgs(j.Joint)})
		return
	}
	o := j.meets.region
	name := string(j.Address) + ".middle"
	var middle piece.Figure
	switch {
	case j.Depth.Nm == 0:
		middle = w.ledger.Sum(name, o[axis].Low, w.ledger.Half(name, w.ledger.Less(name, o[axis].High, o[axis].Low)))
	case j.Depth.Nm >= o.size(axis):
		w.fail(j, tooDeep(j, j.Depth.Nm, o.size(axis)))
		return
	default:
		middle = w.ledger.Less(name, o[axis].High, j.Depth)
	}
	upper, lower := o.with(axis, false, middle), o.with(axis, true, middle)
	j.meets.entry = piece.Toward(axis, -1)
	w.add(claim{
		joint: i, loser: j.b, keeper: j.a, cut: upper, kept: upper, kind: piece.Halving,
		open: piece.Toward(axis, 1), run: acrossGrain(j.partB, axis),
	})
	w.add(claim{
		joint: i, loser: j.a, keeper: j.b, cut: lower, kept: lower, kind: piece.Halving,
		open: piece.Toward(axis, -1), run: acrossGrain(j.partA, axis),
	})
	w.fasten(j)
}

// halved finds the axis along which the overlap is shared: B must be open at its
// top there and A at its bottom. Parts of one extent, or that turn the same
// local axis that way, go first.
func halved(j *joint) (piece.Axis, bool) {
	best, rank := piece.Up, -1
	for _, i := range axes {
		a, b, o := j.partA.Extent[i], j.partB.Extent[i], j.meets.region[i]
		if o.Low.Nm != a.Low.Nm || o.High.Nm != b.High.Nm {
			continue
		}
		r := 0
		if a.Low.Nm == b.Low.Nm && a.High.Nm == b.High.Nm {
			r += 2
		}
		la, _ := j.partA.Frame.LocalOf(i)
		lb, _ := j.partB.Frame.LocalOf(i)
		if la == lb {
			r++
		}
		if r > rank {
			best, rank = i, r
		}
	}
	return best, rank >= 0
}

// acrossGrain returns the axis of a notch's run: of the two that are not open's,
// the one that is not the part's length.
func acrossGrain(p *piece.Part, open piece.Axis) piece.Axis {
	length, _ := p.Frame.Length.Axis()
	a, b := (open+1)%3, (open+2)%3
	if a == length {
		return b
	}
	return a
}
