package hidden

import (
	"cmp"
	"slices"

	"scantling/internal/geom/polygon"
)

// cover is how far beyond its border a triangle hides: edges that run along
// the seam of two triangles must not show through.
const cover = 1e-4

// judge splits an edge into visible and hidden stretches, as parameters from 0
// at its first end to 1.
func (s *scene) judge(e *edge, emit func(a, b float64, hid bool)) {
	p, q := flat(e.p), flat(e.q)
	d := q.Sub(p)
	n := d.Norm()
	if n < 1e-6 {
		return
	}
	if e.back {
		emit(0, 1, true)
		return
	}
	s.covering = s.covering[:0]
	least := min(e.p.Z, e.q.Z)
	s.near(p, q, func(t *triangle) {
		if t.top < least+hides || (t.solid == e.solid && (t.face == e.left || t.face == e.right)) {
			return
		}
		if a, b, ok := t.shades(e, p, d); ok {
			s.covering = append(s.covering, [2]float64{a, b})
		}
	})
	slices.SortFunc(s.covering, func(x, y [2]float64) int {
		if c := cmp.Compare(x[0], y[0]); c != 0 {
			return c
		}
		return cmp.Compare(x[1], y[1])
	})
	// Stretches shorter than this are dust.
	dust := 2e-3 / n
	at := 0.0
	for i := 0; i < len(s.covering); {
		a, b := s.covering[i][0], s.covering[i][1]
		for i++; i < len(s.covering) && s.covering[i][0] <= b+dust; i++ {
			b = max(b, s.covering[i][1])
		}
		if a < at+dust {
			a = at
		}
		if b > 1-dust {
			b = 1
		}
		if a > at {
			emit(at, a, false)
		}
		if b > a {
			emit(a, b, true)
			at = b
		}
	}
	if at < 1 {
		emit(at, 1, false)
	}
}

// shades returns the stretch of the edge that the triangle hides.
func (t *triangle) shades(e *edge, p, d polygon.P2) (a, b float64, ok bool) {
	a, b = 0, 1
	clip := func(f, g float64) { // keep where f + g·t >= 0
		switch {
		case g > 0:
			a = max(a, -f/g)
		case g < 0:
			b = min(b, -f/g)
		case f < 0:
			b = -1
		}
	}
	for k := range 3 {
		o := t.p[k]
		side := t.p[(k+1)%3].Sub(o)
		clip(side.Cross(p.Sub(o))+float64(cover*side.Norm()), side.Cross(d))
		if a >= b {
			return 0, 0, false
		}
	}
	z := func(x, y float64) float64 { return float64(t.a*x) + float64(t.b*y) + t.c }
	h0 := z(p.X, p.Y) - e.p.Z
	h1 := z(p.X+d.X, p.Y+d.Y) - e.q.Z
	clip(h0-hides, h1-h0)
	return a, b, a < b
}
