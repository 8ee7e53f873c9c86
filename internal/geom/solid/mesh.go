package solid

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Mesh is a closed surface of triangles in millimetres, each anticlockwise
// seen from outside.
type Mesh struct {
	Verts []vec.V3
	Tris  []Triangle
	// Creases are the edges that a drawing shows: between faces that do not
	// run smoothly into one another.
	Creases []Crease
}

// Triangle is one facet of a mesh.
type Triangle struct {
	V    [3]int32
	Tag  Tag
	Face int32 // index into [Solid.Faces]
}

// Crease is an edge between two faces, numbered as in [Solid.Faces].
type Crease struct {
	A, B        int32
	Left, Right int32
}

// Mesh returns the solid's triangles; do not change it. An unverified solid has
// an empty mesh.
func (s *Solid) Mesh() *Mesh {
	s.creaseOnce.Do(func() {
		for _, e := range s.Edges() {
			if e.Crease {
				s.mesh.Creases = append(s.mesh.Creases, Crease{e.A, e.B, e.Left, e.Right})
			}
		}
	})
	return &s.mesh
}

// fill cuts a polyhedron into triangles, face by face.
func (m *Mesh) fill(p *poly, t *triangulator, f *flattener) bool {
	ok := true
	n := 0
	for i := range p.facets {
		for _, l := range p.facets[i].loops {
			n += len(l)
		}
	}
	m.Tris = make([]Triangle, 0, n)
	for i := range p.facets {
		fc := &p.facets[i]
		if len(fc.loops) == 1 && m.simple(p, fc, int32(i)) {
			continue
		}
		f.load(p, fc)
		if !t.run(f.at, f.edges, f.inside) {
			ok = false
			continue
		}
		for _, tri := range t.out {
			v := [3]int32{f.vert[tri[0]], f.vert[tri[1]], f.vert[tri[2]]}
			if f.flipped {
				v[1], v[2] = v[2], v[1]
			}
			m.Tris = append(m.Tris, Triangle{v, fc.tag, int32(i)})
		}
	}
	return ok
}

// volume returns what the triangles enclose, as faceted.
func (m *Mesh) volume() float64 {
	if len(m.Verts) == 0 {
		return 0
	}
	lo, hi := boundsOf(m.Verts)
	mid := lo.Add(hi).Mul(0.5)
	var v float64
	for i := range m.Tris {
		t := &m.Tris[i].V
		v += m.Verts[t[0]].Sub(mid).Dot(m.Verts[t[1]].Sub(mid).Cross(m.Verts[t[2]].Sub(mid)))
	}
	return v / 6
}

// simple adds a face that is a triangle or a strictly convex quadrilateral.
func (m *Mesh) simple(p *poly, fc *facet, face int32) bool {
	l := fc.loops[0]
	if len(l) == 3 {
		m.Tris = append(m.Tris, Triangle{[3]int32{l[0], l[1], l[2]}, fc.tag, face})
		return true
	}
	if len(l) != 4 {
		return false
	}
	for k := range 4 {
		a, b, c := p.verts[l[k]], p.verts[l[(k+1)%4]], p.verts[l[(k+2)%4]]
		d, e := b.Sub(a), c.Sub(b)
		if n := d.Cross(e).Dot(fc.n); n <= 0 || n*n < 1e-12*d.Dot(d)*e.Dot(e) {
			return false
		}
	}
	m.Tris = append(m.Tris,
		Triangle{[3]int32{l[0], l[1], l[2]}, fc.tag, face},
		Triangle{[3]int32{l[0], l[2], l[3]}, fc.tag, face})
	return true
}

// flattener lays a face out in the plane for the triangulator.
type flattener struct {
	at      []polygon.P2
	vert    []int32
	edges   [][2]int32
	inside  []bool
	flipped bool
	number  map[int32]int32
}

func (f *flattener) load(p *poly, fc *facet) {
	pl := newPlane(fc.n, fc.d)
	f.flipped = fc.n.At(pl.axis) < 0
	f.at, f.vert, f.edges, f.inside = f.at[:0], f.vert[:0], f.edges[:0], f.inside[:0]
	if f.number == nil {
		f.number = map[int32]int32{}
	}
	clear(f.number)
	point := func(v int32) int32 {
		k, ok := f.number[v]
		if !ok {
			k = int32(len(f.at))
			f.number[v] = k
			f.at = append(f.at, pl.flat(p.verts[v]))
			f.vert = append(f.vert, v)
		}
		return k
	}
	for _, loop := range fc.loops {
		prev := point(loop[len(loop)-1])
		for _, v := range loop {
			now := point(v)
			a, b, above := prev, now, !f.flipped
			if !before(f.at[a], f.at[b]) {
				a, b, above = b, a, !above
			}
			f.edges = append(f.edges, [2]int32{a, b})
			f.inside = append(f.inside, above)
			prev = now
		}
	}
}

// openEdge is the runtime check that a mesh is closed: every directed edge of a
// triangle has its opposite. It returns the number of edges that have not, and
// a vertex of one of them.
func openEdge(tris []Triangle, t *keyTable) (open int, where int32) {
	t.reset(2 * len(tris))
	for i := range tris {
		v := &tris[i].V
		for k := range 3 {
			key := directedKey(v[k], v[(k+1)%3])
			by := 1 - 2*int32(key&1)
			switch sum := t.add(key>>1, by); {
			case sum == 0:
				open--
			case sum == by:
				open++
			}
		}
	}
	if open == 0 {
		return 0, 0
	}
	for i := range tris {
		for k, v := range tris[i].V {
			if s, _ := t.find(directedKey(v, tris[i].V[(k+1)%3]) >> 1); s.value != 0 {
				return open, v
			}
		}
	}
	return open, 0
}

// Face is a flat face of a solid, or one facet of a round one.
type Face struct {
	Normal vec.V3  // unit, outwards
	Offset float64 // Normal·x of its points
	Tag    Tag
	// Surface numbers the true surface: facets of one round surface share it,
	// and so do faces that lie flush in one plane.
	Surface int32
	Round   bool
	// Loops are the outlines, outer ones anticlockwise seen from outside.
	Loops [][]vec.V3
}

// Faces returns the faces of the solid.
func (s *Solid) Faces() []Face {
	out := make([]Face, len(s.body.facets))
	for i := range s.body.facets {
		f := &s.body.facets[i]
		out[i] = Face{Normal: f.n, Offset: f.d, Tag: f.tag, Surface: s.surfaceID(f), Round: f.surf >= 0}
		for _, loop := range f.loops {
			ring := make([]vec.V3, len(loop))
			for k, v := range loop {
				ring[k] = s.body.verts[v]
			}
			out[i].Loops = append(out[i].Loops, ring)
		}
	}
	return out
}

// surfaceID numbers true surfaces: round ones first, then planes.
func (s *Solid) surfaceID(f *facet) int32 {
	if f.surf >= 0 {
		return f.surf
	}
	return int32(len(s.body.surfs)) + f.plane
}
