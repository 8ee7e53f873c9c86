package apart

import (
	"math"

	"scantling/internal/address"
	"scantling/internal/geom/vec"
	"scantling/internal/shape"
)

// member is what moves as one: a part, or all parts of a group.
type member struct {
	name  address.Address
	parts []int // indices of the piece's parts
	hull  shape.Box
}

// gathering is what is put together at once: the members of one group.
type gathering struct {
	*work
	group   address.Address
	members []member
	// states says, by way, whether member j is in the way of member i that moves up
	// the way, at [i*n+j]; filled as it is asked for.
	states [][]state
	// entries are the joints between members, with the axis along which they go in.
	entries []entry
	// joined are the axes of the joints between two members, as bits.
	joined map[[2]int]byte
	// removals are in order, locked the rings that do not come apart.
	removals []removal
	locked   [][]int
}

// entry is a joint between two members.
type entry struct{ a, b, axis int }

// removal takes members away up a way, or down it.
type removal struct {
	taken []int
	way   int
	up    bool
	far   float64 // millimetres
}

// inTheWay tells by boxes, or as is known by now, whether j is in the way of i.
func (g *gathering) inTheWay(i, j, way int) state {
	n := len(g.members)
	g.looks++
	if g.states[way] == nil {
		g.states[way] = make([]state, n*n)
	}
	at := &g.states[way][i*n+j]
	if *at == unasked {
		*at = g.ask(&g.members[i], &g.members[j], way)
	}
	return *at
}

// ask tells by boxes.
func (g *gathering) ask(a, b *member, way int) state {
	w := &g.ways[way]
	if g.looks++; w.axis >= 0 && !g.tied(a, b) && (!meets(a.hull, b.hull, w.axis) || b.hull.Hi[w.axis] <= a.hull.Lo[w.axis]) {
		return free
	}
	worst := free
	for _, p := range a.parts {
		for _, q := range b.parts {
			if g.looks > MaxLooks {
				return blocked
			}
			switch s := g.pair(p, q, way); s {
			case blocked:
				return blocked
			case doubtful:
				worst = doubtful
			}
		}
	}
	return worst
}

// tied reports whether dowels or loose tongues hold two members together.
func (g *gathering) tied(a, b *member) bool {
	if len(g.bounds) == 0 {
		return false
	}
	for _, p := range a.parts {
		for _, q := range b.parts {
			if len(g.boundsOf(p, q)) > 0 {
				return true
			}
		}
	}
	return false
}

// boundsOf returns the ways that dowels or loose tongues leave to two parts; halves of
// what was sawn apart are bound by none.
func (g *gathering) boundsOf(p, q int) []vec.V3 {
	if g.isHalf(p) || g.isHalf(q) {
		return nil
	}
	return g.bounds[[2]int{min(p, q), max(p, q)}]
}

// pair tells of two parts by boxes.
func (g *gathering) pair(p, q, way int) state {
	w := &g.ways[way]
	if only := g.boundsOf(p, q); len(only) > 0 {
		for _, d := range only {
			if !parallel(d, w.dir) {
				continue
			}
			only = nil
			break
		}
		if only != nil {
			return blocked
		}
	}
	if w.axis >= 0 {
		return g.timber[p].ahead(&g.timber[q], w.axis, &g.looks)
	}
	g.looks++
	if w.shadows == nil {
		w.shadows = make([]shadow, len(g.timber))
		for i := range g.timber {
			w.shadows[i] = g.timber[i].shadow(w.frame)
		}
	}
	a, b := &w.shadows[p], &w.shadows[q]
	if !a.over(*b) || b.hi.Z <= a.lo.Z+slack {
		return free
	}
	return doubtful
}

// settle sweeps solids for every doubt among a set along a way; false where no
// doubt was there.
func (g *gathering) settle(set []int, way int) bool {
	n, any := len(g.members), false
	for _, i := range set {
		for _, j := range set {
			if i == j || g.inTheWay(i, j, way) != doubtful {
				continue
			}
			any = true
			g.states[way][i*n+j] = g.sweep(&g.members[i], &g.members[j], way)
		}
	}
	return any
}

func (g *gathering) sweep(a, b *member, way int) state {
	shift := g.ways[way].dir.Mul(g.reach)
	for _, p := range a.parts {
		for _, q := range b.parts {
			if g.pair(p, q, way) != doubtful {
				continue
			}
			if g.sweeps++; g.sweeps > MaxSweeps || g.unsure[p] || g.unsure[q] {
				g.guessed = true
				return blocked
			}
			s, sure := swept(g.solid(p).Placed(), g.solid(q).Placed(), shift)
			if g.guessed = g.guessed || !sure; s == blocked {
				return blocked
			}
		}
	}
	return free
}

// take takes a set apart and notes how; what does not come apart goes to locked.
func (g *gathering) take(set []int) {
	if len(set) < 2 {
		return
	}
	rings, way := g.split(set)
	if len(rings) < 2 {
		g.locked = append(g.locked, set)
		return
	}
	g.remove(rings, way)
	for _, r := range rings {
		g.take(r)
	}
}

// split returns the rings of a set along the way that suits its joints best of
// those along which it has two, as the boxes tell; else with doubts settled, along
// the first; one ring where there is none.
func (g *gathering) split(set []int) ([][]int, int) {
	var best [][]int
	most, along := 0, 0
	for _, held := range [2]bool{true, false} {
		for way := range 3 {
			r := g.rings(set, way, held)
			if len(r) < 2 {
				continue
			}
			if suits := g.suits(r, g.ways[way].axis); best == nil || suits > most {
				best, most, along = r, suits, way
			}
		}
		if best != nil {
			return best, along
		}
	}
	for way := range g.ways {
		if !g.settle(set, way) && way < 3 {
			continue
		}
		if r := g.rings(set, way, false); len(r) > 1 {
			return r, way
		}
	}
	return [][]int{set}, 0
}

// across reports whether a joint between two members goes in across a way.
func (g *gathering) across(i, j, way int) bool {
	axes := g.joined[[2]int{min(i, j), max(i, j)}]
	return axes != 0 && axes&(1<<g.ways[way].axis) == 0
}

// suits counts the joints between rings that are drawn the way they go in, less
// twice those that have to slide out across it.
func (g *gathering) suits(rings [][]int, axis int) int {
	of := make([]int, len(g.members))
	for k, r := range rings {
		for _, i := range r {
			of[i] = k + 1
		}
	}
	n := 0
	for _, e := range g.entries {
		switch a, b := of[e.a], of[e.b]; {
		case a == 0 || b == 0 || a == b:
		case e.axis == axis:
			n++
		default:
			n -= 2
		}
	}
	return n
}

// remove notes in which order rings along a way are taken from the one that stays:
// the one that holds half of all, else the middle one.
func (g *gathering) remove(rings [][]int, way int) {
	stays, most, sum := len(rings)/2, 0.0, 0.0
	for k, r := range rings {
		v := g.volume(r)
		if sum += v; v > most {
			most = v
			if v > 0 {
				stays = k
			}
		}
	}
	if most < sum/2 {
		stays = len(rings) / 2
	}
	for k, r := range rings[:stays] {
		g.removals = append(g.removals, removal{r, way, true, g.clear(r, rings[k+1:], way, true)})
	}
	for k := len(rings) - 1; k > stays; k-- {
		g.removals = append(g.removals, removal{rings[k], way, false, g.clear(rings[k], rings[stays:k], way, false)})
	}
}

// volume is that of the box around members, in cubic millimetres.
func (g *gathering) volume(ring []int) float64 {
	var boxes []shape.Box
	for _, i := range ring {
		boxes = append(boxes, g.members[i].hull)
	}
	h := around(boxes)
	v := 1.0
	for a := range 3 {
		v = float64(v * (h.Hi[a] - h.Lo[a]).Millimetres())
	}
	return v
}

// clear returns how far a ring slides until it is clear of the rings that stay.
func (g *gathering) clear(ring []int, rest [][]int, way int, up bool) float64 {
	w := g.ways[way]
	sign := 1.0
	if !up {
		sign = -1
	}
	far := 0.0
	for _, i := range ring {
		for _, r := range rest {
			for _, k := range r {
				behind, ahead := k, i
				if !up {
					behind, ahead = i, k
				}
				if g.inTheWay(behind, ahead, way) == free && !g.members[i].hull.Overlaps(g.members[k].hull) {
					continue // it is beside what stays, or clear of it
				}
				_, top := g.span(k, w.dir.Mul(sign))
				low, _ := g.span(i, w.dir.Mul(sign))
				far = max(far, top-low)
			}
		}
	}
	return far
}

// span returns from where to where a member lies along a direction.
func (g *gathering) span(i int, d vec.V3) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range g.members[i].parts {
		for _, c := range g.timber[p].corners {
			x := c.Dot(d)
			lo, hi = min(lo, x), max(hi, x)
		}
	}
	return lo, hi
}
