package fitting

import (
	"scantling/internal/hardware"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// local is a place in the piece measured from a part's local origin.
func (b *bench) local(p *piece.Part, a piece.Axis, f piece.Figure) piece.Figure {
	l, name := b.Ledger, string(p.Address)+"."+b.Name
	if _, sign := p.Frame.LocalOf(a); sign < 0 {
		return l.Less(name, p.Extent[a].High, f)
	}
	return l.Less(name, f, p.Extent[a].Low)
}

// deep is how far a place lies behind a side.
func (b *bench) deep(p *piece.Part, side piece.Direction, at piece.Extent) piece.Figure {
	l, name := b.Ledger, string(p.Address)+"."+b.Name+" depth"
	axis, sign := side.Axis()
	if sign < 0 {
		return l.Less(name, at.High, p.Extent[axis].Low)
	}
	return l.Less(name, p.Extent[axis].High, at.Low)
}

// recess files a trench in a part from a side, over a box of the piece. It may run
// out at an edge, and must keep within the part otherwise.
func (b *bench) recess(p *piece.Part, side piece.Direction, at [3]piece.Extent, kind piece.CutKind) {
	axis, _ := side.Axis()
	for _, a := range [2]piece.Axis{(axis + 1) % 3, (axis + 2) % 3} {
		e := p.Extent[a]
		if over := max(e.Low.Nm-at[a].Low.Nm, at[a].High.Nm-e.High.Nm); over > 0 {
			b.fail(CodeRoom, "fitting.off-part", message.Address("part", p.Address), message.Length("over", over), message.Length("size", at[a].Size()))
			return
		}
	}
	depth := b.deep(p, side, at[axis])
	if thick := p.Extent[axis].Size(); depth.Nm >= thick {
		b.comesThrough(p, depth.Nm, thick)
		return
	}
	run, grows := p.Frame.LocalOf(b.Runs)
	s := piece.Slot{Open: p.Frame.SideToward(side), Run: run, Depth: depth}
	s.From, s.To = b.local(p, b.Runs, at[b.Runs].Low), b.local(p, b.Runs, at[b.Runs].High)
	if grows < 0 {
		s.From, s.To = s.To, s.From
	}
	third := 3 - axis - b.Runs
	s.Near, s.Far = b.local(p, third, at[third].Low), b.local(p, third, at[third].High)
	if s.Near.Nm > s.Far.Nm {
		s.Near, s.Far = s.Far, s.Near
	}
	s.StartOpen, s.EndOpen = s.From.Nm == 0, s.To.Nm == p.Extent[b.Runs].Size()
	b.out.Cuts = append(b.out.Cuts, piece.Cut{
		Address: b.address(p).Child(string(kind)), Kind: kind, Part: p.Address, Slot: &s, Where: b.Where,
	})
}

func (b *bench) comesThrough(p *piece.Part, depth, thick unit.Length) {
	b.fail(CodeRoom, "fitting.comes-through", message.Address("part", p.Address), message.Length("depth", depth), message.Length("thickness", thick))
}

// bore files a hole in a part from a side; spot gives its place along the two other
// axes of the piece. A depth of nought goes through.
func (b *bench) bore(p *piece.Part, side piece.Direction, spot [3]piece.Figure, diameter, depth piece.Figure, nth int) {
	axis, _ := side.Axis()
	local, _ := p.Frame.LocalOf(axis)
	thick := p.Sizes()[local]
	h := piece.Bore{Open: p.Frame.SideToward(side), Diameter: diameter, Depth: depth}
	switch {
	case depth.Nm == 0:
		h.Depth, h.Through = thick, true
	case depth.Nm >= thick.Nm:
		b.comesThrough(p, depth.Nm, thick.Nm)
		return
	}
	k := 0
	for _, d := range p.Frame.Directions() {
		a, _ := d.Axis()
		if a == axis {
			continue
		}
		e := p.Extent[a]
		if room := 2 * min(spot[a].Nm-e.Low.Nm, e.High.Nm-spot[a].Nm); room < diameter.Nm {
			b.fail(CodeRoom, "fitting.hole-off-part", message.Address("part", p.Address), message.Length("diameter", diameter.Nm), message.Length("room", max(room, 0)))
			return
		}
		h.At[k] = b.local(p, a, spot[a])
		k++
	}
	c := piece.Cut{Address: b.address(p).Nth("hole", nth), Kind: piece.Hole, Part: p.Address, Bore: &h, Where: b.Where}
	for _, before := range b.out.Cuts {
		if before.Part == p.Address && before.Slot != nil && b.address(p).Has(before.Address) {
			c.After = append(c.After, before.Address)
		}
	}
	b.out.Cuts = append(b.out.Cuts, c)
}

// screws bores lead holes for a row of the fitting's screws, shared along a
// stretch of the runs: number k of n in the middle of the k-th part. The screws go
// through so much of the fitting, and their heads lie so far below the side.
func (b *bench) screws(p *piece.Part, side piece.Direction, along piece.Extent, across piece.Figure, n int, through, below piece.Figure, w hardware.Wood) {
	s, err := hardware.FindScrew(b.Fitting.Screw, unit.Metre)
	if err != nil || n < 1 {
		return
	}
	lead := s.Holes(w).Lead
	l, name := b.Ledger, b.Name+".screw"
	diameter := b.size("lead", lead.Value)
	depth := l.Sum(name, l.Less(name, b.size("screw", b.Fitting.ScrewLength), through), below)
	axis, _ := side.Axis()
	span := l.Less(name, along.High, along.Low)
	for k := range n {
		spot := [3]piece.Figure{}
		spot[b.Runs] = l.Sum(name, along.Low, l.Times(name, span, int64(2*k+1), int64(2*n)))
		spot[3-axis-b.Runs] = across
		b.bore(p, side, spot, diameter, depth, k+1)
	}
}
