package solid

import (
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// role says what a polyhedron does in a run: two solids, A and B, each bodies
// less cutters.
type role int8

const (
	bodyA role = iota
	cutA
	bodyB
	cutB
	roles
)

// boundary is an edge between two kinds of region of a plane.
type boundary struct {
	u, v         int32 // points of the arrangement, u left of v
	below, above int32 // numbers of keys in sheet.keys
	src          int32
}

// sheet works out one plane at a time: the section of every polyhedron just
// below and just above it, laid into one arrangement, and from a sweep the
// state of every region. It is reused from plane to plane.
type sheet struct {
	tol   tolerance
	mode  mode
	polys []*poly
	roles []role

	plane  *plane
	id     int32
	arr    arrangement
	cutter sectioner
	sweep  sweep
	locals []local
	masks  [2 * roles][]uint64
	words  int
	states []uint64
	keyOf  []int32
	keys   []key
	out    []boundary
	pairs  [][2]int32
	seams  int32
	poly   []corner
	spare  []corner
	carver carver
}

// local is a polyhedron near the plane.
type local struct {
	poly   int32
	groups []group
}

// group is the facets of one polyhedron in the plane that share tag and
// surface; bit is its place in the masks where there are several.
type group struct {
	tag   Tag
	surf  int32
	bit   int
	reach float64
}

// margin is how far around the faces of a plane its sheet reaches.
const margin = 0.05

// work fills out and keys for one plane. It reports false where the
// arrangement did not settle.
func (s *sheet) work(id int32, pl *plane, lo3, hi3 vec.V3) bool {
	s.plane, s.id = pl, id
	s.out, s.keys, s.arr.lines = s.out[:0], append(s.keys[:0], key{}), s.arr.lines[:0]
	lo, hi := s.frame(pl, lo3, hi3)
	if !(lo.X < hi.X && lo.Y < hi.Y) {
		return true
	}
	s.gather(lo3, hi3)
	if len(s.locals) == 0 || s.quick(id, pl) {
		return true
	}
	s.arr.reset(s.tol, s.words, 32*len(s.locals))
	for k := range s.locals {
		s.lay(k, lo, hi)
	}
	if !s.arr.settle() {
		return false
	}
	return s.resolve()
}

// frame returns the flat box of the plane's facets within the space box.
func (s *sheet) frame(pl *plane, lo3, hi3 vec.V3) (lo, hi polygon.P2) {
	a, b := pl.flat(lo3), pl.flat(hi3)
	m := polygon.P2{X: margin, Y: margin}
	lo = polygon.P2{X: max(pl.lo.X, a.X), Y: max(pl.lo.Y, a.Y)}.Sub(m)
	hi = polygon.P2{X: min(pl.hi.X, b.X), Y: min(pl.hi.Y, b.Y)}.Add(m)
	return lo, hi
}

// gather finds the polyhedra near the plane and lays out the masks: one bit
// for each below the plane, one above, then one for each extra group.
func (s *sheet) gather(lo3, hi3 vec.V3) {
	pl := s.plane
	m := vec.V3{X: margin, Y: margin, Z: margin}
	lo := larger(pl.lo3, lo3).Sub(m)
	hi := smaller(pl.hi3, hi3).Add(m)
	s.locals = s.locals[:0]
	for k, p := range s.polys {
		if apart(lo, hi, p.lo, p.hi) {
			continue
		}
		if n := len(s.locals); n < cap(s.locals) {
			s.locals = s.locals[:n+1]
			s.locals[n].poly, s.locals[n].groups = int32(k), s.locals[n].groups[:0]
		} else {
			s.locals = append(s.locals, local{poly: int32(k)})
		}
	}
	n := len(s.locals)
	bits := 2 * n
	for _, f := range pl.facets {
		k, ok := slices.BinarySearchFunc(s.locals, f.poly, func(l local, p int32) int { return int(l.poly - p) })
		if !ok {
			continue
		}
		fc := &s.polys[f.poly].facets[f.facet]
		if g := s.locals[k].groups; !slices.ContainsFunc(g, func(g group) bool { return g.tag == fc.tag && g.surf == fc.surf }) {
			s.locals[k].groups = append(g, group{fc.tag, fc.surf, -1, fc.reach})
		}
	}
	for k := range s.locals {
		if g := s.locals[k].groups; len(g) > 1 {
			for i := range g {
				g[i].bit = bits
				bits++
			}
		}
	}
	s.words = (bits + 63) / 64
	for i := range s.masks {
		s.masks[i] = slices.Grow(s.masks[i][:0], s.words)[:s.words]
		clear(s.masks[i])
	}
	for k, l := range s.locals {
		r := s.roles[l.poly]
		setBit(s.masks[r], k)
		setBit(s.masks[r+roles], n+k)
	}
}

func setBit(m []uint64, bit int)      { m[bit>>6] |= 1 << (bit & 63) }
func hasBit(m []uint64, bit int) bool { return m[bit>>6]>>(bit&63)&1 != 0 }

func any2(a, b []uint64) bool {
	for i := range a {
		if a[i]&b[i] != 0 {
			return true
		}
	}
	return false
}

func larger(a, b vec.V3) vec.V3 {
	return vec.V3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
}

func smaller(a, b vec.V3) vec.V3 {
	return vec.V3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)}
}

// apart says whether two boxes have no point in common.
func apart(alo, ahi, blo, bhi vec.V3) bool {
	return alo.X > bhi.X || ahi.X < blo.X || alo.Y > bhi.Y || ahi.Y < blo.Y || alo.Z > bhi.Z || ahi.Z < blo.Z
}

// lay puts the sections of one polyhedron into the arrangement.
func (s *sheet) lay(k int, lo, hi polygon.P2) {
	l := &s.locals[k]
	p, pl := s.polys[l.poly], s.plane
	n := len(s.locals)
	low, flat, high := s.cutter.classify(p, pl, s.tol.on)
	foot, left := lo.Y+s.tol.merge, lo.X+s.tol.merge
	put := func(side int) {
		row := s.arr.row()
		if side&below != 0 {
			setBit(s.arr.mask(row), k)
		}
		if side&above != 0 {
			setBit(s.arr.mask(row), n+k)
		}
		which := side
		if which == below|above {
			which = above
		}
		s.cutter.cut(p, pl, s.id, which, func(a, b vec.V3, facet int32) {
			src := p.facets[facet].plane
			clip(pl.flat(a), pl.flat(b), lo, hi, func(a, b polygon.P2, own bool) {
				switch {
				case own:
					s.arr.add(a, b, row, src)
				case a.Y < foot && b.Y < foot, a.X < left && b.X < left:
					// Of what was moved on to the border only the foot and the left
					// matter: states are summed upwards, from left to right.
					s.arr.add(a, b, row, border)
				}
			})
		})
	}
	switch {
	case low && high && !flat:
		put(below | above)
	case low && (high || flat), high && flat:
		if low {
			put(below)
		}
		if high {
			put(above)
		}
	}
	if len(l.groups) > 1 {
		s.layGroups(k, lo, hi)
	}
}

// layGroups adds the outlines of the facets in the plane, so that regions of
// different tags are told apart.
func (s *sheet) layGroups(k int, lo, hi polygon.P2) {
	l := &s.locals[k]
	p, pl := s.polys[l.poly], s.plane
	for _, ref := range pl.facets {
		if ref.poly != l.poly {
			continue
		}
		f := &p.facets[ref.facet]
		row := s.arr.row()
		for _, g := range l.groups {
			if g.tag == f.tag && g.surf == f.surf {
				setBit(s.arr.mask(row), g.bit)
			}
		}
		for _, loop := range f.loops {
			prev := loop[len(loop)-1]
			for _, v := range loop {
				s.seams++
				src := -1 - s.seams
				clip(pl.flat(p.verts[prev]), pl.flat(p.verts[v]), lo, hi, func(a, b polygon.P2, _ bool) { s.arr.add(a, b, row, src) })
				prev = v
			}
		}
	}
}

// resolve sweeps the arrangement, gives every region its key and keeps the
// edges between different ones.
func (s *sheet) resolve() bool {
	a := &s.arr
	s.pairs = s.pairs[:0]
	for _, e := range a.edges {
		s.pairs = append(s.pairs, [2]int32{e.u, e.v})
	}
	s.sweep.prepare(a.points.at, s.pairs)
	w := s.words
	s.states = slices.Grow(s.states[:0], w*len(a.edges))[:w*len(a.edges)]
	s.keyOf = slices.Grow(s.keyOf[:0], len(a.edges))[:len(a.edges)]
	state := make([]uint64, w)
	return s.sweep.run(func(p int32, place int, ending, starting []int32) {
		clear(state)
		under := int32(0)
		if place > 0 {
			e := int(s.sweep.status[place-1])
			copy(state, s.states[e*w:(e+1)*w])
			under = s.keyOf[e]
		}
		for _, ei := range starting {
			e := &a.edges[ei]
			for i, m := range a.mask(e.mask) {
				state[i] ^= m
			}
			copy(s.states[int(ei)*w:], state)
			over := s.keyNumber(state)
			s.keyOf[ei] = over
			if over != under {
				s.out = append(s.out, boundary{e.u, e.v, under, over, e.src})
			}
			under = over
		}
	})
}
