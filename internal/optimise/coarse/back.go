package coarse

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
)

// True returns a piece as it lies with its true size.
type True func(ceiling.Piece) ceiling.Piece

// Strips gives the pieces of strips their true sizes, the widest of each column
// first. It returns nil if the strips do not fit a sheet of x by y.
func (size True) Strips(strips []ceiling.Strip, x, y int64) []ceiling.Strip {
	var out []ceiling.Strip
	for _, s := range strips {
		var row ceiling.Strip
		wide, high := int64(0), int64(0)
		for _, c := range s {
			var column []ceiling.Piece
			top := int64(0)
			for _, l := range c {
				l = size(l)
				column = append(column, l)
				top += l.Y
			}
			slices.SortStableFunc(column, func(a, b ceiling.Piece) int { return cmp.Compare(b.X, a.X) })
			row = append(row, column)
			wide, high = wide+column[0].X, max(high, top)
		}
		if y -= high; wide > x || y < 0 {
			return nil
		}
		out = append(out, row)
	}
	return out
}

// Parcel gives the pieces of a parcel their true sizes and lays it out anew on a
// sheet of x by y. It returns nil if it does not fit.
func (size True) Parcel(p *ceiling.Parcel, x, y int64) *ceiling.Parcel {
	out := size.need(p)
	if out == nil || out.X > x || out.Y > y {
		return nil
	}
	spread(out, x, y)
	return out
}

// need returns a copy of p with true sizes, as small as its pieces allow.
func (size True) need(p *ceiling.Parcel) *ceiling.Parcel {
	if p == nil {
		return nil
	}
	if p.Cut == problem.Any {
		if p.Piece == nil {
			return nil
		}
		l := size(*p.Piece)
		return &ceiling.Parcel{X: l.X, Y: l.Y, Piece: &l}
	}
	a, b := size.need(p.Parts[0]), size.need(p.Parts[1])
	if a == nil {
		return b
	}
	if b == nil {
		return a
	}
	out := &ceiling.Parcel{X: a.X + b.X, Y: max(a.Y, b.Y), Cut: p.Cut, At: a.X, Parts: [2]*ceiling.Parcel{a, b}}
	if p.Cut == problem.Rip {
		out.X, out.Y, out.At = max(a.X, b.X), a.Y+b.Y, a.Y
	}
	return out
}

// spread lets a parcel take all of x by y: what is over goes to the second part.
func spread(p *ceiling.Parcel, x, y int64) {
	p.X, p.Y = x, y
	switch p.Cut {
	case problem.Crosscut:
		spread(p.Parts[0], p.At, y)
		spread(p.Parts[1], x-p.At, y)
	case problem.Rip:
		spread(p.Parts[0], x, p.At)
		spread(p.Parts[1], x, y-p.At)
	}
}
