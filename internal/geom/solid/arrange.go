package solid

import (
	"cmp"
	"math"
	"slices"

	"scantling/internal/geom/polygon"
)

// arrangement makes a planar graph of segments: points merged, segments split
// where they meet, coincident ones laid together with their masks added (mod
// 2), so that what overlaps cancels by itself.
type arrangement struct {
	tol    tolerance
	points pointSet
	words  int // of a mask
	masks  []uint64
	edges  []edge
	// lines are pairs of source planes found to share a line.
	lines  [][2]int32
	splits []split
	spare  []edge
	active []int32
	spent  int // comparisons and splits so far
	limit  int
	spans  []span
	order  []span
	seen   keyTable
}

// edge runs from u to v, u before v by x then y.
type edge struct {
	u, v  int32
	mask  int32 // row of masks
	src   int32 // plane that the segment was cut by
	fresh bool  // not yet compared with the others
	own   bool  // the mask belongs to this edge alone
}

// border is the source of pieces that lie on the border of the box only.
const border = math.MinInt32

type split struct {
	edge  int32
	point int32
	along float64
	moved bool // the point lies off the edge: the pieces are not quite it
}

// still is how far off an edge a point may lie for its pieces to count as the
// edge itself, in need of no further comparison.
const still = 1e-8

func (a *arrangement) reset(tol tolerance, words, expect int) {
	a.tol, a.words = tol, words
	a.spent, a.limit = 0, workLimit
	a.points.reset(tol.merge, 2*expect)
	a.masks, a.edges, a.lines = a.masks[:0], a.edges[:0], a.lines[:0]
}

// row appends an empty mask and returns its number.
func (a *arrangement) row() int32 {
	n := len(a.masks)
	a.masks = slices.Grow(a.masks, a.words)[:n+a.words]
	clear(a.masks[n:])
	return int32(n / a.words)
}

func (a *arrangement) mask(row int32) []uint64 {
	return a.masks[int(row)*a.words : (int(row)+1)*a.words]
}

// add adds a segment whose crossing changes the given mask row.
func (a *arrangement) add(p, q polygon.P2, row, src int32) {
	u, v := a.points.add(p), a.points.add(q)
	if u != v {
		a.edges = append(a.edges, a.directed(u, v, row, src))
	}
}

func (a *arrangement) directed(u, v, row, src int32) edge {
	if !before(a.points.at[u], a.points.at[v]) {
		u, v = v, u
	}
	return edge{u: u, v: v, mask: row, src: src, fresh: true}
}

func before(p, q polygon.P2) bool { return p.X < q.X || (p.X == q.X && p.Y < q.Y) }

// workLimit bounds the comparisons, splits and words of masks of one plane. The
// board of 36 channels spends twenty thousand on its busiest plane.
const workLimit = 60_000_000

// over says whether the plane has cost too much.
func (a *arrangement) over() bool { return a.spent+len(a.masks) > a.limit }

// rounds bounds how often splitting may bring forth new crossings.
const rounds = 12

// settle splits and merges until nothing crosses. It reports false where that
// takes too long.
func (a *arrangement) settle() bool {
	for range rounds {
		a.unite()
		a.findSplits()
		if a.over() {
			return false
		}
		if len(a.splits) == 0 {
			return true
		}
		a.applySplits()
	}
	return false
}

// unite lays coincident edges together and drops those that cancel.
func (a *arrangement) unite() {
	a.seen.reset(len(a.edges))
	out := a.edges[:0]
	for _, e := range a.edges {
		k, fresh := a.seen.at(uint64(e.u)<<32|uint64(e.v), int32(len(out)))
		if fresh {
			out = append(out, e)
			continue
		}
		o := &out[k]
		if !o.own {
			r := a.row()
			copy(a.mask(r), a.mask(o.mask))
			o.mask, o.own = r, true
		}
		into := a.mask(o.mask)
		for i, w := range a.mask(e.mask) {
			into[i] ^= w
		}
		o.fresh = o.fresh || e.fresh
		switch {
		case o.src == border:
			o.src = e.src
		case e.src != border && e.src != o.src && a.long(e):
			a.lines = append(a.lines, [2]int32{o.src, e.src})
		}
	}
	a.edges = out[:0]
	for _, e := range out {
		e.own = false
		if !zero(a.mask(e.mask)) {
			a.edges = append(a.edges, e)
		}
	}
}

// long says whether an edge is long enough to tell that two lines are one:
// shorter ones also arise where lines cross at a slant.
func (a *arrangement) long(e edge) bool {
	return a.points.at[e.v].Sub(a.points.at[e.u]).Norm() > 100*a.tol.merge
}

func zero(m []uint64) bool {
	for _, w := range m {
		if w != 0 {
			return false
		}
	}
	return true
}

// few is the number of fresh edges up to which all pairs are looked at.
const few = 40

// findSplits compares edges whose boxes meet, fresh ones with all others.
func (a *arrangement) findSplits() {
	a.splits = a.splits[:0]
	a.active = a.active[:0]
	for i := range a.edges {
		if a.edges[i].fresh {
			a.active = append(a.active, int32(i))
		}
	}
	if len(a.active) == 0 {
		return
	}
	a.box()
	if fresh := a.active; len(fresh) <= few {
		for _, i := range fresh {
			a.spent += len(a.edges)
			for j := range int32(len(a.edges)) {
				if j < i || (j > i && !a.edges[j].fresh) {
					a.compare(i, j)
				}
			}
		}
	} else {
		a.sortedPairs()
	}
	for i := range a.edges {
		a.edges[i].fresh = false
	}
}

// span is the box of an edge, widened by the tolerance.
type span struct {
	x0, x1, y0, y1 float64
	edge           int32
}

func (a *arrangement) box() {
	a.spans = a.spans[:0]
	tol := a.tol.line
	for i := range a.edges {
		p, q := a.points.at[a.edges[i].u], a.points.at[a.edges[i].v]
		y0, y1 := p.Y, q.Y
		if y0 > y1 {
			y0, y1 = y1, y0
		}
		a.spans = append(a.spans, span{p.X - tol, q.X, y0 - tol, y1, int32(i)})
	}
}

// sortedPairs sweeps the boxes by x.
func (a *arrangement) sortedPairs() {
	a.order = append(a.order[:0], a.spans...)
	slices.SortFunc(a.order, func(s, t span) int {
		switch {
		case s.x0 < t.x0:
			return -1
		case s.x0 > t.x0:
			return 1
		}
		return int(s.edge - t.edge)
	})
	act := a.active[:0]
	for i := range a.order {
		e := &a.order[i]
		if a.spent += len(act) + 1; a.over() {
			break
		}
		keep := act[:0]
		for _, j := range act {
			if a.spans[j].x1 < e.x0 {
				continue
			}
			keep = append(keep, j)
			a.compare(e.edge, j)
		}
		act = append(keep, e.edge)
	}
	a.active = act
}

// compare splits two edges where they meet, if their boxes do and one of them
// is fresh.
func (a *arrangement) compare(i, j int32) {
	s, t := &a.spans[i], &a.spans[j]
	if s.y0 <= t.y1 && t.y0 <= s.y1 && s.x0 <= t.x1 && t.x0 <= s.x1 && (a.edges[i].fresh || a.edges[j].fresh) {
		a.meet(i, j)
	}
}

// meet records where two edges must be split.
func (a *arrangement) meet(i, j int32) {
	a.spent += 10
	e, f := &a.edges[i], &a.edges[j]
	at := a.points.at
	d := at[e.v].Sub(at[e.u])
	g := at[f.v].Sub(at[f.u])
	dn, gn := d.Norm(), g.Norm()
	var su, sv, tu, tv float64
	touched := e.u == f.u || e.u == f.v || e.v == f.u || e.v == f.v
	if f.u != e.u && f.u != e.v {
		su = d.Cross(at[f.u].Sub(at[e.u])) / dn
		touched = a.onto(i, f.u, su, d, dn) || touched
	}
	if f.v != e.u && f.v != e.v {
		sv = d.Cross(at[f.v].Sub(at[e.u])) / dn
		touched = a.onto(i, f.v, sv, d, dn) || touched
	}
	if e.u != f.u && e.u != f.v {
		tu = g.Cross(at[e.u].Sub(at[f.u])) / gn
		touched = a.onto(j, e.u, tu, g, gn) || touched
	}
	if e.v != f.u && e.v != f.v {
		tv = g.Cross(at[e.v].Sub(at[f.u])) / gn
		touched = a.onto(j, e.v, tv, g, gn) || touched
	}
	if touched || (su > 0) == (sv > 0) || (tu > 0) == (tv > 0) {
		return
	}
	t := tu / (tu - tv)
	x := polygon.P2{X: at[e.u].X + float64(t*d.X), Y: at[e.u].Y + float64(t*d.Y)}
	k := a.points.add(x)
	x = a.points.at[k]
	if k != e.u && k != e.v {
		r := x.Sub(a.points.at[e.u])
		a.splits = append(a.splits, split{i, k, d.Dot(r), abs(d.Cross(r)) > still*dn})
	}
	if k != f.u && k != f.v {
		r := x.Sub(a.points.at[f.u])
		a.splits = append(a.splits, split{j, k, g.Dot(r), abs(g.Cross(r)) > still*gn})
	}
}

// onto splits edge i at point k if the point, off by the given distance, lies
// on it strictly between its ends.
func (a *arrangement) onto(i, k int32, off float64, d polygon.P2, n float64) bool {
	if abs(off) > a.tol.line {
		return false
	}
	along := d.Dot(a.points.at[k].Sub(a.points.at[a.edges[i].u]))
	if end := float64(a.tol.line / 2 * n); along <= end || along >= float64(n*n)-end {
		return false
	}
	a.splits = append(a.splits, split{i, k, along, abs(off) > still})
	return true
}

// applySplits replaces split edges by their pieces.
func (a *arrangement) applySplits() {
	slices.SortFunc(a.splits, func(s, t split) int {
		if c := cmp.Compare(s.edge, t.edge); c != 0 {
			return c
		}
		if c := cmp.Compare(s.along, t.along); c != 0 {
			return c
		}
		return cmp.Compare(s.point, t.point)
	})
	out := a.spare[:0]
	k := 0
	for i, e := range a.edges {
		first := k
		moved := false
		for ; k < len(a.splits) && a.splits[k].edge == int32(i); k++ {
			moved = moved || a.splits[k].moved
		}
		if first == k {
			out = append(out, e)
			continue
		}
		u := e.u
		for _, s := range a.splits[first:k] {
			if s.point != u {
				out = append(out, a.piece(u, s.point, e, moved))
				u = s.point
			}
		}
		if u != e.v {
			out = append(out, a.piece(u, e.v, e, moved))
		}
	}
	a.spare, a.edges = a.edges, out
}

func (a *arrangement) piece(u, v int32, of edge, moved bool) edge {
	e := a.directed(u, v, of.mask, of.src)
	e.fresh = moved
	return e
}
