package solid

import (
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Sides of a plane, as bits.
const (
	below = 1
	above = 2
)

// sectioner cuts polyhedra by a plane, just below it and just above it: a
// vertex on the plane counts as above for the section below and as below for
// the section above. Nothing is shifted, so sections close by topology.
type sectioner struct {
	class []int8
	dist  []float64
	hits  []hit
	// starts and ends are hits taken apart.
	starts, ends []hit
}

type hit struct {
	at   vec.V3
	key  float64
	a, b int32
	up   bool // the outline passes the plane upwards here
}

// classify sorts the vertices of p by side of pl. It reports whether some lie
// strictly below, on, and strictly above.
func (s *sectioner) classify(p *poly, pl *plane, tol float64) (low, flat, high bool) {
	n := len(p.verts)
	s.class = slices.Grow(s.class[:0], n)[:n]
	s.dist = slices.Grow(s.dist[:0], n)[:n]
	for i, v := range p.verts {
		d := pl.n.Dot(v) - pl.d
		s.dist[i] = d
		switch {
		case d > tol:
			s.class[i], high = 1, true
		case d < -tol:
			s.class[i], low = -1, true
		default:
			s.class[i], flat = 0, true
		}
	}
	return low, flat, high
}

// cut calls emit with the segments of the section of p by pl on the given
// side, two ends and the facet each. classify must have been called.
func (s *sectioner) cut(p *poly, pl *plane, id int32, side int, emit func(a, b vec.V3, facet int32)) {
	limit := int8(1) // above: class > 0
	if side == below {
		limit = 0 // class >= 0
	}
	for i := range p.facets {
		f := &p.facets[i]
		if f.plane == id {
			continue
		}
		s.crossed(p, pl, f, limit)
		for k := 0; k+1 < len(s.hits); k += 2 {
			emit(s.hits[k].at, s.hits[k+1].at, int32(i))
		}
	}
}

// crossed fills hits with the points where the outline of a facet passes the
// plane, in order along it, so that they pair up.
func (s *sectioner) crossed(p *poly, pl *plane, f *facet, limit int8) {
	s.hits = s.hits[:0]
	for _, loop := range f.loops {
		prev := loop[len(loop)-1]
		up := s.class[prev] >= limit
		for _, v := range loop {
			now := s.class[v] >= limit
			if now != up {
				h := s.meet(p, prev, v)
				h.up = now
				s.hits = append(s.hits, h)
				up = now
			}
			prev = v
		}
	}
	if len(s.hits) > 2 {
		dir := pl.n.Cross(f.n)
		for k := range s.hits {
			s.hits[k].key = dir.Dot(s.hits[k].at)
		}
		sortHits(s.hits)
	}
}

// meet returns the point where the edge between two vertices passes the plane,
// the same to the last bit from both facets of the edge.
func (s *sectioner) meet(p *poly, a, b int32) hit {
	if a > b {
		a, b = b, a
	}
	switch {
	case s.class[a] == 0:
		return hit{at: p.verts[a], a: a, b: b}
	case s.class[b] == 0:
		return hit{at: p.verts[b], a: a, b: b}
	}
	va, vb := p.verts[a], p.verts[b]
	t := s.dist[a] / (s.dist[a] - s.dist[b])
	return hit{at: vec.V3{
		X: va.X + float64(t*(vb.X-va.X)),
		Y: va.Y + float64(t*(vb.Y-va.Y)),
		Z: va.Z + float64(t*(vb.Z-va.Z)),
	}, a: a, b: b}
}

func sortHits(h []hit) {
	for i := 1; i < len(h); i++ {
		for j := i; j > 0 && h[j].key < h[j-1].key; j-- {
			h[j], h[j-1] = h[j-1], h[j]
		}
	}
}

// clip maps the segment onto the box by moving each outside point to the
// nearest point of the box, and calls emit with the straight pieces that this
// makes and whether they are the segment's own or lie on the border only. A
// closed outline stays closed and what it encloses inside the box
// stays enclosed; nothing is dropped.
func clip(a, b, lo, hi polygon.P2, emit func(a, b polygon.P2, own bool)) {
	inside := func(p polygon.P2) bool {
		return p.X >= lo.X && p.X <= hi.X && p.Y >= lo.Y && p.Y <= hi.Y
	}
	if inside(a) && inside(b) {
		emit(a, b, true)
		return
	}
	var cuts [6]float64
	n := 1
	add := func(from, to, at float64) {
		if (from < at) != (to < at) {
			if t := (at - from) / (to - from); t > 0 && t < 1 {
				cuts[n] = t
				n++
			}
		}
	}
	add(a.X, b.X, lo.X)
	add(a.X, b.X, hi.X)
	add(a.Y, b.Y, lo.Y)
	add(a.Y, b.Y, hi.Y)
	slices.Sort(cuts[1:n])
	clamp := func(p polygon.P2) polygon.P2 {
		return polygon.P2{X: min(max(p.X, lo.X), hi.X), Y: min(max(p.Y, lo.Y), hi.Y)}
	}
	raw, prev := a, clamp(a)
	for k := 1; k <= n; k++ {
		q := b
		if k < n {
			q = polygon.P2{X: a.X + float64(cuts[k]*(b.X-a.X)), Y: a.Y + float64(cuts[k]*(b.Y-a.Y))}
		}
		own := inside(raw.Add(q).Mul(0.5))
		raw = q
		q = clamp(q)
		if q != prev {
			emit(prev, q, own)
		}
		prev = q
	}
}
