package assembly

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// member is what moves as one: a part, or all parts of a group.
type member struct {
	name  address.Address
	parts []int // indices of the piece's parts
	wood  []shape.Box
	hull  shape.Box
}

// gather makes a member of parts.
func gather(name address.Address, parts []int, wood [][]shape.Box) member {
	m := member{name: name, parts: parts}
	for _, i := range parts {
		m.wood = append(m.wood, wood[i]...)
	}
	for i, b := range m.wood {
		if i == 0 {
			m.hull = b
		}
		for a := range 3 {
			m.hull.Lo[a], m.hull.Hi[a] = min(m.hull.Lo[a], b.Lo[a]), max(m.hull.Hi[a], b.Hi[a])
		}
	}
	return m
}

// ahead reports whether, along an axis, some wood of b lies in the way of m as it
// moves up the axis.
func (m *member) ahead(b *member, axis piece.Axis, looks *int) bool {
	*looks++
	if !meets(m.hull, b.hull, axis) || b.hull.Hi[axis] <= m.hull.Lo[axis] {
		return false
	}
	for _, x := range m.wood {
		if *looks++; !meets(x, b.hull, axis) {
			continue
		}
		*looks += len(b.wood)
		for _, y := range b.wood {
			if y.Lo[axis] >= x.Hi[axis] && meets(x, y, axis) {
				return true
			}
		}
	}
	return false
}

// meets reports whether two boxes lie in each other's way, seen along an axis.
func meets(a, b shape.Box, axis piece.Axis) bool {
	for k := range 3 {
		if piece.Axis(k) != axis && (a.Lo[k] >= b.Hi[k] || b.Lo[k] >= a.Hi[k]) {
			return false
		}
	}
	return true
}

// table says of every two members of a set whether one is in the other's way:
// along an axis upwards; downwards is the same, turned round.
type table struct {
	n       int
	blocked [3][]bool // [axis][i*n+j]: j is ahead of i
}

// It reports false where that takes more than MaxLooks.
func newTable(set []member) (table, bool) {
	t := table{n: len(set)}
	looks := 0
	for axis := range 3 {
		t.blocked[axis] = make([]bool, len(set)*len(set))
		for i := range set {
			for j := range set {
				if i != j {
					t.blocked[axis][i*t.n+j] = set[i].ahead(&set[j], piece.Axis(axis), &looks)
				}
				if looks > MaxLooks {
					return t, false
				}
			}
		}
	}
	return t, true
}

// locked returns the sets that do not come apart, each of two or more.
func (t table) locked(set []int) [][]int {
	if len(set) < 2 {
		return nil
	}
	for axis := range 3 {
		rings := t.rings(set, axis)
		if len(rings) < 2 {
			continue
		}
		var out [][]int
		for _, r := range rings {
			out = append(out, t.locked(r)...)
		}
		return out
	}
	return [][]int{set}
}

// rings splits a set into its strongly connected parts along an axis: members
// that block each other in a circle (Tarjan 1972).
func (t table) rings(set []int, axis int) [][]int {
	s := search{t: t, set: set, axis: axis, number: map[int]int{}, low: map[int]int{}, on: map[int]bool{}}
	for _, i := range set {
		if s.number[i] == 0 {
			s.visit(i)
		}
	}
	return s.rings
}

type search struct {
	t      table
	set    []int
	axis   int
	next   int
	number map[int]int
	low    map[int]int
	on     map[int]bool
	stack  []int
	rings  [][]int
}

func (s *search) visit(i int) {
	s.next++
	s.number[i], s.low[i] = s.next, s.next
	s.stack = append(s.stack, i)
	s.on[i] = true
	for _, j := range s.set {
		if !s.t.blocked[s.axis][i*s.t.n+j] {
			continue
		}
		if s.number[j] == 0 {
			s.visit(j)
			s.low[i] = min(s.low[i], s.low[j])
		} else if s.on[j] {
			s.low[i] = min(s.low[i], s.number[j])
		}
	}
	if s.low[i] != s.number[i] {
		return
	}
	k := slices.Index(s.stack, i)
	ring := slices.Clone(s.stack[k:])
	s.stack = s.stack[:k]
	for _, j := range ring {
		s.on[j] = false
	}
	slices.Sort(ring)
	s.rings = append(s.rings, ring)
}
