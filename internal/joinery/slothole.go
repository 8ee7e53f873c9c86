package joinery

import "scantling/internal/piece"

// frees is the axis along which slotted screws let the second part move: across its
// grain, of the two that the fasteners do not go along.
func (d driving) frees() piece.Axis {
	if along, _ := d.second.Frame.Length.Axis(); along == d.spread {
		return d.mid
	}
	return d.spread
}

// slotHole files a hole that is longer than it is wide, right through the first
// part: the shank of a screw moves in it by the fasteners' slot to either side.
func (w *work) slotHole(j *joint, d driving, spot [3]piece.Figure, along piece.Axis, wide piece.Figure) {
	p, name := d.first, string(d.first.Address)+".slot"
	axis, _ := d.way.Axis()
	half := w.ledger.Half(name, wide)
	local, _ := p.Frame.LocalOf(along)
	s := piece.Slot{
		Open: p.Frame.SideToward(d.way.Opposite()), Run: local, Depth: w.along(p, axis), EndRadius: half,
	}
	for _, dir := range p.Frame.Directions() {
		a, sign := dir.Axis()
		if a == axis {
			continue
		}
		at := w.ledger.Less(name, spot[a], p.Extent[a].Low)
		if sign < 0 {
			at = w.ledger.Less(name, p.Extent[a].High, spot[a])
		}
		if a == along {
			s.From, s.To = w.ledger.Less(name, at, half, j.Fasteners.Slot), w.ledger.Sum(name, at, half, j.Fasteners.Slot)
		} else {
			s.Near, s.Far = w.ledger.Less(name, at, half), w.ledger.Sum(name, at, half)
		}
	}
	with := j.A
	if p == j.partA {
		with = j.B
	}
	w.holes = append(w.holes, piece.Cut{Kind: piece.ScrewSlot, Part: p.Address, Joint: j.Address, With: with, Slot: &s, Where: j.Where})
}
