package boards

import (
	"slices"

	"scantling/internal/optimise/work"
)

// pricing looks for the pattern of every kind of board that is worth most at
// given prices of the parts, in whole numbers, so that what it finds also
// proves a bound.
type pricing struct {
	m      *model
	table  knapsack
	tree   branching
	scale  int64   // one unit of cost in these numbers
	value  []int64 // price of each kind
	extra  []int64 // price of using each stock, above or below zero
	worth  []int64 // by stock: the greatest worth of a pattern, for the bound
	found  []*pattern
	bound  float64 // estimate of what these prices prove, in cost
	best   float64 // the greatest such estimate
	better bool    // bound is the greatest so far
	most   []int
	// scaleAll chooses between two ways to a bound, see scales.
	scaleAll bool
	packs    int // patterns sought per run, complementary to each other
}

func newPricing(m *model) *pricing {
	pr := &pricing{
		m: m, value: make([]int64, len(m.kinds)), extra: make([]int64, len(m.stock)),
		worth: make([]int64, len(m.stock)), most: make([]int, len(m.kinds)), best: -1, packs: 3,
	}
	pr.scale = max(1, (1<<34)/m.dearest())
	return pr
}

// branches says whether depth first search is used: only a few pieces fit on a
// board, and a table would be large.
func (pr *pricing) branches() bool {
	top, shortest := pr.m.top(), pr.m.kinds[len(pr.m.kinds)-1].w
	return top >= maxStates || top/shortest <= 6 && top*int64(len(pr.m.kinds)) > 2_000_000
}

// top returns the longest clear length of all stock.
func (m *model) top() int64 {
	var top int64
	for i := range m.stock {
		top = max(top, m.stock[i].top)
	}
	return top
}

// run prices all boards.
func (pr *pricing) run(r *relaxation, prices []float64, meter *work.Meter) bool {
	ceiling := pr.m.dearest() * pr.scale * 1024
	toWhole := func(y float64) int64 {
		return max(0, min(ceiling, int64(min(y*r.unit*float64(pr.scale), 1e18))))
	}
	for k := range pr.value {
		pr.value[k] = 0
		if row := r.rowOf[k]; row >= 0 {
			pr.value[k] = toWhole(prices[row])
		}
	}
	for i := range pr.extra {
		pr.extra[i] = 0
		if row := r.limitRow[i]; row >= 0 {
			pr.extra[i] = toWhole(prices[row])
		}
		if row := r.leastRow[i]; row >= 0 {
			pr.extra[i] -= toWhole(prices[row])
		}
	}
	pr.found = pr.found[:0]
	copy(pr.most, r.left)
	for pass := range pr.packs {
		ok := pr.pass(r, pass == 0, meter)
		if !ok {
			return pass > 0
		}
		if len(pr.found) == 0 || pr.branches() {
			break
		}
		if !pr.exclude() {
			break
		}
	}
	pr.estimate(r)
	return true
}

// exclude takes the pieces of the last found pattern out of what is to be had,
// so that the next pattern complements it.
func (pr *pricing) exclude() bool {
	left := false
	for _, e := range pr.found[len(pr.found)-1].use {
		pr.most[e.kind] = max(0, pr.most[e.kind]-e.n)
	}
	for k, n := range pr.most {
		left = left || n > 0 && pr.value[k] > 0
	}
	return left
}

// pass looks for one pattern for each kind of board and keeps those that are
// worth more than they cost; the first pass also notes the worths.
func (pr *pricing) pass(r *relaxation, first bool, meter *work.Meter) bool {
	branches := pr.branches()
	if !branches && !pr.table.run(pr.m, pr.value, pr.most, pr.m.top(), meter) {
		return false
	}
	var best *pattern
	var bestGain int64
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if r.box.hi[i] == 0 {
			pr.worth[i] = 0
			continue
		}
		var worth, held int64
		segs := make([][]entry, len(t.caps))
		for s := range t.caps {
			if branches {
				seg, v, ok := pr.tree.run(pr.m, pr.value, pr.most, t.wide[s], meter)
				if !ok {
					return false
				}
				segs[s] = seg
				worth += v
				if t.wide[s] != t.caps[s] {
					segs[s], v, _ = pr.tree.run(pr.m, pr.value, pr.most, t.caps[s], meter)
				}
				held += v
				continue
			}
			worth += pr.table.profit[t.wide[s]]
			held += pr.table.profit[t.caps[s]]
		}
		if first {
			pr.worth[i] = worth
		}
		gain := held - t.cost*pr.scale - pr.extra[i]
		if gain <= 0 {
			continue
		}
		if !branches {
			for s, room := range t.caps {
				segs[s] = pr.table.at(room)
			}
		}
		p := pr.m.clamp(newPattern(i, segs), r.left)
		if p = pr.m.feedable(p); p == nil {
			continue
		}
		if first {
			pr.found = append(pr.found, p)
		}
		if best == nil || gain > bestGain {
			best, bestGain = p, gain
		}
	}
	if best != nil && !first {
		pr.found = append(pr.found, best)
	}
	if best != nil && first {
		// The best one last: the next pass complements it.
		at := slices.Index(pr.found, best)
		pr.found[at], pr.found[len(pr.found)-1] = pr.found[len(pr.found)-1], best
	}
	return true
}

// clamp takes out what a board in several clear lengths would hold too often.
func (m *model) clamp(p *pattern, left []int) *pattern {
	for _, e := range p.use {
		for n := e.n; n > left[e.kind]; n-- {
			p = p.without(e.kind)
		}
	}
	return p
}
