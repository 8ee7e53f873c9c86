package rows

import "scantling/internal/unit"

// flat is a rectangle of the two axes across a line.
type flat struct{ lo, hi [2]unit.Length }

func (f flat) area() float64 {
	return float64(f.hi[0]-f.lo[0]) * float64(f.hi[1]-f.lo[1])
}

// band returns a rectangle round the line within which every line has the same
// terms: inside a region, and as large as can be had by keeping off one box after
// another, whichever way leaves more.
func (m *model) band(l line, r region) flat {
	f := flatOf(l, r)
	for _, b := range m.blocks {
		if !f.meets(l, b.body) {
			continue
		}
		f.keep(l, b.body)
		for _, a := range b.airs {
			for _, t := range a.taken {
				f.keep(l, t)
			}
			for _, u := range a.unsure {
				f.keep(l, u)
			}
		}
	}
	return f
}

func flatOf(l line, r region) flat {
	var f flat
	for k, a := range l.across() {
		f.lo[k], f.hi[k] = r.lo[a], r.hi[a]
	}
	return f
}

// meets reports whether a region reaches into the rectangle, seen along the line.
func (f flat) meets(l line, r region) bool {
	for k, a := range l.across() {
		if r.lo[a] >= f.hi[k] || r.hi[a] <= f.lo[k] {
			return false
		}
	}
	return true
}

// keep narrows the rectangle to a region that the line passes through, or keeps
// it off one that it does not.
func (f *flat) keep(l line, r region) {
	if !f.meets(l, r) {
		return
	}
	across := l.across()
	if l.hits(r) {
		for k, a := range across {
			f.lo[k], f.hi[k] = max(f.lo[k], r.lo[a]), min(f.hi[k], r.hi[a])
		}
		return
	}
	best := flat{}
	for k, a := range across {
		cut := *f
		switch {
		case r.lo[a] >= l.at[a]:
			cut.hi[k] = r.lo[a]
		case r.hi[a] <= l.at[a]:
			cut.lo[k] = r.hi[a]
		default:
			continue
		}
		if best.area() == 0 || cut.area() > best.area() {
			best = cut
		}
	}
	*f = best
}
