package fronts

import (
	"slices"

	"scantling/internal/analysis/check/bodies"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// grows returns what a part grows towards one side until the damp end, none for sheet
// goods and along the grain; false at the side of the hinges, where it stays. A fixed
// part (no leaf) grows from its middle.
func (j *judge) grows(l *bodies.Leaf, p *piece.Part, a piece.Axis, high bool) ([]piece.Figure, bool, error) {
	half := func(size piece.Figure) piece.Figure { return j.Ledger.Half(string(p.Address)+".half", size) }
	switch {
	case l == nil:
		return j.growth(p, a, "half", half)
	case l.Move != nil && a == piece.Up:
		return j.stands(l, p, high)
	case l.Move != nil:
		return j.growth(p, a, "half", half)
	}
	line, at := hingeLine(l.Hinges)
	if a == line {
		return j.growth(p, a, "half", half)
	}
	low, top := edges(l, a)
	if (at[a] > (low+top)/2) == high {
		return nil, false, nil
	}
	var out []piece.Figure
	for _, f := range l.Faces {
		if f.Extent[a].Low.Nm != low && f.Extent[a].High.Nm != top || !overlap(f, p, 3-a-thick(p)) {
			continue // a panel between the stiles has room of its own
		}
		g, _, err := j.growth(f, a, "whole", func(size piece.Figure) piece.Figure { return size })
		if err != nil {
			return nil, true, err
		}
		out = append(out, g...)
	}
	return out, true, nil
}

// stands returns what a drawer's front grows up or down from where the drawer stands.
func (j *judge) stands(l *bodies.Leaf, p *piece.Part, high bool) ([]piece.Figure, bool, error) {
	level, found := p.Extent[piece.Up].Low, false
	for _, q := range l.Move.Parts {
		if !slices.Contains(l.Faces, q) && (!found || q.Extent[piece.Up].Low.Nm < level.Nm) {
			level, found = q.Extent[piece.Up].Low, true
		}
	}
	from, to := level, p.Extent[piece.Up].High
	if !high {
		from, to = p.Extent[piece.Up].Low, level
	}
	if to.Nm <= from.Nm {
		return nil, true, nil
	}
	word := "down"
	if high {
		word = "up"
	}
	return j.growth(p, piece.Up, word, func(piece.Figure) piece.Figure { return j.Ledger.Less(string(p.Address)+"."+word, to, from) })
}

// growth is what a part of a width grows; of what is the whole width, it makes the part
// that counts.
func (j *judge) growth(p *piece.Part, a piece.Axis, word string, of func(piece.Figure) piece.Figure) ([]piece.Figure, bool, error) {
	m, _ := j.index.Material(p)
	if local, _ := p.Frame.LocalOf(a); m.Sheet || local != piece.AlongWidth || p.Form == piece.Bought {
		return nil, true, nil
	}
	size := of(p.Width)
	g, _, err := j.out.Season(string(p.Address)+"."+word, m, size)
	if err == nil {
		j.ranges[g.Entry] = j.out.Grows(m, size, g)
	}
	return []piece.Figure{g}, true, err
}

// hingeLine returns the axis that a hinge turns about, along its greatest size, and where
// its middle is.
func hingeLine(h *piece.Hardware) (piece.Axis, [3]unit.Length) {
	var line piece.Axis
	var at [3]unit.Length
	b := h.Bodies[0].Extent
	for _, x := range h.Bodies {
		if x.Round { // the knuckle
			b = x.Extent
		}
	}
	for a := range b {
		at[a] = (b[a].Low.Nm + b[a].High.Nm) / 2
		if b[a].Size() > b[line].Size() {
			line = piece.Axis(a)
		}
	}
	return line, at
}

// edges returns how far a leaf reaches along an axis.
func edges(l *bodies.Leaf, a piece.Axis) (low, high unit.Length) {
	for i, p := range l.Faces {
		if e := p.Extent[a]; i == 0 {
			low, high = e.Low.Nm, e.High.Nm
		} else {
			low, high = min(low, e.Low.Nm), max(high, e.High.Nm)
		}
	}
	return low, high
}

func thick(p *piece.Part) piece.Axis {
	a, _ := p.Frame.Thickness.Axis()
	return a
}

func overlap(p, q *piece.Part, a piece.Axis) bool {
	return bodies.Body(p)[a].Overlaps(bodies.Body(q)[a])
}
