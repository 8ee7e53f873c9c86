package polygon

import (
	"math"
	"slices"
)

// Crossing is where a line meets the outline: at parameter T of the line, on a
// segment numbered through the profile.
type Crossing struct {
	T       float64
	Segment int
}

// Crossings returns where the line o + t·d meets the true outline (arcs as
// arcs), in order of t. Segments that lie along the line contribute nothing of
// their own; touching and passing through a vertex are settled as if the line
// lay a hair to its left, so the count is always even.
func (p Profile) Crossings(o, d P2) []Crossing {
	var out []Crossing
	n := d.Left()
	side := func(q P2) float64 { return n.Dot(q.Sub(o)) }
	dd := d.Dot(d)
	along := func(q P2) float64 { return d.Dot(q.Sub(o)) / dd }
	base := 0
	for _, l := range p.Loops() {
		for i := range l {
			v, w := l[i].P2, l[(i+1)%len(l)].P2
			sv, sw := side(v), side(w)
			arc, round := l.Arc(i)
			switch {
			case round && abs(sv) < hair*d.Norm() && abs(sw) < hair*d.Norm():
				// The chord lies along the line: the hair decides.
				if side(arc.mid) > 0 {
					out = append(out, Crossing{along(v), base + i}, Crossing{along(w), base + i})
				}
			case round:
				for _, t := range arc.crossings(o, d, sv > 0, sw > 0) {
					out = append(out, Crossing{t, base + i})
				}
			case (sv > 0) != (sw > 0):
				f := sv / (sv - sw)
				out = append(out, Crossing{along(v) + float64(f*(along(w)-along(v))), base + i})
			}
		}
		base += len(l)
	}
	slices.SortStableFunc(out, func(a, b Crossing) int {
		switch {
		case a.T < b.T:
			return -1
		case a.T > b.T:
			return 1
		}
		return a.Segment - b.Segment
	})
	return out
}

// hair is a nanometre: less than that apart is the same place.
const hair = 1e-6

func abs(x float64) float64 { return math.Abs(x) }

// crossings returns where the line meets the arc. The sides of its ends decide
// whether the number is odd or even, so that neighbours agree at a vertex.
func (a Arc) crossings(o, d P2, from, to bool) []float64 {
	dd := d.Dot(d)
	m := o.Sub(a.Centre)
	b := m.Dot(d) / dd
	c := (m.Dot(m) - float64(a.Radius*a.Radius)) / dd
	disc := float64(b*b) - c
	var hits []float64
	if disc > 0 {
		r := math.Sqrt(disc)
		for _, t := range [2]float64{-b - r, -b + r} {
			if a.within(o.Add(d.Mul(t))) {
				hits = append(hits, t)
			}
		}
	}
	odd := from != to
	switch {
	case odd && len(hits) == 2:
		hits = a.farther(o, d, hits)
	case odd && len(hits) == 0:
		hits = []float64{a.nearEnd(o, d)}
	case !odd && len(hits) == 1:
		hits = nil
	}
	return hits
}

// within says whether a point of the circle lies on the arc.
func (a Arc) within(q P2) bool {
	chord := a.to.Sub(a.from)
	s := chord.Cross(q.Sub(a.from))
	return s == 0 || (s < 0) == (a.Sweep > 0)
}

// farther drops the hit that lies nearest to an end of the arc.
func (a Arc) farther(o, d P2, hits []float64) []float64 {
	gap := func(t float64) float64 {
		q := o.Add(d.Mul(t))
		return min(q.Sub(a.from).Norm(), q.Sub(a.to).Norm())
	}
	if gap(hits[0]) < gap(hits[1]) {
		return hits[1:]
	}
	return hits[:1]
}

// nearEnd returns the parameter of the end of the arc nearest to the line.
func (a Arc) nearEnd(o, d P2) float64 {
	n := d.Left()
	q := a.from
	if math.Abs(n.Dot(a.to.Sub(o))) < math.Abs(n.Dot(q.Sub(o))) {
		q = a.to
	}
	return d.Dot(q.Sub(o)) / d.Dot(d)
}

// Contains says whether the point lies inside the true outline.
func (p Profile) Contains(q P2) bool {
	n := 0
	for _, c := range p.Crossings(q, P2{X: 1}) {
		if c.T > 0 {
			n++
		}
	}
	return n%2 == 1
}

// Bounds returns the least and greatest coordinates, arcs included.
func (p Profile) Bounds() (low, high P2) {
	low, high = P2{math.Inf(1), math.Inf(1)}, P2{math.Inf(-1), math.Inf(-1)}
	grow := func(q P2) {
		low = P2{min(low.X, q.X), min(low.Y, q.Y)}
		high = P2{max(high.X, q.X), max(high.Y, q.Y)}
	}
	for _, l := range p.Loops() {
		for i, v := range l {
			grow(v.P2)
			a, ok := l.Arc(i)
			if !ok {
				continue
			}
			for _, d := range [4]P2{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
				if q := a.Centre.Add(d.Mul(a.Radius)); a.within(q) {
					grow(q)
				}
			}
		}
	}
	return low, high
}

// Holds says whether a point known to lie on the arc's circle lies on the arc,
// its ends included to within a nanometre.
func (a Arc) Holds(q P2) bool {
	return a.within(q) || q.Sub(a.from).Norm() < hair || q.Sub(a.to).Norm() < hair
}
