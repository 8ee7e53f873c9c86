package solid

import (
	"scantling/internal/geom/vec"
)

// corner is a vertex of a facet that is being clipped; src is the plane that
// the edge from it to the next corner lies in, dist how far it lies outside the
// plane that is clipped by.
type corner struct {
	at   vec.V3
	src  int32
	dist float64
}

// quick settles the plane without an arrangement where it holds one facet and
// nothing is near but the facet's owner and, if that is a cutter, one convex
// body that the plane passes through cleanly, and convex cutters that pass cleanly
// too. The face is then the facet, or what lies of it in the body: the wall of a
// hole, the side of a groove. It reports false where the plane is not so simple.
func (s *sheet) quick(id int32, pl *plane) bool {
	if s.mode != build || len(pl.facets) != 1 || len(s.locals) == 0 || len(s.locals) > quickLimit {
		return false
	}
	owner := pl.facets[0].poly
	p := s.polys[owner]
	f := &p.facets[pl.facets[0].facet]
	if len(f.loops) != 1 || f.edges == nil {
		return false
	}
	isBody := s.roles[owner] == bodyA
	body := int32(-1)
	for k := range s.locals {
		other := s.locals[k].poly
		switch {
		case other == owner:
		case s.roles[other] != bodyA:
		case isBody || body >= 0:
			return false
		default:
			body = other
		}
	}
	if !isBody && body < 0 {
		return len(s.locals) == 1 // a cutter in the air
	}
	s.poly = s.poly[:0]
	for i, v := range f.loops[0] {
		s.poly = append(s.poly, corner{at: p.verts[v], src: p.facets[f.edges[i]].plane})
	}
	if !isBody {
		b := s.polys[body]
		if !b.convex {
			return false
		}
		low, flat, high := s.cutter.classify(b, pl, s.tol.on)
		if flat {
			return false
		}
		if !low || !high || !s.trim(id, b) {
			s.arr.lines = s.arr.lines[:0]
			return true // no face
		}
	}
	s.carver.reset(s.poly)
	for k := range s.locals {
		if other := s.locals[k].poly; other != owner && other != body && !s.carver.carve(s.polys[other], pl, &s.cutter, s.tol.on) {
			s.arr.lines = s.arr.lines[:0]
			return false
		}
	}
	if s.carver.pieces() == 0 {
		s.arr.lines = s.arr.lines[:0]
		return true // no face
	}
	s.emitQuick(pl, f, isBody)
	return true
}

// quickLimit is the number of polyhedra near a plane up to which quick looks.
const quickLimit = 12

// trim clips the corners by every facet of a convex body. It reports false
// where nothing is left.
func (s *sheet) trim(id int32, b *poly) bool {
	tol := s.tol.on
	for i := range b.facets {
		g := &b.facets[i]
		in, out := false, false
		for k := range s.poly {
			d := g.n.Dot(s.poly[k].at) - g.d
			s.poly[k].dist = d
			in, out = in || d < -tol, out || d > tol
		}
		if !in {
			return false
		}
		n := len(s.poly)
		for k := range s.poly {
			a, c := &s.poly[k], &s.poly[(k+1)%n]
			if abs(a.dist) <= tol && abs(c.dist) <= tol && a.src != g.plane && c.at.Sub(a.at).Norm() > 100*s.tol.merge {
				s.arr.lines = append(s.arr.lines, [2]int32{a.src, g.plane})
			}
		}
		if out {
			s.clipCorners(g.plane, tol)
		}
	}
	return len(s.poly) >= 3
}

// clipCorners keeps what lies within the plane that dist was measured from.
func (s *sheet) clipCorners(plane int32, tol float64) {
	s.spare = s.spare[:0]
	n := len(s.poly)
	for k := range s.poly {
		a, c := s.poly[k], s.poly[(k+1)%n]
		if a.dist <= tol {
			keep := a
			if c.dist > tol && abs(a.dist) <= tol {
				keep.src = plane // the edge leaves at a corner on the plane
			}
			s.spare = append(s.spare, keep)
		}
		if (a.dist > tol && c.dist < -tol) || (a.dist < -tol && c.dist > tol) {
			t := a.dist / (a.dist - c.dist)
			x := corner{at: a.at.Add(c.at.Sub(a.at).Mul(t)), src: plane}
			if a.dist > tol {
				x.src = a.src
			}
			s.spare = append(s.spare, x)
		}
	}
	s.poly, s.spare = s.spare, s.poly
}

// emitQuick puts the pieces out as the boundary of one face.
func (s *sheet) emitQuick(pl *plane, f *facet, isBody bool) {
	up := f.n.Dot(pl.n) > 0
	k := key{sign: 1, tag: f.tag, surf: f.surf}
	if up != isBody {
		k.sign = -1
	}
	s.keys = append(s.keys, k)
	at := s.arr.points.at[:0]
	for _, e := range s.carver.outline() {
		u, v, over := int32(len(at)), int32(len(at)+1), up
		at = append(at, pl.flat(e.from), pl.flat(e.to))
		if !before(at[u], at[v]) {
			u, v, over = v, u, !over
		}
		b := boundary{u: u, v: v, src: e.src}
		if over {
			b.above = 1
		} else {
			b.below = 1
		}
		s.out = append(s.out, b)
	}
	s.arr.points.at = at
}
