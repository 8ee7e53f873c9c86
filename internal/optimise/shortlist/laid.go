package shortlist

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
)

// parcel lays a filling out in a rectangle.
func (p *pool) parcel(f int32, x, y int64) *ceiling.Parcel {
	s := &p.fillings[f]
	out := &ceiling.Parcel{X: x, Y: y, At: int64(s.at)}
	switch s.how {
	case across:
		out.Cut = problem.Crosscut
		out.Parts = [2]*ceiling.Parcel{p.parcel(s.a, out.At, y), p.parcel(s.b, x-out.At, y)}
	case along:
		out.Cut = problem.Rip
		out.Parts = [2]*ceiling.Parcel{p.parcel(s.a, x, out.At), p.parcel(s.b, x, y-out.At)}
	default:
		out.Piece = &p.pieces[s.a]
	}
	return out
}

// apart returns what f joins in the given way, in order.
func (p *pool) apart(f int32, h how) []int32 {
	s := &p.fillings[f]
	if s.how != h {
		return []int32{f}
	}
	return append(p.apart(s.a, h), p.apart(s.b, h)...)
}

// strips lays a filling out in strips.
func (p *pool) strips(f int32) []ceiling.Strip {
	var out []ceiling.Strip
	for _, row := range p.apart(f, above) {
		var strip ceiling.Strip
		for _, stack := range p.apart(row, beside) {
			var column []ceiling.Piece
			for _, one := range p.apart(stack, stacked) {
				column = append(column, p.pieces[p.fillings[one].a])
			}
			slices.SortStableFunc(column, func(a, b ceiling.Piece) int { return cmp.Compare(b.X, a.X) })
			strip = append(strip, column)
		}
		out = append(out, strip)
	}
	return out
}
