package inplace

import "scantling/internal/piece"

// cut moves a cut as far as it belongs to the far end.
func (f farEnd) cut(c piece.Cut) piece.Cut {
	side := c.Open()
	open, high := side.Axis()
	if side != "" && open == f.Along && high {
		return c // measured from that end already
	}
	along := f.joints[c.Joint]
	switch {
	case c.Slot != nil && open != f.Along:
		s := *c.Slot
		f.slot(&s, along)
		c.Slot = &s
	case c.Bore != nil && open != f.Along:
		b := *c.Bore
		k := coordinate(side, f.Along)
		b.At[k] = f.end(b.At[k], along)
		c.Bore = &b
	case c.Ease != nil:
		e := *c.Ease
		f.ease(&e)
		c.Ease = &e
	case c.Slice != nil:
		s := *c.Slice
		f.slice(&s, along)
		c.Slice = &s
	case c.Pocket != nil && open != f.Along:
		k := *c.Pocket
		k.Outline = f.pocket(k.Outline, coordinate(side, f.Along) == 0, along)
		c.Pocket = &k
	}
	return c
}

// coordinate is which of the two axes of a side's plane an axis is.
func coordinate(open piece.Side, axis piece.Local) int {
	if open.Cross()[0] == axis {
		return 0
	}
	return 1
}

// slot moves a slot: right along if it is a joint's at that end or lies at it in the far
// half, else the limit that is the part's own end.
func (f farEnd) slot(s *piece.Slot, along bool) {
	low, high := &s.From, &s.To
	switch f.Along {
	case s.Run:
	case s.Across():
		low, high = &s.Near, &s.Far
	default:
		return
	}
	reaches := high.Nm == f.Drawn.Nm
	if through := low.Nm <= 0 && reaches; !through && (along || reaches && low.Nm*2 >= f.Drawn.Nm) {
		*low = f.moved(*low)
	}
	*high = f.end(*high, along)
}

func (f farEnd) ease(e *piece.Ease) {
	for _, s := range e.Sides {
		if axis, _ := s.Axis(); axis == f.Along {
			return // along another edge
		}
	}
	e.From, e.To = f.end(e.From, false), f.end(e.To, false)
}

// slice moves a plane: one that takes off the far end goes along, of another those
// stations that lie at it.
func (f farEnd) slice(s *piece.Slice, along bool) {
	off, high := s.Off.Axis()
	if off == f.Along {
		if high {
			for i := range s.At {
				s.At[i] = f.moved(s.At[i])
			}
		}
		return
	}
	k := coordinate(s.Off, f.Along)
	s.From[k], s.To[k] = f.end(s.From[k], along), f.end(s.To[k], along)
}

func (f farEnd) pocket(line []piece.OutlinePoint, first, along bool) []piece.OutlinePoint {
	if !along {
		return f.line(line, first)
	}
	out := make([]piece.OutlinePoint, len(line))
	for i, p := range line {
		if first {
			p.Along = f.moved(p.Along)
		} else {
			p.Across = f.moved(p.Across)
		}
		out[i] = p
	}
	return out
}
