package carve

import (
	"scantling/internal/carve/direction"
	"scantling/internal/piece"
)

// lined works out the way that a row of slots lies: side by side, across their run,
// unless "row" says that they lie end to end.
func (r *row) lined() bool {
	r.axis = r.lie.across
	if !r.Has("row") {
		return true
	}
	word := r.Words("row")
	d, ok := direction.Way(word)
	axis, _ := d.Axis()
	if !ok || axis == r.lie.open {
		if word != "" {
			r.BadWord("row", word, splitWords("right, back, up"))
		}
		return false
	}
	r.axis, r.inLine = axis, axis == r.lie.run
	return true
}

// end is one cut of a row that lies end to end.
func (r *row) end(c *piece.Cut, m mouth) bool {
	near, far, ok := r.between(r.lie.across, r.wide)
	if !ok {
		return false
	}
	s := &piece.Slot{Open: r.lie.side, Depth: m.depth, From: m.near, To: m.far}
	s.Run, _ = r.Part.Frame.LocalOf(r.lie.run)
	s.Near, s.Far = r.stretch(r.lie.across, near, far)
	s.StartOpen, s.EndOpen = s.From.Nm <= 0, s.To.Nm >= r.whole.Nm
	if !r.walls(s) {
		return false
	}
	if s.EndRadius, ok = r.ended(s); !ok || !r.fits(s, r.lie.open, r.lie.across) {
		return false
	}
	c.Slot = s
	return true
}
