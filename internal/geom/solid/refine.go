package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// needed marks the vertices at which some face has a corner.
func (c *closer) needed(loops [][]int32) []bool {
	need := make([]bool, len(c.weld.at))
	seen := make([]int32, len(c.weld.at)) // face+1 that last passed the vertex
	for _, l := range loops {
		prev := c.halves[l[len(l)-1]]
		for _, h := range l {
			now := c.halves[h]
			v := now.from
			if prev.line != now.line || seen[v] == now.face+1 || c.turnsBack(prev, now) {
				need[v] = true
			}
			seen[v] = now.face + 1
			prev = now
		}
	}
	return need
}

func (c *closer) turnsBack(a, b half) bool {
	at := c.weld.at
	return at[a.to].Sub(at[a.from]).Dot(at[b.to].Sub(at[b.from])) < 0
}

// lineSet holds the needed vertices of each line in order along an axis.
type lineSet struct {
	first []int32
	verts []int32
	axis  []int8
}

func (s *lineSet) on(line int32) []int32 { return s.verts[s.first[line]:s.first[line+1]] }

func (c *closer) onLines(need []bool) *lineSet {
	n := len(c.parent)
	s := &lineSet{first: make([]int32, n+1), axis: make([]int8, n)}
	for i := range s.axis {
		s.axis[i] = -1
	}
	each := func(f func(line, v int32)) {
		for _, h := range c.halves {
			if need[h.from] {
				f(h.line, h.from)
			}
			if need[h.to] {
				f(h.line, h.to)
			}
		}
	}
	for _, h := range c.halves {
		if s.axis[h.line] < 0 {
			s.axis[h.line] = longest(c.weld.at[h.to].Sub(c.weld.at[h.from]))
		}
	}
	each(func(line, _ int32) { s.first[line+1]++ })
	for i := range n {
		s.first[i+1] += s.first[i]
	}
	s.verts = make([]int32, s.first[n])
	fill := slices.Clone(s.first)
	each(func(line, v int32) {
		s.verts[fill[line]] = v
		fill[line]++
	})
	for line := range n {
		axis := int(s.axis[line])
		slices.SortFunc(s.on(int32(line)), func(a, b int32) int {
			if c := cmp.Compare(c.weld.at[a].At(axis), c.weld.at[b].At(axis)); c != 0 {
				return c
			}
			return cmp.Compare(a, b)
		})
	}
	return s
}

func longest(d vec.V3) int8 {
	axis := int8(0)
	for k := int8(1); k < 3; k++ {
		if abs(d.At(int(k))) > abs(d.At(int(axis))) {
			axis = k
		}
	}
	return axis
}

// refine returns the loop's needed vertices, with those of its lines that lie
// between them put in.
func (c *closer) refine(loop []int32, need []bool, lines *lineSet) []int32 {
	start := slices.IndexFunc(loop, func(h int32) bool { return need[c.halves[h].from] })
	if start < 0 {
		return nil
	}
	var ring []int32
	for i := range loop {
		h := c.halves[loop[(start+i)%len(loop)]]
		if need[h.from] {
			ring = append(ring, h.from)
		}
		ring = c.between(ring, h, lines)
	}
	return ring
}

// between appends the needed vertices strictly inside one half edge.
func (c *closer) between(ring []int32, h half, lines *lineSet) []int32 {
	on := lines.on(h.line)
	if len(on) <= 2 {
		return ring
	}
	axis := int(lines.axis[h.line])
	a, b := c.weld.at[h.from].At(axis), c.weld.at[h.to].At(axis)
	lo, hi := min(a, b), max(a, b)
	i, _ := slices.BinarySearchFunc(on, lo, func(v int32, x float64) int { return cmp.Compare(c.weld.at[v].At(axis), x) })
	mark := len(ring)
	for last := int32(-1); i < len(on) && c.weld.at[on[i]].At(axis) <= hi; i++ {
		if v := on[i]; v != last && v != h.from && v != h.to {
			ring = append(ring, v)
			last = v
		}
	}
	if a > b {
		slices.Reverse(ring[mark:])
	}
	return ring
}

// compact renumbers the vertices that are in use.
func compact(p *poly) {
	number := make([]int32, len(p.verts))
	for i := range number {
		number[i] = -1
	}
	var verts []vec.V3
	for i := range p.facets {
		for _, loop := range p.facets[i].loops {
			for k, v := range loop {
				if number[v] < 0 {
					number[v] = int32(len(verts))
					verts = append(verts, p.verts[v])
				}
				loop[k] = number[v]
			}
		}
	}
	p.verts = verts
}

// directedKey packs an edge so that both directions lie side by side in order.
func directedKey(a, b int32) uint64 {
	if a < b {
		return uint64(a)<<33 | uint64(b)<<1
	}
	return uint64(b)<<33 | uint64(a)<<1 | 1
}
