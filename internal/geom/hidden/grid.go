package hidden

import (
	"math"
	"slices"

	"scantling/internal/geom/polygon"
)

// grid files the triangles by the cells of a grid that they touch, about as
// many cells as triangles.
func (s *scene) grid() {
	if len(s.tris) == 0 {
		return
	}
	lo := s.tris[0].p[0]
	hi := lo
	for i := range s.tris {
		for _, p := range s.tris[i].p {
			lo = polygon.P2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = polygon.P2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	w, h := hi.X-lo.X+1e-3, hi.Y-lo.Y+1e-3
	s.lo = lo
	s.cell = math.Sqrt(w * h / float64(len(s.tris)))
	s.cell = max(s.cell, w/1024, h/1024)
	// Large faces on top of one another fill many cells each: then fewer and
	// larger cells, so that memory stays in bounds.
	for ; !s.count(w, h); s.cell *= 2 {
	}
	for c := range s.nx * s.ny {
		s.first[c+1] += s.first[c]
	}
	s.list = make([]int32, s.first[s.nx*s.ny])
	fill := slices.Clone(s.first)
	for i := range s.tris {
		s.cells(&s.tris[i], func(c int) {
			s.list[fill[c]] = int32(i)
			fill[c]++
		})
	}
	s.stamp = make([]int32, len(s.tris))
}

// mostEntries bounds the entries of the grid.
const mostEntries = 8_000_000

// count counts the triangles of each cell. It reports false where the grid
// would hold too many entries.
func (s *scene) count(w, h float64) bool {
	s.nx, s.ny = int(w/s.cell)+1, int(h/s.cell)+1
	s.first = make([]int32, s.nx*s.ny+1)
	n := 0
	for i := range s.tris {
		s.cells(&s.tris[i], func(c int) { s.first[c+1]++; n++ })
		if n > mostEntries && s.nx*s.ny > 1 {
			return false
		}
	}
	return true
}

func (s *scene) column(x float64) int { return min(max(int((x-s.lo.X)/s.cell), 0), s.nx-1) }
func (s *scene) row(y float64) int    { return min(max(int((y-s.lo.Y)/s.cell), 0), s.ny-1) }

// cells calls visit with the cells that a triangle may touch: column by
// column, the rows between its least and greatest y there.
func (s *scene) cells(t *triangle, visit func(c int)) {
	x0 := min(t.p[0].X, t.p[1].X, t.p[2].X)
	x1 := max(t.p[0].X, t.p[1].X, t.p[2].X)
	for i := s.column(x0 - pad); i <= s.column(x1+pad); i++ {
		a := s.lo.X + float64(float64(i)*s.cell) - pad
		b := a + s.cell + 2*pad
		y0, y1 := math.Inf(1), math.Inf(-1)
		for k := range 3 {
			if l, h, ok := span(t.p[k], t.p[(k+1)%3], a, b); ok {
				y0, y1 = min(y0, l), max(y1, h)
			}
		}
		if y0 > y1 {
			continue
		}
		for j := s.row(y0 - pad); j <= s.row(y1+pad); j++ {
			visit(i*s.ny + j)
		}
	}
}

// pad widens cells so that rounding cannot lose a triangle.
const pad = 1e-3

// span returns the least and greatest y of the segment for x within [a, b].
func span(p, q polygon.P2, a, b float64) (lo, hi float64, ok bool) {
	if p.X > q.X {
		p, q = q, p
	}
	if q.X < a || p.X > b {
		return 0, 0, false
	}
	at := func(x float64) float64 {
		if q.X-p.X < 1e-12 {
			return p.Y
		}
		return p.Y + float64((x-p.X)/(q.X-p.X)*(q.Y-p.Y))
	}
	if q.X-p.X < 1e-12 {
		return min(p.Y, q.Y), max(p.Y, q.Y), true
	}
	u, v := at(max(a, p.X)), at(min(b, q.X))
	return min(u, v), max(u, v), true
}

// near calls visit once with every triangle in the cells along a segment.
func (s *scene) near(p, q polygon.P2, visit func(t *triangle)) {
	if len(s.tris) == 0 {
		return
	}
	s.now++
	x0, x1 := min(p.X, q.X), max(p.X, q.X)
	for i := s.column(x0 - pad); i <= s.column(x1+pad); i++ {
		a := s.lo.X + float64(float64(i)*s.cell) - pad
		b := a + s.cell + 2*pad
		if i == 0 {
			a = math.Inf(-1)
		}
		if i == s.nx-1 {
			b = math.Inf(1)
		}
		y0, y1, ok := span(p, q, a, b)
		if !ok {
			continue
		}
		for j := s.row(y0 - pad); j <= s.row(y1+pad); j++ {
			c := i*s.ny + j
			for _, k := range s.list[s.first[c]:s.first[c+1]] {
				if s.stamp[k] != s.now {
					s.stamp[k] = s.now
					visit(&s.tris[k])
				}
			}
		}
	}
}
