package hidden

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

// hides is how much nearer than an edge a face must lie to hide it.
const hides = 0.01

// facing is the least component towards the eye of a face that can hide.
const facing = 1e-7

// triangle is a front-facing triangle on paper: depth z = a·x + b·y + c.
type triangle struct {
	p       [3]polygon.P2
	a, b, c float64
	top     float64 // greatest depth
	solid   int32
	face    int32
}

// edge is a candidate for strokes.
type edge struct {
	p, q        vec.V3 // paper coordinates, z towards the eye
	solid       int32
	left, right int32
	a, b        int32 // vertices of the solid
	outline     bool
	back        bool // both faces look away: hidden for sure
}

// scene is everything in paper coordinates.
type scene struct {
	paper  vec.Frame
	placed []solid.Placed
	frames []vec.Frame // local to paper, by position in placed
	index  []int       // the caller's index
	tris   []triangle
	edges  []edge

	lo       polygon.P2
	cell     float64
	nx, ny   int
	first    []int32
	list     []int32
	stamp    []int32
	now      int32
	covering [][2]float64
}

// add projects one solid.
func (s *scene) add(index int, p solid.Placed) {
	f := p.Frame.Then(toPaper(s.paper))
	k := int32(len(s.placed))
	s.placed, s.frames, s.index = append(s.placed, p), append(s.frames, f), append(s.index, index)
	m := p.Solid.Mesh()
	verts := make([]vec.V3, len(m.Verts))
	for i, v := range m.Verts {
		verts[i] = f.ToWorld(v)
	}
	front := make(map[int32]bool)
	toward := func(face int32) bool {
		b, ok := front[face]
		if !ok {
			n, _ := p.Solid.FaceNormal(face)
			b = f.DirToWorld(n).Z > facing
			front[face] = b
		}
		return b
	}
	for _, t := range m.Tris {
		if !toward(t.Face) {
			continue
		}
		n, _ := p.Solid.FaceNormal(t.Face)
		s.addTriangle(verts[t.V[0]], verts[t.V[1]], verts[t.V[2]], f.DirToWorld(n), k, t.Face)
	}
	for _, e := range p.Solid.Edges() {
		l, r := toward(e.Left), toward(e.Right)
		outline := false
		if !e.Crease {
			if l == r || !s.turns(p.Solid, e) {
				continue
			}
			outline = true
		}
		s.edges = append(s.edges, edge{
			p: verts[e.A], q: verts[e.B], solid: k, left: e.Left, right: e.Right,
			a: e.A, b: e.B, outline: outline, back: !l && !r,
		})
	}
}

// turns says whether a smooth edge can be an outline: a round face is beside
// it, or else it is only a seam in a plane.
func (s *scene) turns(b *solid.Solid, e solid.Edge) bool {
	_, l := b.FaceSurface(e.Left)
	_, r := b.FaceSurface(e.Right)
	return l || r
}

func toPaper(f vec.Frame) vec.Frame {
	t := func(d vec.V3) vec.V3 { return vec.V3{X: d.Dot(f.U), Y: d.Dot(f.V), Z: d.Dot(f.W)} }
	return vec.Frame{U: t(vec.V3{X: 1}), V: t(vec.V3{Y: 1}), W: t(vec.V3{Z: 1})}
}

func flat(v vec.V3) polygon.P2 { return polygon.P2{X: v.X, Y: v.Y} }

func (s *scene) addTriangle(p, q, r, n vec.V3, k, face int32) {
	t := triangle{p: [3]polygon.P2{flat(p), flat(q), flat(r)}, solid: k, face: face}
	if t.p[1].Sub(t.p[0]).Cross(t.p[2].Sub(t.p[0])) < 1e-9 {
		return
	}
	t.a, t.b = -n.X/n.Z, -n.Y/n.Z
	t.c = p.Z - float64(t.a*p.X) - float64(t.b*p.Y)
	t.top = max(p.Z, q.Z, r.Z)
	s.tris = append(s.tris, t)
}
