package solid

import (
	"cmp"
	"fmt"
	"slices"

	"scantling/internal/geom/vec"
)

// half is one side of an edge: it belongs to a face, whose inside is on its
// left seen from outside the solid.
type half struct {
	face     int32
	from, to int32
	line     int32
}

type rawFace struct {
	plane int32
	key   key
}

// closer gathers the boundaries of all planes and makes closed faces of them:
// points welded, loops joined up, vertices that no face needs dropped, those
// that a neighbour has put in, and every edge matched with its opposite.
type closer struct {
	planes []plane
	weld   *weldSet
	faces  []rawFace
	halves []half
	lineOf map[uint64]int32
	parent []int32 // union of lines
	local  []int32
	faceOf []int32
}

func newCloser(planes []plane, weld float64) *closer {
	return &closer{planes: planes, weld: newWeldSet(weld), lineOf: map[uint64]int32{}}
}

// take collects what a sheet has found.
func (c *closer) take(s *sheet) {
	if len(s.out) == 0 {
		return
	}
	pl := s.plane
	c.local = slices.Grow(c.local[:0], len(s.arr.points.at))[:len(s.arr.points.at)]
	for i := range c.local {
		c.local[i] = -1
	}
	point := func(k int32) int32 {
		if c.local[k] < 0 {
			c.local[k] = c.weld.add(pl.lift(s.arr.points.at[k]))
		}
		return c.local[k]
	}
	c.faceOf = slices.Grow(c.faceOf[:0], len(s.keys))[:len(s.keys)]
	for i := range c.faceOf {
		c.faceOf[i] = -1
	}
	face := func(k int32) int32 {
		if c.faceOf[k] < 0 {
			c.faceOf[k] = int32(len(c.faces))
			c.faces = append(c.faces, rawFace{s.id, s.keys[k]})
		}
		return c.faceOf[k]
	}
	for _, b := range s.out {
		u, v := point(b.u), point(b.v)
		if u == v {
			continue
		}
		line := c.line(s.id, b.src)
		if s.keys[b.above].sign != 0 {
			c.addHalf(face(b.above), u, v, line, s.keys[b.above].sign > 0)
		}
		if s.keys[b.below].sign != 0 {
			c.addHalf(face(b.below), v, u, line, s.keys[b.below].sign > 0)
		}
	}
	for _, p := range s.arr.lines {
		c.join(c.line(s.id, p[0]), c.line(s.id, p[1]))
	}
}

func (c *closer) addHalf(f, u, v, line int32, up bool) {
	if !up {
		u, v = v, u
	}
	c.halves = append(c.halves, half{f, u, v, line})
}

// line returns the number of the line in which two planes meet; src below
// zero is a seam within a plane, a line of its own.
func (c *closer) line(p, q int32) int32 {
	if q >= 0 && q < p {
		p, q = q, p
	}
	k := uint64(uint32(p))<<32 | uint64(uint32(q))
	if id, ok := c.lineOf[k]; ok {
		return id
	}
	id := int32(len(c.parent))
	c.parent = append(c.parent, id)
	c.lineOf[k] = id
	return id
}

func (c *closer) root(l int32) int32 {
	for c.parent[l] != l {
		c.parent[l] = c.parent[c.parent[l]]
		l = c.parent[l]
	}
	return l
}

func (c *closer) join(a, b int32) {
	a, b = c.root(a), c.root(b)
	if a != b {
		c.parent[max(a, b)] = min(a, b)
	}
}

// close fills the polyhedron. It returns "" or what does not close.
func (c *closer) close(out *poly) string {
	for i := range c.halves {
		c.halves[i].line = c.root(c.halves[i].line)
	}
	slices.SortStableFunc(c.halves, func(a, b half) int { return cmp.Compare(a.face, b.face) })
	loops, reason := c.loops()
	if reason != "" {
		return reason
	}
	needed := c.needed(loops)
	lines := c.onLines(needed)
	out.verts = c.weld.at
	out.facets = make([]facet, len(c.faces))
	for i, f := range c.faces {
		pl := &c.planes[f.plane]
		n, d := pl.n, pl.d
		if f.key.sign < 0 {
			n, d = n.Mul(-1), -d
		}
		out.facets[i] = facet{n: n, d: d, plane: f.plane, surf: f.key.surf, tag: f.key.tag}
	}
	for _, l := range loops {
		if ring := c.refine(l, needed, lines); len(ring) >= 3 {
			f := &out.facets[c.halves[l[0]].face]
			f.loops = append(f.loops, ring)
		}
	}
	out.facets = slices.DeleteFunc(out.facets, func(f facet) bool { return len(f.loops) == 0 })
	compact(out)
	return ""
}

// loops joins the half edges of each face into closed loops. Where loops of a
// face touch at a point, each keeps its own corner of wood.
func (c *closer) loops() ([][]int32, string) {
	var all [][]int32
	used := make([]bool, len(c.halves))
	// out[v] chains the half edges of the current face that leave v.
	head := make([]int32, len(c.weld.at))
	next := make([]int32, len(c.halves))
	for i := range head {
		head[i] = -1
	}
	for lo := 0; lo < len(c.halves); {
		hi := lo
		face := c.halves[lo].face
		for ; hi < len(c.halves) && c.halves[hi].face == face; hi++ {
			v := c.halves[hi].from
			next[hi] = head[v]
			head[v] = int32(hi)
		}
		for i := lo; i < hi; i++ {
			if used[i] {
				continue
			}
			loop, ok := c.follow(int32(i), head, next, used)
			if !ok {
				return nil, fmt.Sprintf("a face outline is open near %v", c.weld.at[c.halves[i].from])
			}
			all = append(all, loop)
		}
		for i := lo; i < hi; i++ {
			head[c.halves[i].from] = -1
		}
		lo = hi
	}
	return all, ""
}

func (c *closer) follow(start int32, head, next []int32, used []bool) ([]int32, bool) {
	loop := []int32{start}
	used[start] = true
	for at := start; ; {
		at = c.pick(at, c.halves[at].to, head, next, used, start)
		switch at {
		case start:
			return loop, true
		case -1:
			return nil, false
		}
		used[at] = true
		loop = append(loop, at)
	}
}

// pick chooses the half edge that follows at in v: the first met when turning
// clockwise, seen from outside, from the way back.
func (c *closer) pick(at, v int32, head, next []int32, used []bool, start int32) int32 {
	best, only := int32(-1), true
	for i := head[v]; i >= 0; i = next[i] {
		if used[i] && i != start {
			continue
		}
		if best >= 0 {
			only = false
		}
		best = i
	}
	if only {
		return best
	}
	n := c.planes[c.faces[c.halves[at].face].plane].n
	if c.faces[c.halves[at].face].key.sign < 0 {
		n = n.Mul(-1)
	}
	back := c.weld.at[c.halves[at].from].Sub(c.weld.at[v])
	best = -1
	var bestTurn float64
	for i := head[v]; i >= 0; i = next[i] {
		if used[i] && i != start {
			continue
		}
		d := c.weld.at[c.halves[i].to].Sub(c.weld.at[v])
		turn := clockwise(back, d, n)
		if best < 0 || turn < bestTurn || (turn == bestTurn && i < best) {
			best, bestTurn = i, turn
		}
	}
	return best
}

// clockwise returns a number that grows with the clockwise angle, seen against
// n, from a to b: in (0, 4]. A zero angle counts as a full turn.
func clockwise(a, b, n vec.V3) float64 {
	x, y := a.Dot(b), -n.Dot(a.Cross(b))
	l := abs(x) + abs(y)
	if l == 0 {
		return 4
	}
	switch x, y = x/l, y/l; {
	case y > 0 && x >= 0:
		return y
	case y > 0 || (y == 0 && x < 0):
		return 1 - x
	case x < 0:
		return 2 - y
	case y < 0:
		return 3 + x
	default:
		return 4
	}
}
