package joinery

import "scantling/internal/piece"

// slope is a plane square to a section: all of a part beyond it goes. It crosses
// the axis of the side that it takes off at one place where the other axis of the
// section is at the part's low limit and at another where it is at the high one.
type slope struct {
	off      piece.Direction
	across   piece.Axis
	at       [2]piece.Figure
	straight piece.Axis
}

// slice writes a slope as a cut of its part.
func (w *work) slice(p *piece.Part, s *slope) piece.Slice {
	off, _ := s.off.Axis()
	out := piece.Slice{Off: p.Frame.SideToward(s.off)}
	at := s.at
	if _, sign := p.Frame.LocalOf(s.across); sign < 0 {
		at[0], at[1] = at[1], at[0]
	}
	label := string(p.Address) + ".slope"
	for k := range at {
		at[k] = w.place(label, p, off, at[k])
	}
	local, _ := p.Frame.LocalOf(off)
	k := 0
	for _, d := range p.Frame.Directions() {
		a, _ := d.Axis()
		if a == off {
			continue
		}
		out.From[k] = w.ledger.Less(label, p.Sizes()[local], p.Sizes()[local])
		out.To[k] = w.along(p, a)
		if a == s.across {
			out.At[0], out.At[1+k] = at[0], at[1]
			out.At[2-k] = at[0]
		}
		k++
	}
	return out
}

// place turns a place along an axis of the piece into one along the part's own
// axis, from its local origin.
func (w *work) place(label string, p *piece.Part, a piece.Axis, f piece.Figure) piece.Figure {
	e := p.Extent[a]
	low, high := e.Low, e.High
	if _, sign := p.Frame.LocalOf(a); sign < 0 {
		switch f.Nm {
		case high.Nm:
			return w.ledger.Less(label, high, high)
		case low.Nm:
			return w.along(p, a)
		}
		return w.ledger.Less(label, high, f)
	}
	switch f.Nm {
	case low.Nm:
		return w.ledger.Less(label, low, low)
	case high.Nm:
		return w.along(p, a)
	}
	return w.ledger.Less(label, f, low)
}

// shapedCut writes a claim with a section as a trench with leaning walls, if it
// is one, or else as a pocket.
func (w *work) shapedCut(p *piece.Part, c *claim, out *piece.Cut) bool {
	if c.slope != nil {
		s := w.slice(p, c.slope)
		out.Slice = &s
		return true
	}
	if s, ok := w.trench(p, c); ok {
		out.Slot = &s
		return true
	}
	k, ok := w.pocket(p, c)
	if ok {
		out.Pocket = &k
	}
	return ok
}

// trench writes a claim as a slot, from a side on which one side of its section
// lies, where the section's other corners are all equally deep.
func (w *work) trench(p *piece.Part, c *claim) (piece.Slot, bool) {
	across := section(c.profile.axis)
	var tries []piece.Direction
	if c.open != "" {
		tries = append(tries, c.open)
	}
	for _, a := range across {
		tries = append(tries, piece.Toward(a, 1), piece.Toward(a, -1))
	}
	for _, d := range tries {
		for k, a := range across {
			if open, _ := d.Axis(); open == a {
				if s, ok := w.trenchFrom(p, c, d, k); ok {
					return s, true
				}
			}
		}
	}
	return piece.Slot{}, false
}

// trenchFrom is trench from one side; k is its axis among those of the section.
func (w *work) trenchFrom(p *piece.Part, c *claim, open piece.Direction, k int) (piece.Slot, bool) {
	axis, sign := open.Axis()
	top := box(p.Extent).end(axis, sign > 0)
	other := section(c.profile.axis)[1-k]
	var mouth, foot []piece.Figure
	var deep piece.Figure
	for _, x := range c.profile.cut {
		if x[k].Nm == top.Nm {
			mouth = append(mouth, x[1-k])
			continue
		}
		if len(foot) > 0 && x[k].Nm != deep.Nm {
			return piece.Slot{}, false
		}
		foot, deep = append(foot, x[1-k]), x[k]
	}
	if len(mouth) != 2 || len(foot) == 0 || len(foot) > 2 {
		return piece.Slot{}, false
	}
	label := string(p.Address) + "." + string(c.kind)
	run, _ := p.Frame.LocalOf(c.profile.axis)
	s := piece.Slot{Open: p.Frame.SideToward(open), Run: run}
	s.From, s.To = w.local(label, p, c.profile.axis, c.cut)
	s.StartOpen, s.EndOpen = s.From.Nm == 0, s.To.Nm == w.along(p, c.profile.axis).Nm
	s.Near, s.Far = w.twoPlaces(label, p, other, mouth)
	near, far := w.twoPlaces(label, p, other, foot)
	s.LeanNear, s.LeanFar = w.lean(label, near, s.Near), w.lean(label, s.Far, far)
	if sign > 0 {
		s.Depth = w.ledger.Less(label+" depth", top, deep)
	} else {
		s.Depth = w.ledger.Less(label+" depth", deep, top)
	}
	return s, true
}

// lean is how far one place lies beyond another; nought without an entry where
// they are one.
func (w *work) lean(label string, a, b piece.Figure) piece.Figure {
	if a.Nm == b.Nm {
		return piece.Figure{}
	}
	return w.ledger.Less(label+" lean", a, b)
}

// twoPlaces returns one or two places in local terms, the lesser first.
func (w *work) twoPlaces(label string, p *piece.Part, a piece.Axis, at []piece.Figure) (near, far piece.Figure) {
	near, far = w.place(label, p, a, at[0]), w.place(label, p, a, at[len(at)-1])
	if near.Nm > far.Nm {
		near, far = far, near
	}
	return near, far
}

// pocket writes a claim as a pocket from a side that its section reaches right to.
func (w *work) pocket(p *piece.Part, c *claim) (piece.Pocket, bool) {
	a := c.profile.axis
	body := box(p.Extent)
	var open piece.Direction
	for _, d := range [2]piece.Direction{piece.Toward(a, 1), piece.Toward(a, -1)} {
		_, sign := d.Axis()
		if reaches := c.cut.end(a, sign > 0).Nm == body.end(a, sign > 0).Nm; reaches && (open == "" || d == c.open) {
			open = d
		}
	}
	if open == "" {
		return piece.Pocket{}, false
	}
	label := string(p.Address) + "." + string(c.kind)
	out := piece.Pocket{Open: p.Frame.SideToward(open), Through: c.cut.size(a) == body.size(a)}
	out.Depth = w.ledger.Less(label+" depth", c.cut[a].High, c.cut[a].Low)
	axes := section(a)
	first, signA := p.Frame.LocalOf(axes[0])
	second, signB := p.Frame.LocalOf(axes[1])
	for _, x := range c.profile.cut {
		q := piece.OutlinePoint{Along: w.place(label, p, axes[0], x[0]), Across: w.place(label, p, axes[1], x[1])}
		if second < first {
			q.Along, q.Across = q.Across, q.Along
		}
		out.Outline = append(out.Outline, q)
	}
	// Anticlockwise in the piece's axes turns round with each of the three
	// exchanges: the order of the axes and the sense of either.
	if (second < first) != (signA*signB < 0) {
		for i, n := 0, len(out.Outline); i < n/2; i++ {
			out.Outline[i], out.Outline[n-1-i] = out.Outline[n-1-i], out.Outline[i]
		}
	}
	return out, true
}
