package solid

import (
	"slices"

	"scantling/internal/geom/polygon"
)

// sweep passes a line from left to right over a planar graph of edges (upright
// ones from bottom to top), keeping the edges that the line crosses in order.
type sweep struct {
	at     []polygon.P2
	edges  [][2]int32 // left and right point
	order  []int32    // points by x then y
	starts []int32    // edges by their left point, then by slope
	first  []int32    // starts of point p: starts[first[p]:first[p+1]]
	ends   []int32    // number of edges that end at each point
	status []int32
	keys   []pointKey
}

type pointKey struct {
	polygon.P2
	point int32
}

// prepare sorts points and edges. Points without edges are passed over.
func (s *sweep) prepare(at []polygon.P2, edges [][2]int32) {
	s.at, s.edges = at, edges
	n := len(at)
	s.first = slices.Grow(s.first[:0], n+1)[:n+1]
	s.ends = slices.Grow(s.ends[:0], n)[:n]
	clear(s.first)
	clear(s.ends)
	for _, e := range edges {
		s.first[e[0]+1]++
		s.ends[e[1]]++
	}
	s.order = s.order[:0]
	for p := range n {
		if s.first[p+1] > 0 || s.ends[p] > 0 {
			s.order = append(s.order, int32(p))
		}
		s.first[p+1] += s.first[p]
	}
	s.sortPoints()
	s.starts = slices.Grow(s.starts[:0], len(edges))[:len(edges)]
	for i := len(edges) - 1; i >= 0; i-- {
		u := edges[i][0]
		s.first[u+1]--
		s.starts[s.first[u+1]] = int32(i)
	}
	// first[u+1] now holds the start of u: shift back by one.
	copy(s.first, s.first[1:])
	s.first[n] = int32(len(edges))
	for p := range n {
		list := s.starts[s.first[p]:s.first[p+1]]
		for i := 1; i < len(list); i++ {
			for j := i; j > 0 && s.lower(list[j], list[j-1]); j-- {
				list[j], list[j-1] = list[j-1], list[j]
			}
		}
	}
	s.status = s.status[:0]
}

// sortPoints puts the points in the order of the sweep.
func (s *sweep) sortPoints() {
	s.keys = s.keys[:0]
	for _, p := range s.order {
		s.keys = append(s.keys, pointKey{s.at[p], p})
	}
	slices.SortFunc(s.keys, func(a, b pointKey) int {
		switch {
		case a.X < b.X:
			return -1
		case a.X > b.X:
			return 1
		case a.Y < b.Y:
			return -1
		case a.Y > b.Y:
			return 1
		}
		return int(a.point - b.point)
	})
	for i := range s.keys {
		s.order[i] = s.keys[i].point
	}
}

// lower says whether edge e leaves their common left point below edge f.
func (s *sweep) lower(e, f int32) bool {
	o := s.at[s.edges[e][0]]
	return s.at[s.edges[e][1]].Sub(o).Cross(s.at[s.edges[f][1]].Sub(o)) > 0
}

// under says whether the edge passes strictly below the point.
func (s *sweep) under(e int32, p int32) bool {
	l, r := s.edges[e][0], s.edges[e][1]
	if r == p {
		return false
	}
	o := s.at[l]
	return s.at[r].Sub(o).Cross(s.at[p].Sub(o)) > 0
}

// run visits every point with its place in the status, the edges that end
// there and those that start there, both from bottom to top; visit sees the
// status as it is left of the point. It reports false where the edges are out
// of order, as crossing edges would be.
func (s *sweep) run(visit func(p int32, place int, ending, starting []int32)) bool {
	for _, p := range s.order {
		lo, hi := 0, len(s.status)
		for lo < hi {
			m := (lo + hi) / 2
			if s.under(s.status[m], p) {
				lo = m + 1
			} else {
				hi = m
			}
		}
		k := lo
		for k < len(s.status) && s.edges[s.status[k]][1] == p {
			k++
		}
		if int32(k-lo) != s.ends[p] {
			if lo, k = s.search(p); k < 0 {
				return false
			}
		}
		starting := s.starts[s.first[p]:s.first[p+1]]
		visit(p, lo, s.status[lo:k], starting)
		s.status = slices.Replace(s.status, lo, k, starting...)
	}
	return len(s.status) == 0
}

// search finds the edges that end at p where rounding misled the bisection.
func (s *sweep) search(p int32) (lo, hi int) {
	lo, hi = -1, -1
	for i, e := range s.status {
		if s.edges[e][1] != p {
			continue
		}
		if lo >= 0 && hi != i {
			return 0, -1
		}
		if lo < 0 {
			lo = i
		}
		hi = i + 1
	}
	if lo < 0 || int32(hi-lo) != s.ends[p] {
		return 0, -1
	}
	return lo, hi
}
