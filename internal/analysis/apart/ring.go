package apart

import "slices"

// rings splits a set into its strongly connected parts along a way: members that
// block each other in a circle (Tarjan 1972). A ring comes after all rings that
// stand in its way up the way. Doubts count as in the way; with held set, so do joints
// that go in across the way, so that nothing slides out of them sideways.
func (g *gathering) rings(set []int, way int, held bool) [][]int {
	s := search{g: g, set: set, way: way, held: held, number: map[int]int{}, low: map[int]int{}, on: map[int]bool{}}
	for _, i := range set {
		if s.number[i] == 0 {
			s.visit(i)
		}
	}
	return s.rings
}

type search struct {
	g      *gathering
	set    []int
	way    int
	held   bool
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
		if i == j || s.g.inTheWay(i, j, s.way) == free && !(s.held && s.g.across(i, j, s.way)) {
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
