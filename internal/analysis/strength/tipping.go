package strength

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/geom/vec"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// mostOut is how many drawers are taken out one by one.
const mostOut = 24

// body is what moves as one: the case, or a drawer with what lies in it.
type body struct {
	move   *move // nil for the case
	mass   plan.Estimate
	behind piece.Figure // of the front feet
	high   piece.Figure // over the floor
}

// stand is where a piece stands.
type stand struct {
	front, back, floor piece.Figure
	found              bool
}

// standing tells what keeps the piece on its feet: empty, and loaded if anything is to
// go in; shut, each drawer out by itself, two together, three, and so on to all of them,
// those first that come out farthest.
// A piece without drawers that is lower than it is deep is not asked.
func (e *estimator) standing() []plan.Standing {
	feet := e.feet()
	if !feet.found {
		return nil
	}
	if len(e.moves) == 0 && e.top-e.floor < feet.back.Nm-feet.front.Nm {
		return nil
	}
	states := []string{"empty"}
	if len(e.cargo) > 0 {
		states = append(states, "loaded")
	}
	outs := [][]*move{nil}
	for i := range e.moves {
		if i < mostOut {
			outs = append(outs, []*move{&e.moves[i]})
		}
	}
	all := make([]*move, len(e.moves))
	for i := range e.moves {
		all[i] = &e.moves[i]
	}
	slices.SortStableFunc(all, func(a, b *move) int { return cmp.Compare(e.travel(b).Nm, e.travel(a).Nm) })
	for k := 2; k < len(all) && k <= mostOut; k++ {
		outs = append(outs, all[:k])
	}
	if len(all) > 1 {
		outs = append(outs, all)
	}
	var out []plan.Standing
	for _, state := range states {
		bodies := e.bodies(feet, state == "loaded")
		for _, set := range outs {
			out = append(out, e.stands(feet, state, bodies, set))
		}
	}
	return out
}

// feet finds the floor and the line of the front feet: what reaches lowest, of what does
// not move.
func (e *estimator) feet() stand {
	var s stand
	for _, first := range []bool{true, false} {
		for i := range e.Piece.Parts {
			p := &e.Piece.Parts[i]
			if e.of(p.Address) != nil {
				continue
			}
			low := p.Extent[piece.Up].Low
			switch {
			case first && (!s.found || low.Nm < s.floor.Nm):
				s.floor, s.found, s.front, s.back = low, true, p.Extent[piece.Back].Low, p.Extent[piece.Back].High
			case !first && low.Nm == s.floor.Nm:
				s.front, s.back = lower(s.front, p.Extent[piece.Back].Low), higher(s.back, p.Extent[piece.Back].High)
			}
		}
	}
	return s
}

// bodies puts together what moves as one.
func (e *estimator) bodies(feet stand, loaded bool) []body {
	type lump struct {
		masses []plan.Estimate
		at     []vec.V3
	}
	lumps := make([]lump, len(e.moves)+1) // the last is the case
	into := func(a address.Address) *lump {
		if m := e.of(a); m != nil {
			return &lumps[slices.IndexFunc(e.moves, func(x move) bool { return x.group == m.group })]
		}
		return &lumps[len(e.moves)]
	}
	for i := range e.Piece.Parts {
		if p := &e.Piece.Parts[i]; p.Form != piece.Bought {
			l := into(p.Address)
			l.masses, l.at = append(l.masses, e.mass(p)), append(l.at, e.centre(p))
		}
	}
	for _, c := range e.cargo {
		if !loaded {
			break
		}
		l := into(c.group)
		if !c.located {
			c.mass = plan.Estimate{Missing: []plan.Datum{plan.NoPlace}}
		}
		l.masses, l.at = append(l.masses, c.mass), append(l.at, c.centre)
	}
	var out []body
	for i, l := range lumps {
		if len(l.masses) == 0 {
			continue
		}
		name := "the case"
		b := body{}
		if i < len(e.moves) {
			b.move = &e.moves[i]
			name = string(b.move.group)
		}
		if loaded {
			name += " loaded"
		}
		b.mass = e.sum(name+".mass", l.masses...)
		y, z := centroid(l.masses, l.at)
		b.behind = e.Ledger.Leaf(name+" behind the front feet", whole(y-feet.front.Nm.Millimetres()), ledger.Derived, "centre of gravity of the solids")
		b.high = e.Ledger.Leaf(name+" over the floor", whole(z-feet.floor.Nm.Millimetres()), ledger.Derived, "centre of gravity of the solids")
		out = append(out, b)
	}
	return out
}

// centroid is the common centre of gravity, back and up, in millimetres.
func centroid(masses []plan.Estimate, at []vec.V3) (back, up float64) {
	all := 0.0
	for i, m := range masses {
		x := m.Value.Float()
		all += x
		back += float64(x * at[i].Y)
		up += float64(x * at[i].Z)
	}
	if all <= 0 {
		return 0, 0
	}
	return back / all, up / all
}

// stands works out one case.
func (e *estimator) stands(feet stand, state string, bodies []body, out []*move) plan.Standing {
	name := fmt.Sprintf("standing %s, %d out", state, len(out))
	s := plan.Standing{Case: state}
	for _, m := range out {
		s.Out = append(s.Out, m.group)
	}
	var args []estimate.Arg
	var masses []plan.Estimate
	for _, b := range bodies {
		behind := b.behind
		if b.move != nil && slices.Contains(out, b.move) {
			behind = e.Ledger.Less(name+".behind", behind, e.travel(b.move))
		}
		args = append(args, estimate.Again(b.mass), estimate.Of(behind), estimate.Of(b.high))
		masses = append(masses, b.mass)
	}
	s.Mass = e.sum(name+".mass", masses...)
	s.Holds = e.maker.Estimate(name+".holds", "moment about the feet", "N m", mechanics.SourceTipping, plan.NoMass, args...)
	depth := e.Ledger.Less("depth of the feet", feet.back, feet.front)
	s.Soft = e.maker.Estimate(name+".soft", "moment on a soft floor", "N m", mechanics.CarpetStrip.Source, plan.NoMass, append([]estimate.Arg{estimate.Of(depth)}, args...)...)
	s.Lean = e.maker.Estimate(name+".lean", "lean", "degrees", mechanics.SourceTipping, plan.NoMass, args...)
	s.PullHigh = e.pullHigh(feet)
	s.Pull = e.maker.Estimate(name+".pull", "force at a distance", "", mechanics.SourceTipping, plan.NoMass, estimate.Again(s.Holds), estimate.Of(s.PullHigh))
	for _, m := range out {
		before := e.Ledger.Less(name+".before", feet.front, m.low[piece.Back])
		before = e.Ledger.Sum(name+".before", before, e.travel(m))
		if before.Nm > s.Before.Nm {
			s.Before = before
		}
	}
	if s.Before.Nm > 0 {
		s.Press = e.maker.Estimate(name+".press", "force at a distance", "", mechanics.SourceTipping, plan.NoMass, estimate.Again(s.Holds), estimate.Of(s.Before))
	}
	return s
}

// travel is how far a drawer stands out: two thirds of its length where an out-stop holds
// it (ASTM F2057-23, from memory), and all of it where nothing does: then it is pulled
// right out.
func (e *estimator) travel(m *move) piece.Figure {
	if m.out.Entry == 0 {
		name := string(m.group)
		m.out = e.Ledger.Less(name+".length", m.high[piece.Back], m.low[piece.Back])
		if e.outStop(m) {
			m.out = e.Ledger.Times(name+".out", m.out, 2, 3)
		}
	}
	return m.out
}

// outStop reports whether hardware keeps a drawer from being pulled right out.
func (e *estimator) outStop(m *move) bool {
	for _, h := range e.Piece.Hardware {
		if h.Count == 0 || !m.group.Has(h.On) && !m.group.Has(h.Address) {
			continue
		}
		kind := strings.ToLower(strings.ReplaceAll(h.Kind, "-", " "))
		for _, word := range []string{"turn button", "stop", "runner", "slide", "chain"} {
			if strings.Contains(kind, word) {
				return true
			}
		}
	}
	return false
}

// pullHigh is how high over the floor somebody pulls: in the middle of the highest
// drawer, or at the top.
func (e *estimator) pullHigh(feet stand) piece.Figure {
	var best *move
	for i := range e.moves {
		if best == nil || e.moves[i].high[piece.Up].Nm > best.high[piece.Up].Nm {
			best = &e.moves[i]
		}
	}
	if best != nil {
		middle := e.Ledger.Half("pull at", e.Ledger.Sum("pull at", best.low[piece.Up], best.high[piece.Up]))
		return e.Ledger.Less("pull over the floor", middle, feet.floor)
	}
	top := e.Piece.Parts[0].Extent[piece.Up].High
	for i := range e.Piece.Parts {
		top = higher(top, e.Piece.Parts[i].Extent[piece.Up].High)
	}
	return e.Ledger.Less("top over the floor", top, feet.floor)
}
