package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// side is one use of an undirected edge by a face.
type side struct {
	key  uint64 // directedKey
	face int32
}

// edgeSides lists the uses of every edge, those of one edge side by side.
func (p *poly) edgeSides() []side {
	var all []side
	for i := range p.facets {
		for _, loop := range p.facets[i].loops {
			prev := loop[len(loop)-1]
			for _, v := range loop {
				all = append(all, side{directedKey(prev, v), int32(i)})
				prev = v
			}
		}
	}
	slices.SortStableFunc(all, func(a, b side) int { return cmp.Compare(a.key, b.key) })
	return all
}

// Edge is an edge of a polyhedron between the face on its left, seen from
// outside when going from A to B, and the one on its right.
type Edge struct {
	A, B        int32
	Left, Right int32
	Crease      bool
}

// edges pairs the sides of every edge up.
func (s *Solid) edges() []Edge {
	all := s.body.edgeSides()
	var out []Edge
	for i := 0; i < len(all); {
		j := i
		for j < len(all) && all[j].key>>1 == all[i].key>>1 {
			j++
		}
		// Where more than two faces meet along an edge they are paired in
		// order; any pairing draws the same line.
		half := (j - i) / 2
		for k := range half {
			l, r := all[i+k], all[i+half+k]
			a, b := int32(l.key>>33), int32(l.key>>1&0xffffffff)
			e := Edge{A: a, B: b, Left: l.face, Right: r.face}
			e.Crease = half > 1 || s.sharp(e)
			out = append(out, e)
		}
		i = j
	}
	return out
}

// sharp says whether the true surfaces beside an edge meet at an angle: more
// than 2°, so that a tangent run-out shows no line.
func (s *Solid) sharp(e Edge) bool {
	f, g := &s.body.facets[e.Left], &s.body.facets[e.Right]
	if s.surfaceID(f) == s.surfaceID(g) {
		return false
	}
	mid := s.body.verts[e.A].Add(s.body.verts[e.B]).Mul(0.5)
	n, m := s.trueNormal(f, mid), s.trueNormal(g, mid)
	const cos2 = 0.99939 // cos 2°
	return n.Dot(m) < cos2
}

// TrueNormal returns the outward normal of the true surface of a face at a
// point of it, for smooth shading.
func (s *Solid) TrueNormal(face int32, p vec.V3) vec.V3 { return s.trueNormal(&s.body.facets[face], p) }

// trueNormal returns the outward normal of the true surface of f at p.
func (s *Solid) trueNormal(f *facet, p vec.V3) vec.V3 {
	if f.surf < 0 {
		return f.n
	}
	n := s.body.surfs[f.surf].normal(p)
	if n.Dot(f.n) < 0 {
		return n.Mul(-1)
	}
	return n
}
