package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// needed marks the vertices at which some face has a corner.
func (c *closer) needed() {
	need := sized(&c.need, len(c.weld.at))
	seen := sized(&c.seen, len(c.weld.at)) // face+1 that last passed the vertex
	clear(need)
	clear(seen)
	c.eachLoop(func(l []int32) {
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
	})
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
	fill  []int32
}

func (s *lineSet) on(line int32) []int32 { return s.verts[s.first[line]:s.first[line+1]] }

func (c *closer) onLines() {
	n := len(c.parent)
	s, need := &c.line, c.need
	axis, first := sized(&s.axis, n), sized(&s.first, n+1)
	clear(first)
	for i := range axis {
		axis[i] = -1
	}
	for _, h := range c.halves {
		if axis[h.line] < 0 {
			axis[h.line] = longest(c.weld.at[h.to].Sub(c.weld.at[h.from]))
		}
		if need[h.from] {
			first[h.line+1]++
		}
		if need[h.to] {
			first[h.line+1]++
		}
	}
	for i := range n {
		first[i+1] += first[i]
	}
	verts, fill := sized(&s.verts, int(first[n])), sized(&s.fill, n+1)
	copy(fill, first)
	put := func(line, v int32) {
		if need[v] {
			verts[fill[line]] = v
			fill[line]++
		}
	}
	for _, h := range c.halves {
		put(h.line, h.from)
		put(h.line, h.to)
	}
	for line := range n {
		c.sortLine(s.on(int32(line)), int(axis[line]))
	}
}

// sortLine orders the vertices of a line along an axis; most lines are short.
func (c *closer) sortLine(on []int32, axis int) {
	if len(on) > 12 {
		slices.SortFunc(on, func(a, b int32) int {
			if k := cmp.Compare(c.weld.at[a].At(axis), c.weld.at[b].At(axis)); k != 0 {
				return k
			}
			return cmp.Compare(a, b)
		})
		return
	}
	for i := 1; i < len(on); i++ {
		v := on[i]
		x := c.weld.at[v].At(axis)
		j := i
		for ; j > 0; j-- {
			if y := c.weld.at[on[j-1]].At(axis); y < x || (y == x && on[j-1] <= v) {
				break
			}
			on[j] = on[j-1]
		}
		on[j] = v
	}
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

// refine gives the faces their loops: the needed vertices of each, with those
// of its lines that lie between them put in.
func (c *closer) refine(out *poly) {
	slab := make([]int32, 0, 2*len(c.loop))
	rings := make([][]int32, 0, len(c.ends))
	c.eachLoop(func(loop []int32) {
		start := slices.IndexFunc(loop, func(h int32) bool { return c.need[c.halves[h].from] })
		if start < 0 {
			return
		}
		c.ring = c.ring[:0]
		for i := range loop {
			h := c.halves[loop[(start+i)%len(loop)]]
			if c.need[h.from] {
				c.ring = append(c.ring, h.from)
			}
			c.between(h)
		}
		if len(c.ring) < 3 {
			return
		}
		at := len(slab)
		slab = append(slab, c.ring...)
		f := &out.facets[c.halves[loop[0]].face]
		ring := slab[at:len(slab):len(slab)]
		if f.loops == nil {
			rings = append(rings, ring)
			f.loops = rings[len(rings)-1 : len(rings) : len(rings)]
		} else {
			f.loops = append(f.loops, ring)
		}
	})
}

// between appends to the ring the needed vertices strictly inside a half edge.
func (c *closer) between(h half) {
	on := c.line.on(h.line)
	if len(on) <= 2 {
		return
	}
	axis := int(c.line.axis[h.line])
	a, b := c.weld.at[h.from].At(axis), c.weld.at[h.to].At(axis)
	lo, hi := min(a, b), max(a, b)
	i := 0
	if len(on) > 12 {
		i, _ = slices.BinarySearchFunc(on, lo, func(v int32, x float64) int { return cmp.Compare(c.weld.at[v].At(axis), x) })
	}
	mark := len(c.ring)
	for last := int32(-1); i < len(on); i++ {
		v := on[i]
		x := c.weld.at[v].At(axis)
		if x > hi {
			break
		}
		if x >= lo && v != last && v != h.from && v != h.to {
			c.ring = append(c.ring, v)
			last = v
		}
	}
	if a > b {
		slices.Reverse(c.ring[mark:])
	}
}

// compact fills the vertices in use and renumbers the loops.
func (c *closer) compact(p *poly) {
	number := sized(&c.head, len(c.weld.at))
	for i := range number {
		number[i] = -1
	}
	p.verts = make([]vec.V3, 0, len(c.weld.at))
	for i := range p.facets {
		for _, loop := range p.facets[i].loops {
			for k, v := range loop {
				if number[v] < 0 {
					number[v] = int32(len(p.verts))
					p.verts = append(p.verts, c.weld.at[v])
				}
				loop[k] = number[v]
			}
		}
	}
}

// directedKey packs an edge so that both directions lie side by side in order.
func directedKey(a, b int32) uint64 {
	if a < b {
		return uint64(a)<<33 | uint64(b)<<1
	}
	return uint64(b)<<33 | uint64(a)<<1 | 1
}
