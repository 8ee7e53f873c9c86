package cover

import (
	"math"
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/work"
)

// dive rounds the relaxation to whole boards step by step, pricing new patterns
// for what is left at every step.
type dive struct {
	p      *Problem
	oracle Oracle
	known  *pool
	meter  *work.Meter
	bound  int64
	best   int64 // cost to beat
	found  []Use
	r      *rand.Rand
	wild   bool
	tries  uint64 // dives made here before
	cuts   []Cut

	left    []int
	box     box
	relaxed *relaxation
	uses    []Use
	cost    int64
	steps   int
}

func (d *dive) run() {
	pr := newPricing(d.p, d.oracle)
	pr.prove = false
	d.steps = diveSteps
	d.descend(pr)
}

// diveRounds bounds the pricings of one step, diveSteps the steps of one dive.
const (
	diveRounds = 60
	diveSteps  = 100
)

// descend solves the relaxation of what is left, fixes boards and goes on from
// there; where that fails it tries the next most promising board instead. It
// returns true when the dive is over.
func (d *dive) descend(pr *pricing) bool {
	if d.steps--; d.steps < 0 || d.best <= d.bound {
		return true
	}
	r := d.relax(pr)
	if r == nil {
		return d.meter.Ended()
	}
	x := r.program.Amounts()
	order := r.byAmount(x)
	before := d.state()
	if d.whole(r, order, x) {
		if d.close() || d.descend(pr) {
			return true
		}
		d.restore(before)
		return false
	}
	choices := d.choices(order, x)
	for n, j := range choices {
		d.relaxed = r
		if n+1 < len(choices) {
			d.relaxed = r.clone()
		}
		if d.take(r.columns[j], 1) && (d.close() || d.descend(pr)) {
			return true
		}
		d.restore(before)
	}
	return false
}

// relax returns the solved relaxation of what is left, or nil if no plan cheaper
// than the best is to be found below here.
func (d *dive) relax(pr *pricing) *relaxation {
	pr.best = -1
	if d.relaxed == nil || !d.relaxed.reduce(d.left, d.box) {
		d.relaxed = newRelaxation(d.p, d.left, d.box, d.cuts, d.known, pr, d.meter)
	}
	r := d.relaxed
	hopeless := false
	r.generate(d.known, diveRounds, d.meter, func(pr *pricing) bool {
		// What is left costs at least this: no cheaper plan lies below here.
		hopeless = pr.exact && d.cost+d.p.ceil(pr.bound) >= d.best
		return !hopeless
	})
	if hopeless || d.meter.Ended() || d.cost+d.p.ceil(r.program.Worth()*r.unit) >= d.best {
		return nil
	}
	return r
}

// state is where a dive stands.
type state struct {
	left []int
	box  box
	uses int
	cost int64
}

func (d *dive) state() state {
	return state{slices.Clone(d.left), d.box.clone(), len(d.uses), d.cost}
}

func (d *dive) restore(s state) {
	d.left, d.box = slices.Clone(s.left), s.box.clone()
	d.uses, d.cost = d.uses[:s.uses], s.cost
}

// whole fixes the whole part of every amount, in some dives only of some, and
// returns whether there was any.
func (d *dive) whole(r *relaxation, order []int, x []float64) bool {
	some := false
	for _, j := range order {
		n := int(x[j] + 1e-4)
		if n == 0 || some && d.tries%4 == 3 && d.r.IntN(2) == 0 {
			continue
		}
		some = d.take(r.columns[j], n) || some
	}
	return some
}

// choices returns the boards to try where no amount is whole: the largest
// amount, in a wild dive now and then not the very largest, in some dives the
// second too.
func (d *dive) choices(order []int, x []float64) []int {
	if d.wild {
		for len(order) > 1 && x[order[1]] > 0.2 && d.r.IntN(4) == 0 {
			order = order[1:]
		}
	}
	if d.tries%4 == 2 {
		return order[:min(len(order), 2)]
	}
	return order[:min(len(order), 1)]
}

// ceil returns the least total cost that is not below c, give or take a hair.
func (p *Problem) ceil(c float64) int64 {
	return int64(math.Ceil(c/float64(p.Step)-1e-6)) * p.Step
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
func (d *dive) take(p *Pattern, n int) bool {
	n = min(n, p.Times(d.left), d.box.hi[p.Stock])
	if n == 0 {
		return false
	}
	for _, e := range p.Use {
		d.left[e.Kind] -= e.N * n
	}
	if d.box.hi[p.Stock] < Plenty {
		d.box.hi[p.Stock] -= n
	}
	d.box.lo[p.Stock] = max(0, d.box.lo[p.Stock]-n)
	d.uses = append(d.uses, Use{p, n})
	d.cost += d.p.Stock[p.Stock].Cost * int64(n)
	return true
}

// close tries to complete the plan by quick means and by trying everything. It
// returns true when nothing more is to be sought below here.
func (d *dive) close() bool {
	for variant := range d.oracle.Means() {
		uses, cost, ok := d.oracle.Complete(variant, d.left, d.box.hi, d.best-d.cost, d.meter)
		if ok && d.cost+cost < d.best {
			d.offer(uses, cost)
		}
		if d.best <= d.bound {
			return true
		}
	}
	uses, cost, ok := d.oracle.Finish(d.left, d.box.hi, d.best-d.p.Step-d.cost, int(min(1+d.tries, 40)), d.meter)
	if uses != nil && d.cost+cost < d.best {
		d.offer(uses, cost)
	}
	return ok || d.meter.Ended()
}

func (d *dive) offer(uses []Use, cost int64) {
	d.best = d.cost + cost
	d.found = append(slices.Clone(d.uses), uses...)
}
