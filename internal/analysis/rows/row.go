package rows

import (
	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// row writes the line down, from the first wood to the last.
func (m *model) row(l line, r region, of address.Address, title message.Message) plan.Row {
	wood, _ := m.wood(l)
	name := string(of) + ".row." + axisName(l.axis)
	out := plan.Row{Address: of.Keyed("row", axisName(l.axis)), Title: title, Axis: l.axis}
	f := m.band(l, r)
	for k := range 2 {
		out.Band[k] = piece.Extent{Low: m.at(name, f.lo[k]), High: m.at(name, f.hi[k])}
	}
	var start, end piece.Figure
	for i, s := range wood {
		from, to := m.edge(s, l, false), m.edge(s, l, true)
		if i == 0 {
			start = from
		} else if from.Nm != end.Nm {
			out.Terms = append(out.Terms, m.sawn(l, end, from, m.gap(l, wood[i-1], s, m.ledger.Less(name, from, end)))...)
		}
		out.Terms = append(out.Terms, piece.Term{Figure: m.ledger.Less(name, to, from), Of: s.b.part.Address, Word: "part"})
		end = to
	}
	out.Start = start
	figures := make([]piece.Figure, len(out.Terms))
	for i, t := range out.Terms {
		figures[i] = t.Figure
	}
	out.Total = m.ledger.Sum(name, figures...)
	return out
}

// at is a limit of a band: a place, no size of anything.
func (m *model) at(name string, l unit.Length) piece.Figure {
	return m.ledger.Leaf(name+".band", l, "derived", "")
}

// edge returns the figure at which a stretch of wood begins or ends.
func (m *model) edge(s stretch, l line, high bool) piece.Figure {
	p := s.b.part
	c := s.before
	if high {
		c = s.behind
	}
	e := p.Extent[l.axis]
	if c == nil {
		if high {
			return e.High
		}
		return e.Low
	}
	local, sign := p.Frame.LocalOf(l.axis)
	name := string(c.Address)
	// Wood that ends at its high end begins a cut there: the cut's low limit.
	f := m.limit(p, c, local, (sign > 0) != high)
	if sign > 0 {
		return m.ledger.Sum(name, e.Low, f)
	}
	return m.ledger.Less(name, e.High, f)
}

// limit returns a local limit of a cut along an axis as a figure.
func (m *model) limit(p *piece.Part, c *piece.Cut, axis piece.Local, high bool) piece.Figure {
	name := string(c.Address)
	switch {
	case c.Slot != nil:
		open, openHigh := c.Slot.Open.Axis()
		switch {
		case axis == open && openHigh:
			return m.ledger.Less(name, p.Sizes()[axis], c.Slot.Depth) // the bottom; the mouth is the part's side
		case axis == open:
			return c.Slot.Depth
		case axis == c.Slot.Run && high:
			return c.Slot.To
		case axis == c.Slot.Run:
			return c.Slot.From
		}
		return m.across(c.Slot, name, high)
	case c.Bore != nil:
		// Only lines along the hole are drawn.
		if _, openHigh := c.Bore.Open.Axis(); openHigh {
			return m.ledger.Less(name, p.Sizes()[axis], c.Bore.Depth)
		}
		return c.Bore.Depth
	}
	return piece.Figure{}
}

// across returns the near or the far limit of a slot at its mouth.
func (m *model) across(s *piece.Slot, name string, far bool) piece.Figure {
	if s.Corner.Nm <= 0 || s.Depth.Nm >= s.Corner.Nm {
		if far {
			return s.Far
		}
		return s.Near
	}
	width := m.ledger.Less(name+".width", s.Far, s.Near)
	open, err := m.ledger.Call(name+".mouth", "mouth of a cut", width.Entry, s.Depth.Entry, s.Corner.Entry)
	if err != nil {
		return s.Near
	}
	near := m.ledger.Sum(name+".mouth", s.Near, m.ledger.Round(name+".mouth", m.ledger.Half(name+".mouth", m.ledger.Less(name+".mouth", width, open)), unit.Nanometre, unit.Down))
	if !far {
		return near
	}
	return m.ledger.Sum(name+".mouth", near, open)
}

// narrow is the widest air between two parts that is called a clearance. Common
// practice, no source.
const narrow = 10 * unit.Millimetre

// gap names the air between two stretches of wood: a cut of one part; a whole
// space; a clearance; the inside of a group, between its own parts; or air.
func (m *model) gap(l line, a, b stretch, f piece.Figure) piece.Term {
	t := piece.Term{Air: true, Figure: f, Word: "air"}
	switch c := a.behind; {
	case a.b == b.b && c != nil && c == b.before:
		t.Of, t.Word = c.Address, string(c.Kind)
		return t
	case a.b == b.b:
		t.Of = a.b.part.Address
		return t
	case f.Nm <= narrow:
		t.Word = "clearance"
	case a.b.part.Group == b.b.part.Group:
		t.Of, t.Word = a.b.part.Group, "inside"
	}
	if s := m.spaceAt(l, a.to+(b.from-a.to)/2); s != nil {
		t.Of = s.Address
		if e := s.Extent[l.axis]; e.Low.Nm == a.to && e.High.Nm == b.from {
			t.Word = "space"
		}
	}
	return t
}

// spaceAt returns the smallest space that holds a point of the line, or nil.
func (m *model) spaceAt(l line, at unit.Length) *piece.Space {
	l.at[l.axis] = at
	var best *piece.Space
	var least float64
	for _, s := range m.spaces {
		inside, size := true, 1.0
		for k, e := range s.Extent {
			inside = inside && l.at[k] >= e.Low.Nm && l.at[k] <= e.High.Nm
			size *= e.Size().Millimetres()
		}
		if inside && (best == nil || size < least) {
			best, least = s, size
		}
	}
	return best
}
