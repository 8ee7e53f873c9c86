package joinery

import (
	"math"
	"math/big"

	"scantling/internal/piece"
)

// roundTenon files the two cuts that round a tenon's edges to half circles, from
// its end inwards: each within a line from beyond the edge to where the flat begins
// and round the half circle back.
func (w *work) roundTenon(j *joint, main box, entry piece.Axis) {
	p := j.partA
	name := string(j.Address) + ".round"
	run, across := j.meets.run, j.meets.across
	side := p.Frame.SideToward(j.meets.entry)
	r := w.ledger.Half(name, j.Tenon.Thickness)
	uLow, uHigh := w.local(name, p, run, main)
	vLow, vHigh := w.local(name, p, across, main)
	zero := w.ledger.Less(name, r, r)
	outside := w.ledger.Less(name, zero, r)
	beyond := w.ledger.Sum(name, w.along(p, run), r)
	_, grows := p.Frame.LocalOf(run)
	for _, high := range [2]bool{false, true} {
		depth := w.ledger.Less(name, main[entry].High, main[entry].Low)
		if j.Tenon.Haunch.Nm > 0 && j.Tenon.HaunchHigh == (high == (grows > 0)) {
			depth = w.ledger.Less(name, depth, j.Tenon.Haunch)
		}
		from, flat := outside, w.ledger.Sum(name, uLow, r)
		if high {
			from, flat = beyond, w.ledger.Less(name, uHigh, r)
		}
		first, second := vLow, vHigh
		if high {
			first, second = second, first
		}
		line := []piece.OutlinePoint{
			{Along: from, Across: first}, {Along: flat, Across: first, Bulge: -1}, {Along: flat, Across: second}, {Along: from, Across: second},
		}
		w.holes = append(w.holes, piece.Cut{
			Kind: piece.Cheek, Part: p.Address, Joint: j.Address, With: j.B, Where: j.Where,
			Pocket: &piece.Pocket{Open: side, Outline: line, Depth: depth},
		})
	}
}

// rounding takes the round ends of a mortise into the numbers of its joint. At
// each end, over the length L of the tenon there (less the haunch), with the
// radius R of half the tenon's thickness: the two corners outside the half circle,
// (2 - π/2) R² in all, go over from A to B and are not cut below the tenon; instead
// of a flat 2 R wide and 2 R of the cheeks the parts meet on π R; and as much as
// the corners over is gained at the shoulder, and lost at the bottom where the
// tenon stands on it.
func (j *joint) rounding(keptA, keptB, neither *big.Int, all *touch) {
	if j.Tenon == nil || !j.Tenon.Round || !j.hasTenon {
		return
	}
	t := j.Tenon
	entry, _ := j.meets.entry.Axis()
	r := float64(t.Thickness.Nm) / 2
	corners := (2 - math.Pi/2) * float64(r*r)
	for _, high := range [2]bool{false, true} {
		long := float64(j.tenon.size(entry))
		if t.Haunch.Nm > 0 && t.HaunchHigh == high {
			long -= float64(t.Haunch.Nm)
		}
		move := wholes(float64(corners * long))
		keptA.Sub(keptA, move)
		keptB.Add(keptB, move)
		all.all.Add(&all.all, wholes(float64((math.Pi-4)*float64(r*long))+corners))
		if j.longGrain(j.meets.across) {
			all.long.Sub(&all.long, wholes(2*float64(r*long)))
		}
		if j.longGrain(j.meets.run) {
			all.long.Sub(&all.long, wholes(2*float64(r*long)))
		}
		switch {
		case t.Through:
		case j.ClearDeep.Nm > 0:
			neither.Sub(neither, wholes(float64(corners*float64(j.ClearDeep.Nm))))
		default:
			all.all.Sub(&all.all, wholes(corners))
		}
	}
}

// wholes rounds to whole nanometres, squared or cubed.
func wholes(x float64) *big.Int {
	n, _ := big.NewFloat(math.Round(x)).Int(nil)
	return n
}
