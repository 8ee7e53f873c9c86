package solid

import (
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
	weld   weldSet
	faces  []rawFace
	halves []half
	lineOf keyTable
	parent []int32 // union of lines
	local  []int32
	faceOf []int32
	// Loops of halves, one after another; loop k is loop[ends[k-1]:ends[k]].
	loop []int32
	ends []int32
	head []int32
	next []int32
	used []bool
	need []bool
	seen []int32
	line lineSet
	ring []int32
	rest []half
}

func (c *closer) reset(planes []plane, weld float64) {
	c.planes = planes
	c.weld.reset(weld)
	c.lineOf.reset(256)
	c.faces, c.halves, c.parent = c.faces[:0], c.halves[:0], c.parent[:0]
}

// take collects what a sheet has found.
func (c *closer) take(s *sheet) {
	// Lines that fall together do so whether or not a face is left in this plane.
	for _, p := range s.arr.lines {
		c.join(c.lineID(s.id, p[0]), c.lineID(s.id, p[1]))
	}
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
		line := c.lineID(s.id, b.src)
		if s.keys[b.above].sign != 0 {
			c.addHalf(face(b.above), u, v, line, s.keys[b.above].sign > 0)
		}
		if s.keys[b.below].sign != 0 {
			c.addHalf(face(b.below), v, u, line, s.keys[b.below].sign > 0)
		}
	}
}

func (c *closer) addHalf(f, u, v, line int32, up bool) {
	if !up {
		u, v = v, u
	}
	c.halves = append(c.halves, half{f, u, v, line})
}

// lineID returns the number of the line in which two planes meet; src below
// zero is a seam within a plane, a line of its own.
func (c *closer) lineID(p, q int32) int32 {
	if q >= 0 && q < p {
		p, q = q, p
	}
	k := uint64(uint32(p))<<32 | uint64(uint32(q))
	id, fresh := c.lineOf.at(k, int32(len(c.parent)))
	if fresh {
		c.parent = append(c.parent, id)
	}
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
	c.sortHalves()
	if reason := c.loops(); reason != "" {
		return reason
	}
	c.needed()
	c.onLines()
	out.facets = make([]facet, len(c.faces))
	for i, f := range c.faces {
		pl := &c.planes[f.plane]
		n, d := pl.n, pl.d
		if f.key.sign < 0 {
			n, d = n.Mul(-1), -d
		}
		out.facets[i] = facet{n: n, d: d, plane: f.plane, surf: f.key.surf, tag: f.key.tag}
	}
	c.refine(out)
	out.facets = slices.DeleteFunc(out.facets, func(f facet) bool { return len(f.loops) == 0 })
	c.compact(out)
	return ""
}

// sortHalves puts the halves of each face side by side, in their order.
func (c *closer) sortHalves() {
	count := sized(&c.head, len(c.faces)+1)
	clear(count)
	for _, h := range c.halves {
		count[h.face+1]++
	}
	for i := range c.faces {
		count[i+1] += count[i]
	}
	sorted := sized(&c.rest, len(c.halves))
	for _, h := range c.halves {
		sorted[count[h.face]] = h
		count[h.face]++
	}
	c.rest, c.halves = c.halves, sorted
}

// sized returns the slice at a length, reusing its room; its values are stale.
func sized[T any](s *[]T, n int) []T {
	*s = slices.Grow((*s)[:0], n)[:n]
	return *s
}

// loops joins the half edges of each face into closed loops. Where loops of a
// face touch at a point, each keeps its own corner of wood.
func (c *closer) loops() string {
	c.loop, c.ends = c.loop[:0], c.ends[:0]
	used := sized(&c.used, len(c.halves))
	clear(used)
	// head[v] chains the half edges of the current face that leave v.
	head, next := sized(&c.head, len(c.weld.at)), sized(&c.next, len(c.halves))
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
			if !c.follow(int32(i), head, next, used) {
				return fmt.Sprintf("a face outline is open near %v", c.weld.at[c.halves[i].from])
			}
			c.ends = append(c.ends, int32(len(c.loop)))
		}
		for i := lo; i < hi; i++ {
			head[c.halves[i].from] = -1
		}
		lo = hi
	}
	return ""
}

// eachLoop calls visit with the halves of every loop in turn.
func (c *closer) eachLoop(visit func(loop []int32)) {
	from := int32(0)
	for _, to := range c.ends {
		visit(c.loop[from:to])
		from = to
	}
}

func (c *closer) follow(start int32, head, next []int32, used []bool) bool {
	c.loop = append(c.loop, start)
	used[start] = true
	for at := start; ; {
		at = c.pick(at, c.halves[at].to, head, next, used, start)
		switch at {
		case start:
			return true
		case -1:
			return false
		}
		used[at] = true
		c.loop = append(c.loop, at)
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
