package movement

import (
	"fmt"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Stretches that are no pair: up to slight across a part's thickness, as a shelf's
// end in its housing, and up to narrow at all, as a tongue or the edge of a bottom.
const (
	slight = 40 * unit.Millimetre
	narrow = 12 * unit.Millimetre
)

// pairs lists every pair of parts that are joined over a stretch along which one
// moves with the seasons and the other does not, except over a thickness of no more
// than 40 mm, or over no more than 12 mm at all. Where both move, as boards do that go round a corner, there is none.
func (f *follower) pairs() []plan.GrainPair {
	joints := map[address.Address]*piece.Joint{}
	for i := range f.Piece.Joints {
		joints[f.Piece.Joints[i].Address] = &f.Piece.Joints[i]
	}
	limit := f.limit("cross grain", unit.MM(100))
	var out []plan.GrainPair
	for i := range f.Joints {
		low := &f.Joints[i]
		j, a, b := joints[low.Joint], f.parts[low.A], f.parts[low.B]
		if j == nil || a == nil || b == nil {
			continue
		}
		entry, _ := low.Entry.Axis()
		for axis := piece.Right; axis <= piece.Up; axis++ {
			if axis == entry || low.Region[axis].Size() <= 0 || !entered(low.Region[axis]) {
				continue
			}
			held := j.Held(low.Region[axis], axis, a, f.Ledger)
			if moves, holds, ok := f.which(a, b, axis, held.Size()); ok {
				out = append(out, f.pair(j, held, moves, holds, axis, limit))
			}
		}
	}
	return out
}

// entered reports whether both ends of a stretch stand in the ledger.
func entered(e piece.Extent) bool { return e.Low.Entry != 0 && e.High.Entry != 0 }

// which returns which of two parts moves along an axis; false if none or both do.
func (f *follower) which(a, b *piece.Part, axis piece.Axis, size unit.Length) (moves, holds *piece.Part, ok bool) {
	swells := func(p *piece.Part) bool {
		_, _, solid := f.wood(p)
		local, _ := p.Frame.LocalOf(axis)
		return solid && (local == piece.AlongWidth || local == piece.AlongThickness)
	}
	if swells(a) == swells(b) {
		return nil, nil, false
	}
	if swells(b) {
		a, b = b, a
	}
	if local, _ := a.Frame.LocalOf(axis); size <= narrow || local == piece.AlongThickness && size <= slight {
		return nil, nil, false
	}
	return a, b, true
}

func (f *follower) pair(j *piece.Joint, held piece.Extent, moves, holds *piece.Part, axis piece.Axis, limit piece.Figure) plan.GrainPair {
	name := string(j.Address) + ".grain"
	m, w, _ := f.wood(moves)
	across, _ := side(moves, axis)
	size := f.Ledger.Less(name+".joined", held.High, held.Low)
	s := f.swell(name, m, w, across, size)
	p := plan.GrainPair{
		Joint: j.Address, Moves: moves.Address, Holds: holds.Address, Axis: axis, Size: size,
		Restraint: restraint(j), Grows: s.Grows, Shrinks: s.Shrinks, Limit: limit,
	}
	if p.Restraint != plan.Floating && p.Restraint != plan.Slotted {
		p.Strain = f.maker.Estimate(name+".strain", "forced strain", "percent", s.Grows.Source, plan.NoWood, estimate.Again(s.Grows), estimate.Again(s.Shrinks), estimate.Of(size))
		moe, part := f.acrossModulus(name, w, Sawn(m.Cut))
		p.Stress = f.maker.Estimate(name+".stress", "stress across", "MPa", sourceElastic, plan.NoStiffness, estimate.Again(p.Strain), moe, part)
	}
	p.Verdict = verdict(p)
	p.Remedies = remedies(p, m, holds)
	return p
}

var sourceElastic = figure.Source{Key: "movement.stress-across", Title: "Wood Handbook FPL-GTR-190", Edition: "2010", Clause: "Table 5-1", Status: figure.Memory}

// restraint says how a joint holds its parts against each other.
func restraint(j *piece.Joint) plan.Restraint {
	switch {
	case j.Glue != "" && !j.Slides:
		return plan.Glued
	case j.Fasteners != nil && j.Fasteners.Count > 0 && j.Slides:
		return plan.Slotted
	case j.Fasteners == nil || j.Fasteners.Count == 0:
		return plan.Floating
	case strings.Contains(strings.ToLower(j.Fasteners.Kind), "screw"):
		return plan.Screwed
	}
	return plan.Nailed
}

// verdict judges a pair: what is held over more than the limit breaks if it is
// glued, and gives if nails or screws hold it. Where nothing moves nothing breaks.
func verdict(p plan.GrainPair) plan.Verdict {
	still := p.Grows.Known() && p.Grows.Value.Sign() == 0 && p.Shrinks.Known() && p.Shrinks.Value.Sign() == 0
	switch {
	case p.Restraint == plan.Floating, p.Restraint == plan.Slotted, still:
		return plan.MovesFreely
	case p.Size.Nm <= p.Limit.Nm:
		return plan.PutUpWith
	case p.Restraint == plan.Glued:
		return plan.WillBreak
	}
	return plan.Gives
}

// remedies lists what would help a pair that breaks or gives.
func remedies(p plan.GrainPair, m piece.Material, holds *piece.Part) []string {
	var out []string
	switch p.Verdict {
	case plan.WillBreak:
		out = append(out, "slotted", "floating", "sliding")
	case plan.Gives:
		out = append(out, "slotted")
	default:
		return nil
	}
	if m.Cut != "quarter" {
		out = append(out, "quarter")
	}
	return append(out, "sheet", "narrower")
}

// forcedStrain is the greater of what a size gains and loses, in percent of it.
func forcedStrain(a []unit.Value) (unit.Value, error) {
	l, err := lengthsOf(a, 3)
	if err != nil || l[2] <= 0 {
		return unit.Value{}, fmt.Errorf("a strain of %v", a)
	}
	return estimate.Value(unit.DimUntyped, 100*float64(max(l[0], l[1]))/float64(l[2])), nil
}

// stressAcross is what a strain in percent comes to elastically, in MPa: by the
// modulus along the grain in GPa, a tenth more, and the part that it is across.
func stressAcross(a []unit.Value) (unit.Value, error) {
	if len(a) != 3 {
		return unit.Value{}, fmt.Errorf("a stress takes 3 values, not %d", len(a))
	}
	return estimate.Value(unit.DimUntyped, a[0].Float()/100*a[1].Float()*1000*1.1*a[2].Float()), nil
}
