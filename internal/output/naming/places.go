package naming

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Places returns what is worth a figure of a cut, on each local axis of its part:
// the limits of slots, the middles of channels and holes, the ends of dips, where a
// plane begins and ends, the corners of outlines. What lies at the part's own limit
// is among them.
func Places(p *piece.Part, c piece.Cut) [3][]unit.Length {
	out := places{part: p}
	switch {
	case c.Slot != nil:
		s := c.Slot
		if c.Kind == piece.Channel {
			out.add(s.Across(), (s.Near.Nm+s.Far.Nm)/2)
		} else {
			out.add(s.Across(), s.Near.Nm, s.Far.Nm)
			out.inwards(s.Open, s.Depth.Nm)
		}
		if !s.StartOpen {
			out.add(s.Run, s.From.Nm)
		}
		if !s.EndOpen {
			out.add(s.Run, s.To.Nm)
		}
	case c.Bore != nil:
		for i, axis := range c.Bore.Open.Cross() {
			out.add(axis, c.Bore.At[i].Nm)
		}
	case c.Dip != nil:
		axis := piece.AlongLength
		if open, _ := c.Dip.Open.Axis(); open == piece.AlongLength {
			axis = piece.AlongWidth
		}
		out.add(axis, c.Dip.Centre.Nm-c.Dip.Chord.Nm/2, c.Dip.Centre.Nm+c.Dip.Chord.Nm/2)
		out.inwards(c.Dip.Open, c.Dip.Depth.Nm)
	case c.Slice != nil:
		s := c.Slice
		off, _ := s.Off.Axis()
		for k, axis := range s.Off.Cross() {
			if s.At[k+1].Nm != s.At[0].Nm {
				out.add(axis, s.From[k].Nm, s.To[k].Nm)
				out.add(off, s.At[k+1].Nm)
			}
		}
	case c.Pocket != nil:
		low, high := Limits(p, c)
		for k, axis := range c.Pocket.Open.Cross() {
			for _, v := range c.Pocket.Outline {
				out.add(axis, [2]unit.Length{v.Along.Nm, v.Across.Nm}[k])
			}
			out.add(axis, low[axis], high[axis]) // the furthest that its arcs reach
		}
		if !c.Pocket.Through {
			out.inwards(c.Pocket.Open, c.Pocket.Depth.Nm)
		}
	}
	return out.at
}

type places struct {
	part *piece.Part
	at   [3][]unit.Length
}

func (p *places) add(axis piece.Local, at ...unit.Length) { p.at[axis] = append(p.at[axis], at...) }

// inwards adds the place that lies that deep below a side.
func (p *places) inwards(open piece.Side, depth unit.Length) {
	axis, high := open.Axis()
	if high {
		depth = p.part.Sizes()[axis].Nm - depth
	}
	p.add(axis, depth)
}
