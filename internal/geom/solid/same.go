package solid

import (
	"math"

	"scantling/internal/geom/vec"
)

func sqrt(x float64) float64 { return math.Sqrt(x) }

// Mirrored returns the solid with its own X turned to -X: the other hand.
func (s *Solid) Mirrored() *Solid {
	flip := func(list []Primitive) []Primitive {
		out := make([]Primitive, len(list))
		for i, p := range list {
			out[i] = p.mirrored()
		}
		return out
	}
	return Build(flip(s.bodies), flip(s.cutters), s.options)
}

// sameTol is within what corresponding vertices must lie: 1 µm, above the
// rounding of sums of whole nanometres and far below what a maker can see.
const sameTol = 1e-3

// Same says whether two solids have the same shape, one laid on the other by a
// shift and one of the 24 turns that carry axes to axes, and returns the frame
// that lays a on b. Tags are not compared. Round faces are compared as
// faceted, so holes whose frames are turned by an odd angle to one another
// count as different. Unverified solids are never the same.
func Same(a, b *Solid) (vec.Frame, bool) {
	if a.status != Verified || b.status != Verified || len(a.body.verts) != len(b.body.verts) {
		return vec.Frame{}, false
	}
	if abs(a.Volume()-b.Volume()) > 1e-6*(1+a.Volume()) {
		return vec.Frame{}, false
	}
	target := newShape(b)
	size := b.body.hi.Sub(b.body.lo)
	for _, f := range turns() {
		lo, hi := f.ToWorld(a.body.lo), f.ToWorld(a.body.hi)
		lo, hi = smaller(lo, hi), larger(lo, hi)
		if d := hi.Sub(lo).Sub(size); abs(d.X) > sameTol || abs(d.Y) > sameTol || abs(d.Z) > sameTol {
			continue
		}
		f.Origin = b.body.lo.Sub(lo)
		if target.matches(a, f) {
			return f, true
		}
	}
	return vec.Frame{}, false
}

// Handed says whether the solid and its mirror image are different things: no
// turn lays one on the other.
func (s *Solid) Handed() bool {
	if s.status != Verified {
		return false
	}
	_, same := Same(s.Mirrored(), s)
	return !same
}

// turns lists the 24 turns, the identity first.
func turns() []vec.Frame {
	axes := [6]vec.V3{{X: 1}, {Y: 1}, {Z: 1}, {X: -1}, {Y: -1}, {Z: -1}}
	var out []vec.Frame
	for _, u := range axes {
		for _, v := range axes {
			if u.Dot(v) == 0 {
				out = append(out, vec.Frame{U: u, V: v, W: u.Cross(v)})
			}
		}
	}
	return out
}

// shape is a solid prepared for comparison: its vertices by place and, for
// each edge, the normals of the faces beside it. These determine a solid.
type shape struct {
	weld  *weldSet
	edges map[uint64][2]vec.V3
}

func newShape(s *Solid) *shape {
	w := newWeldSet(sameTol)
	for _, v := range s.body.verts {
		w.add(v)
	}
	sh := &shape{weld: w, edges: map[uint64][2]vec.V3{}}
	sh.each(s, vec.World, func(key uint64, n [2]vec.V3) bool {
		sh.edges[key] = n
		return true
	})
	return sh
}

// each calls visit with every edge of s placed in a frame, in the numbers of
// the shape's vertices. It reports false for a vertex that has no counterpart.
func (sh *shape) each(s *Solid, f vec.Frame, visit func(key uint64, n [2]vec.V3) bool) bool {
	number := make([]int32, len(s.body.verts))
	count := len(sh.weld.at)
	for i, v := range s.body.verts {
		number[i] = sh.weld.find(f.ToWorld(v))
		if number[i] < 0 || int(number[i]) >= count {
			return false
		}
	}
	for _, e := range s.Edges() {
		a, b, l, r := number[e.A], number[e.B], e.Left, e.Right
		if a > b {
			a, b, l, r = b, a, r, l
		}
		n := [2]vec.V3{f.DirToWorld(s.body.facets[l].n), f.DirToWorld(s.body.facets[r].n)}
		if !visit(directedKey(a, b), n) {
			return false
		}
	}
	return true
}

func (sh *shape) matches(s *Solid, f vec.Frame) bool {
	seen := 0
	return sh.each(s, f, func(key uint64, n [2]vec.V3) bool {
		m, ok := sh.edges[key]
		seen++
		return ok && m[0].Sub(n[0]).Norm() < 1e-4 && m[1].Sub(n[1]).Norm() < 1e-4
	}) && seen >= len(sh.edges)
}
