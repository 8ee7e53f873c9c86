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
		d.relaxed = newRelaxation(d.m, d.left, d.box, d.known, pr)
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
		if n := int(x[j] + 1e-4); n > 0 && d.take(r.columns[j], n) {
			some = true
		}
	}
	if some {
		return true
	}
	if d.wild {
		// Now and then another than the largest.
		for len(order) > 1 && x[order[1]] > 0.2 && d.r.IntN(4) == 0 {
			order = order[1:]
		}
	}
	for _, j := range order {
		if d.take(r.columns[j], 1) {
			return true
		}
	}
	return false
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
