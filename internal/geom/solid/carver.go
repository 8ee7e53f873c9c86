package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// carver takes convex cutters away from a flat convex face: what is left are convex
// pieces, which may lie against one another along seams.
type carver struct {
	corners []corner // of all pieces, one after another
	ends    []int32
	seams   []int32 // planes in which seams lie
	edges   []rim
	marks   []mark
	was     []corner
	wasEnds []int32
	rest    []corner
	inside  []corner
}

// clean is how far, in millimetres, corners must lie from the planes that they are
// clipped by: by far more than any tolerance.
const clean = 1e-2

// mostPieces bounds the pieces: beyond it the arrangement is the quicker way.
const mostPieces = 8

// rim is an edge of the face that is left, anticlockwise seen from outside, in the
// plane src.
type rim struct {
	from, to vec.V3
	src      int32
}

// mark is where a stretch of a seam begins and ends: +1 and -1 for one that is run
// forwards, -1 and +1 for one that is run backwards.
type mark struct {
	along float64
	at    vec.V3
	by    int
}

func (c *carver) reset(face []corner) {
	c.seams = c.seams[:0]
	c.corners, c.ends = append(c.corners[:0], face...), append(c.ends[:0], int32(len(face)))
}

func (c *carver) pieces() int { return len(c.ends) }

// carve takes a cutter away from all pieces. It reports false where that is not so
// simple: then the pieces are of no use.
func (c *carver) carve(q *poly, pl *plane, cut *sectioner, tol float64) bool {
	if c.clearOf(q) {
		return true
	}
	switch low, flat, high := cut.classify(q, pl, tol); {
	case flat || !q.convex:
		return false
	case !low || !high:
		return true // it does not reach the plane
	}
	c.corners, c.was = c.was[:0], c.corners
	c.ends, c.wasEnds = c.wasEnds[:0], c.ends
	from := int32(0)
	for _, to := range c.wasEnds {
		if !c.carvePiece(c.was[from:to], q) {
			return false
		}
		from = to
	}
	return len(c.ends) <= mostPieces
}

// keep adds a piece.
func (c *carver) keep(piece []corner) {
	c.corners = append(c.corners, piece...)
	c.ends = append(c.ends, int32(len(c.corners)))
}

// clearOf reports whether the box of a cutter stands clear of all pieces.
func (c *carver) clearOf(q *poly) bool {
	if len(c.corners) == 0 {
		return true
	}
	lo, hi := c.corners[0].at, c.corners[0].at
	for k := range c.corners[1:] {
		lo, hi = smaller(lo, c.corners[k+1].at), larger(hi, c.corners[k+1].at)
	}
	return lo.X > q.hi.X+clean || lo.Y > q.hi.Y+clean || lo.Z > q.hi.Z+clean || hi.X < q.lo.X-clean || hi.Y < q.lo.Y-clean || hi.Z < q.lo.Z-clean
}

func (c *carver) carvePiece(piece []corner, q *poly) bool {
	for i := range q.facets {
		if least, _ := levels(piece, &q.facets[i]); least > clean {
			c.keep(piece)
			return true
		}
	}
	c.rest = append(c.rest[:0], piece...)
	first := len(c.ends)
	for i := range q.facets {
		g := &q.facets[i]
		least, most := levels(c.rest, g)
		switch {
		case most < -clean || (most < clean && c.flush(g.plane)):
			continue
		case least > -clean:
			return false // what is left touches the facet
		}
		for k := range c.rest {
			if d := c.rest[k].dist; d > -clean && d < clean {
				return false
			}
		}
		c.split(g.plane, len(c.ends) > first, q)
	}
	return true
}

// flush reports whether all corners of the rest lie well inside the plane that was
// measured from but for the ends of an edge that lies in it.
func (c *carver) flush(plane int32) bool {
	n := len(c.rest)
	near, edge := 0, false
	for k := range c.rest {
		if c.rest[k].dist < -clean {
			continue
		}
		near++
		edge = edge || (c.rest[k].src == plane && c.rest[(k+1)%n].dist >= -clean)
	}
	return near == 2 && edge
}

// levels measures the corners over a facet and returns the least and the most.
func levels(piece []corner, g *facet) (least, most float64) {
	least, most = inf, -inf
	for k := range piece {
		d := g.n.Dot(piece[k].at) - g.d
		piece[k].dist = d
		least, most = min(least, d), max(most, d)
	}
	return least, most
}

// split keeps what of the rest lies outside the plane that was measured from and goes
// on with what lies inside. A later piece may lie against an earlier one: then its
// seam is noted.
func (c *carver) split(plane int32, later bool, q *poly) {
	c.inside = c.inside[:0]
	n := len(c.rest)
	start := len(c.corners)
	for k := range c.rest {
		a, b := c.rest[k], c.rest[(k+1)%n]
		if a.dist > 0 {
			c.corners = append(c.corners, a)
		} else {
			c.inside = append(c.inside, a)
		}
		if (a.dist > 0) == (b.dist > 0) {
			continue
		}
		x := corner{at: a.at.Add(b.at.Sub(a.at).Mul(a.dist / (a.dist - b.dist)))}
		in, out := x, x
		if a.dist > 0 { // outwards the line follows the plane, inwards the edge
			in.src, out.src = a.src, plane
		} else {
			in.src, out.src = plane, a.src
		}
		c.corners, c.inside = append(c.corners, out), append(c.inside, in)
	}
	c.ends = append(c.ends, int32(len(c.corners)))
	c.rest, c.inside = c.inside, c.rest
	if !later {
		return
	}
	for _, x := range c.corners[start:] {
		for i := range q.facets {
			if x.src == q.facets[i].plane && x.src != plane && !slices.Contains(c.seams, x.src) {
				c.seams = append(c.seams, x.src)
			}
		}
	}
}

// outline returns the edges of all pieces, without seams.
func (c *carver) outline() []rim {
	c.edges = c.edges[:0]
	from := int32(0)
	for _, to := range c.ends {
		for i := from; i < to; i++ {
			j := i + 1
			if j == to {
				j = from
			}
			if a := &c.corners[i]; !slices.Contains(c.seams, a.src) {
				c.edges = append(c.edges, rim{a.at, c.corners[j].at, a.src})
			}
		}
		from = to
	}
	for _, src := range c.seams {
		c.unseam(src)
	}
	return c.edges
}

// unseam adds the edges that lie in one plane, on one line, without the stretches
// that are run both ways.
func (c *carver) unseam(src int32) {
	c.marks = c.marks[:0]
	var d vec.V3
	from := int32(0)
	for _, to := range c.ends {
		for i := from; i < to; i++ {
			j := i + 1
			if j == to {
				j = from
			}
			if c.corners[i].src != src {
				continue
			}
			a, b := c.corners[i].at, c.corners[j].at
			if d == (vec.V3{}) {
				d = b.Sub(a)
			}
			by := 1
			if b.Sub(a).Dot(d) < 0 {
				a, b, by = b, a, -1
			}
			c.marks = append(c.marks, mark{a.Dot(d), a, by}, mark{b.Dot(d), b, -by})
		}
		from = to
	}
	slices.SortStableFunc(c.marks, func(a, b mark) int { return cmp.Compare(a.along, b.along) })
	sum := 0
	for i := range c.marks {
		if sum != 0 && c.marks[i].at.Sub(c.marks[i-1].at).Norm() > clean/10 {
			a, b := c.marks[i-1].at, c.marks[i].at
			if sum < 0 {
				a, b = b, a
			}
			c.edges = append(c.edges, rim{a, b, src})
		}
		sum += c.marks[i].by
	}
}
