package solid

import "scantling/internal/geom/polygon"

// triangulator cuts flat regions into triangles: a sweep from left to right
// keeps, for every strip of inside between two edges, the funnel of vertices
// that still wait for a triangle. Loops may touch at points, vertices may lie
// in line, and one call may hold several regions with holes.
type triangulator struct {
	sweep   sweep
	inside  []bool // edge: the region lies above it
	strips  []strip
	stripOf []int32 // edge: the strip above it, -1 outside
	free    []int32
	out     [][3]int32
	at      []polygon.P2
}

// strip is an unfinished region between a lower and an upper edge. The funnel
// is a chain on one side (upper tells which); the other side is one edge from
// the funnel's first vertex. joined is a second strip lying above, merged at
// the last vertex of both and waiting for a diagonal from there; -1 if none.
type strip struct {
	funnel []int32
	upper  bool
	joined int32
}

// run triangulates the region whose boundary is given as edges from left to
// right with the side on which the region lies. Triangles run anticlockwise.
// It reports false where the edges cross or do not close.
func (t *triangulator) run(at []polygon.P2, edges [][2]int32, inside []bool) bool {
	t.at, t.inside = at, inside
	t.out, t.free = t.out[:0], t.free[:0]
	t.strips = t.strips[:0]
	t.stripOf = t.stripOf[:0]
	for range edges {
		t.stripOf = append(t.stripOf, -1)
	}
	t.sweep.prepare(at, edges)
	ok := true
	good := t.sweep.run(func(p int32, place int, ending, starting []int32) {
		ok = ok && t.visit(p, place, ending, starting)
	})
	return ok && good
}

// visit deals with one vertex.
func (t *triangulator) visit(p int32, place int, ending, starting []int32) bool {
	under := int32(-1) // the edge below the vertex
	if place > 0 {
		under = t.sweep.status[place-1]
	}
	lower, upper := int32(-1), int32(-1) // strips below and above what ends here
	if under >= 0 {
		lower = t.stripOf[under]
	}
	upper = lower
	if k := len(ending); k > 0 {
		upper = t.stripOf[ending[k-1]]
		for _, e := range ending[:k-1] {
			if s := t.stripOf[e]; s >= 0 {
				t.finish(s, p)
			}
		}
		if lower >= 0 {
			lower = t.pushTop(lower, p)
		}
		if upper >= 0 {
			upper = t.pushBottom(upper, p)
		}
	} else if lower >= 0 {
		lower, upper = t.cleave(lower, p)
	}
	if len(starting) == 0 {
		return t.mergeAt(under, lower, upper)
	}
	if under >= 0 {
		t.stripOf[under] = lower
	}
	last := len(starting) - 1
	for _, e := range starting[:last] {
		t.stripOf[e] = -1
		if t.inside[e] {
			t.stripOf[e] = t.open(false, p)
		}
	}
	t.stripOf[starting[last]] = upper
	return t.inside[starting[last]] == (upper >= 0)
}

// mergeAt lays the strips below and above a vertex together where nothing
// starts there.
func (t *triangulator) mergeAt(under, lower, upper int32) bool {
	if under < 0 {
		return upper < 0
	}
	t.stripOf[under] = lower
	if (lower < 0) != (upper < 0) {
		return false
	}
	if lower >= 0 && lower != upper {
		t.strips[lower].joined = upper
	}
	return true
}

func (t *triangulator) open(upper bool, verts ...int32) int32 {
	var s int32
	if n := len(t.free); n > 0 {
		s, t.free = t.free[n-1], t.free[:n-1]
	} else {
		s = int32(len(t.strips))
		t.strips = append(t.strips, strip{})
	}
	st := &t.strips[s]
	st.funnel = append(st.funnel[:0], verts...)
	st.upper, st.joined = upper, -1
	return s
}

// pushTop gives the strip the end of its upper edge. A joined strip above is
// finished by it. It returns the strip that goes on.
func (t *triangulator) pushTop(s, p int32) int32 {
	if j := t.strips[s].joined; j >= 0 {
		t.strips[s].joined = -1
		t.finish(j, p)
	}
	t.push(s, p, true)
	return s
}

// pushBottom gives the strip the end of its lower edge.
func (t *triangulator) pushBottom(s, p int32) int32 {
	if j := t.strips[s].joined; j >= 0 {
		t.strips[s].joined = -1
		t.finish(s, p)
		s = j
	}
	t.push(s, p, false)
	return s
}

// cleave splits the strip at a vertex inside it, by a diagonal from the last
// vertex, and returns the parts below and above.
func (t *triangulator) cleave(s, p int32) (lower, upper int32) {
	if j := t.strips[s].joined; j >= 0 {
		t.strips[s].joined = -1
		t.push(s, p, true)
		t.push(j, p, false)
		return s, j
	}
	st := &t.strips[s]
	last := st.funnel[len(st.funnel)-1]
	if st.upper {
		// The last vertex is on the upper side: the part above starts there.
		upper = t.open(false, last, p)
		t.push(s, p, true)
		return s, upper
	}
	lower = t.open(true, last, p)
	t.push(s, p, false)
	return lower, s
}

// push adds a vertex to the upper or lower side of a strip and cuts off the
// triangles that it completes.
func (t *triangulator) push(s, p int32, upper bool) {
	st := &t.strips[s]
	f := st.funnel
	if len(f) == 1 || st.upper == upper {
		for len(f) >= 2 {
			a, b := f[len(f)-2], f[len(f)-1]
			turn := t.turn(a, b, p)
			if upper {
				turn = -turn
			}
			if turn <= 0 {
				break
			}
			t.emit(a, b, p, upper)
			f = f[:len(f)-1]
		}
		st.funnel, st.upper = append(f, p), upper
		return
	}
	for i := 0; i+1 < len(f); i++ {
		t.emit(f[i], f[i+1], p, st.upper)
	}
	st.funnel = append(f[:0], f[len(f)-1], p)
	st.upper = upper
}

// finish closes the strip at its last vertex.
func (t *triangulator) finish(s, p int32) {
	if j := t.strips[s].joined; j >= 0 {
		t.strips[s].joined = -1
		t.finish(j, p)
	}
	st := &t.strips[s]
	for i := 0; i+1 < len(st.funnel); i++ {
		t.emit(st.funnel[i], st.funnel[i+1], p, st.upper)
	}
	t.free = append(t.free, s)
}

// emit puts out the triangle of two vertices of a chain and a third; along a
// lower chain they run anticlockwise.
func (t *triangulator) emit(a, b, p int32, upper bool) {
	if upper {
		a, b = b, a
	}
	t.out = append(t.out, [3]int32{a, b, p})
}

func (t *triangulator) turn(a, b, c int32) float64 {
	o := t.at[a]
	return t.at[b].Sub(o).Cross(t.at[c].Sub(o))
}
