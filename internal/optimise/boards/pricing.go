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
	// exact says that the worths of the last run are proved.
	exact bool
	dense bool // tables are large
	prove bool // seek what proves that nothing is left to be found, at any price
}

func newPricing(m *model) *pricing {
	pr := &pricing{
		m: m, value: make([]int64, len(m.kinds)), extra: make([]int64, len(m.stock)),
		worth: make([]int64, len(m.stock)), most: make([]int, len(m.kinds)), best: -1, prove: true,
	}
	pr.scale = max(1, (1<<34)/m.dearest())
	return pr
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
	pr.exact, pr.better = false, false
	pr.dense = int64(len(r.rows))*pr.m.top() > denseTable
	switch {
	case !pr.dense:
		if !pr.passes(r, byTable, 3, meter) {
			return false
		}
		pr.exact = true
	case !pr.passes(r, quickly, 40, meter):
		return false
	case len(pr.found) < 3 && pr.prove:
		pr.found = pr.found[:0]
		way := byTable
		if pr.m.top() >= maxStates {
			way = fully
		}
		if !pr.passes(r, way, 1, meter) {
			return false
		}
		pr.exact = true
		if way == byTable {
			pr.withEach(r)
		}
	}
	if pr.exact {
		pr.estimate(r)
	}
	return true
}

// way is how the pattern that is worth most is sought.
type way int

const (
	byTable way = iota // exactly, for all lengths at once
	fully              // exactly, depth first
	quickly            // depth first, giving up early
)

// denseTable is the size of a table from which on it is filled only to prove
// that nothing more is to be found.
const denseTable = 1_000_000

// quickNodes bounds a quick search.
const quickNodes = 20_000

// passes looks for patterns again and again, each time without the pieces of
// the last one, so that they complement each other.
func (pr *pricing) passes(r *relaxation, w way, most int, meter *work.Meter) bool {
	copy(pr.most, r.left)
	for n := range most {
		had := len(pr.found)
		if !pr.pass(r, w, n == 0, meter) {
			return n > 0 && !meter.Stopped()
		}
		if len(pr.found) == had || !pr.exclude() {
			break
		}
	}
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
// worth more than they cost: all of them in the first pass, which also notes the
// worths, later the best.
func (pr *pricing) pass(r *relaxation, w way, first bool, meter *work.Meter) bool {
	if w == byTable && !pr.table.run(pr.m, pr.value, pr.most, pr.m.top(), meter) {
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
		price := t.cost*pr.scale + pr.extra[i]
		segs, worth, held := pr.fill(t, w, price, meter)
		if meter.Ended() {
			return false
		}
		if first {
			pr.worth[i] = worth
		}
		if held <= price {
			continue
		}
		p := pr.m.feedable(pr.m.clamp(newPattern(i, segs), r.left))
		if p == nil {
			continue
		}
		if first {
			pr.found = append(pr.found, p)
		}
		if best == nil || held-price > bestGain {
			best, bestGain = p, held-price
		}
	}
	switch {
	case best == nil:
	case first:
		// The best one last: the next pass complements it.
		at, last := slices.Index(pr.found, best), len(pr.found)-1
		pr.found[at], pr.found[last] = pr.found[last], best
	default:
		pr.found = append(pr.found, best)
	}
	return true
}

// fill returns the pieces for each clear length of a board, their greatest worth
// without regard to wide kerfs, and their worth.
func (pr *pricing) fill(t *stock, w way, price int64, meter *work.Meter) (segs [][]entry, worth, held int64) {
	segs = make([][]entry, len(t.caps))
	limit := int64(quickNodes)
	if w == fully {
		limit = 1 << 62
	}
	for s := range t.caps {
		if w == byTable {
			worth += pr.table.profit[t.wide[s]]
			held += pr.table.profit[t.caps[s]]
			continue
		}
		seg, v, _ := pr.tree.run(pr.m, pr.value, pr.most, t.wide[s], limit, meter)
		worth += v
		if t.wide[s] != t.caps[s] {
			seg, v, _ = pr.tree.run(pr.m, pr.value, pr.most, t.caps[s], limit, meter)
		}
		segs[s] = seg
		held += v
	}
	if w == byTable && held > price {
		for s, room := range t.caps {
			segs[s] = pr.table.at(room)
		}
	}
	return segs, worth, held
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

// withEach adds, out of the last table, the patterns that are worth most among
// those that hold a given kind, for every kind: the table tells the worth of the
// rest of the board.
func (pr *pricing) withEach(r *relaxation) {
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if len(t.caps) > 1 || r.box.hi[i] == 0 {
			continue
		}
		price := t.cost*pr.scale + pr.extra[i]
		for _, k := range r.rows {
			rest := t.caps[0] - pr.m.kinds[k].w
			if rest < 0 || pr.value[k]+pr.table.profit[rest] <= price {
				continue
			}
			p := newPattern(i, [][]entry{append(pr.table.at(rest), entry{k, 1})})
			if p = pr.m.feedable(pr.m.clamp(p, r.left)); p != nil {
				pr.found = append(pr.found, p)
			}
		}
	}
}
