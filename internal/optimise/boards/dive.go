package boards

import (
	"math"
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/work"
)

// dive rounds the relaxation to whole boards step by step, pricing new patterns
// for what is left at every step.
type dive struct {
	m     *model
	known *pool
	meter *work.Meter
	bound int64
	best  int64 // cost to beat
	found []use
	r     *rand.Rand
	wild  bool
	tries uint64 // dives made here before

	left    []int
	box     box
	relaxed *relaxation
	uses    []use
	cost    int64
}

func (d *dive) run() {
	pr := newPricing(d.m)
	for first(d.left) >= 0 && d.best > d.bound {
		if !d.step(pr) {
			break
		}
	}
	if first(d.left) < 0 && d.cost < d.best {
		d.best, d.found = d.cost, d.uses
	}
}

// diveRounds bounds the pricings of one step.
const diveRounds = 60

// step solves the relaxation of what is left, fixes some boards and tries to
// complete the plan. It returns false when the dive is over.
func (d *dive) step(pr *pricing) bool {
	pr.best = -1
	if d.relaxed == nil || !d.relaxed.reduce(d.left, d.box) {
		var skip *rand.Rand
		if d.wild {
			skip = d.r
		}
		d.relaxed = newRelaxation(d.m, d.left, d.box, d.known, pr, skip)
	}
	r := d.relaxed
	hopeless := false
	r.generate(d.known, diveRounds, d.meter, func(pr *pricing) bool {
		// What is left costs at least this: no cheaper plan lies below here.
		hopeless = d.cost+d.m.ceil(pr.bound) >= d.best
		return !hopeless
	})
	if hopeless || d.meter.Ended() || !d.fix(r) {
		return false
	}
	return !d.close()
}

// ceil returns the least total cost that is not below c, give or take a hair.
func (m *model) ceil(c float64) int64 {
	return int64(math.Ceil(c/float64(m.step)-1e-6)) * m.step
}

// fix takes the whole part of every amount; where there is none, the most
// promising board.
func (d *dive) fix(r *relaxation) bool {
	x := r.program.Amounts()
	order := r.byAmount(x)
	some := false
	for _, j := range order {
		n := int(x[j] + 1e-4)
		if n == 0 || some && d.wild && d.r.IntN(2) == 0 {
			continue // a wild dive leaves some of them to the next step
		}
		some = d.take(r.columns[j], n) || some
	}
	if some {
		return true
	}
	order = d.ahead(r, order, x)
	for _, j := range order {
		if d.take(r.columns[j], 1) {
			return true
		}
	}
	return false
}

// ahead looks one step ahead: it tries out the most promising boards and puts
// first the one after which the relaxation costs least.
func (d *dive) ahead(r *relaxation, order []int, x []float64) []int {
	if d.wild {
		// Now and then another than the largest.
		for len(order) > 1 && x[order[1]] > 0.2 && d.r.IntN(4) == 0 {
			order = order[1:]
		}
	}
	most := 1
	if d.wild {
		most = 1 + int(d.tries%4)
	}
	best, at := math.Inf(1), 0
	for i, j := range order[:min(most, len(order))] {
		if most == 1 || i > 0 && x[j] < 0.3 {
			break
		}
		if v, ok := d.after(r, r.columns[j]); ok && v < best-1e-7 {
			best, at = v, i
		}
	}
	if at > 0 {
		order = slices.Clone(order)
		order[0], order[at] = order[at], order[0]
	}
	return order
}

// after returns the cost of the relaxation, over the patterns it has, when one
// board of pattern p is fixed.
func (d *dive) after(r *relaxation, p *pattern) (float64, bool) {
	if p.times(d.left) == 0 || !d.meter.Take(int64(len(r.rows))*int64(len(r.rows))) {
		return 0, false
	}
	trial := *r
	trial.program = r.program.Clone()
	trial.columns = slices.Clone(r.columns)
	left := slices.Clone(d.left)
	for _, e := range p.use {
		left[e.kind] -= e.n
	}
	trial.shrink(left, d.box)
	if !trial.program.Solve(d.meter) {
		return 0, false
	}
	v, _ := trial.program.Value()
	return v, true
}

// byAmount returns the columns with an amount, largest first.
func (r *relaxation) byAmount(x []float64) []int {
	var order []int
	for j, v := range x {
		if v > 1e-4 && j < len(r.columns) && r.columns[j] != nil && !r.program.Barred(j) {
			order = append(order, j)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case x[a] > x[b]:
			return -1
		case x[a] < x[b]:
			return 1
		}
		return 0
	})
	return order
}

// take cuts pattern p up to n times, as often as it makes nothing too often.
func (d *dive) take(p *pattern, n int) bool {
	n = min(n, p.times(d.left), d.box.hi[p.stock])
	if n == 0 {
		return false
	}
	for _, e := range p.use {
		d.left[e.kind] -= e.n * n
	}
	if d.box.hi[p.stock] < plenty {
		d.box.hi[p.stock] -= n
	}
	d.box.lo[p.stock] = max(0, d.box.lo[p.stock]-n)
	d.uses = append(d.uses, use{p, n})
	d.cost += d.m.stock[p.stock].cost * int64(n)
	return true
}

// close tries to complete the plan by filling boards, and by trying out the
// last few. It returns true when nothing more is to be sought below here.
func (d *dive) close() bool {
	for _, f := range []filler{{exact: true, forced: true}, {exact: true}} {
		f.m, f.meter = d.m, d.meter
		uses, cost, ok := f.complete(d.left, d.box.hi, d.best-d.cost)
		if ok && d.cost+cost < d.best {
			d.offer(uses, cost)
		}
		if d.best <= d.bound {
			return true
		}
	}
	e := newEnding(d.m, d.left, d.box.hi, d.best-d.m.step-d.cost, d.meter)
	e.most = int(min(endingNodes*max(1, d.tries), 40*endingNodes))
	uses, cost, ok := e.run()
	if uses != nil {
		d.offer(uses, cost)
	}
	return ok || d.meter.Ended()
}

func (d *dive) offer(uses []use, cost int64) {
	d.best = d.cost + cost
	d.found = append(slices.Clone(d.uses), uses...)
}
