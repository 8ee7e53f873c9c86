package boards

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// improve proves a bound by column generation and looks for cheaper plans by
// diving, until the plan meets the bound or the meter ends.
func (s *search) improve(workers int) {
	if s.done() {
		return
	}
	known := newPool()
	for _, u := range s.best.uses {
		known.add(u.p)
	}
	if !s.root(known) || s.done() {
		return
	}
	for round := uint64(0); !s.done() && !s.meter.Ended(); round++ {
		s.round(known, round, workers)
		if s.fruitless(round) {
			return
		}
	}
}

// maxRounds bounds the restarts.
const maxRounds = 400

func (s *search) fruitless(round uint64) bool { return round >= maxRounds }

// root solves the relaxation of the whole problem.
func (s *search) root(known *pool) bool {
	left, stockLeft := s.m.demand()
	pr := newPricing(s.m)
	r := newRelaxation(s.m, left, stockLeft, known, pr)
	bounded := func(pr *pricing) bool {
		if pr.better && pr.bound > float64(s.bound)+1e-7 {
			if b := pr.proves(left, stockLeft); b > s.bound {
				s.raise(b, problem.ByColumns)
			}
		}
		return !s.done()
	}
	r.generate(known, math.MaxInt, s.meter, bounded)
	return true
}

// round makes two dives side by side, each with work and patterns of its own,
// and takes what they found in order.
func (s *search) round(known *pool, round uint64, workers int) {
	var dives [2]*dive
	share := max(1, s.meter.Left()/2)
	for i := range dives {
		own := &pool{patterns: slices.Clone(known.patterns), seen: map[string]bool{}}
		for k := range known.seen {
			own.seen[k] = true
		}
		n := 2*round + uint64(i)
		dives[i] = &dive{
			m: s.m, known: own, meter: s.meter.Split(share), bound: s.bound, best: s.best.cost,
			r: rand.New(rand.NewPCG(n, 0x5ca47)), wild: n > 0, number: n,
		}
	}
	if workers > 1 {
		var wg sync.WaitGroup
		for _, d := range dives {
			wg.Go(d.run)
		}
		wg.Wait()
	} else {
		for _, d := range dives {
			d.run()
		}
	}
	for _, d := range dives {
		s.meter.Join(d.meter)
		if d.found != nil {
			s.offer(d.found, d.best)
		}
		for _, p := range d.fresh {
			known.add(p)
		}
	}
}

// dive rounds the relaxation to whole boards step by step, pricing new patterns
// for what is left at every step.
type dive struct {
	m      *model
	known  *pool
	meter  *work.Meter
	bound  int64
	best   int64 // cost to beat
	found  []use
	fresh  []*pattern
	r      *rand.Rand
	wild   bool
	number uint64

	left, stockLeft []int
	uses            []use
	cost            int64
}

// freshKept bounds the patterns that a dive hands back.
const freshKept = 400

func (d *dive) run() {
	d.left, d.stockLeft = d.m.demand()
	had := len(d.known.patterns)
	pr := newPricing(d.m)
	for first(d.left) >= 0 && d.best > d.bound {
		if !d.step(pr) {
			break
		}
	}
	if first(d.left) < 0 && d.cost < d.best {
		d.best, d.found = d.cost, d.uses
	}
	d.fresh = d.known.patterns[had:]
	if len(d.fresh) > freshKept {
		d.fresh = d.fresh[:freshKept]
	}
}

// step solves the relaxation of what is left, fixes some boards and tries to
// complete the plan. It returns false when the dive is over.
func (d *dive) step(pr *pricing) bool {
	pr.best = -1
	r := newRelaxation(d.m, d.left, d.stockLeft, d.known, pr)
	hopeless := false
	optimal := r.generate(d.known, 60, d.meter, func(pr *pricing) bool {
		// What is left costs at least this: no cheaper plan lies below here.
		hopeless = d.cost+d.m.ceil(pr.bound) >= d.best
		return !hopeless
	})
	if hopeless || d.meter.Ended() {
		return false
	}
	_ = optimal
	if !d.fix(r) {
		return false
	}
	d.close()
	return !d.meter.Ended()
}

// ceil returns the least total cost that is not below c, give or take a hair.
func (m *model) ceil(c float64) int64 {
	return int64(math.Ceil(c/float64(m.step)-1e-6)) * m.step
}

// fix takes the whole part of every amount; where there is none, the most
// promising board.
func (d *dive) fix(r *relaxation) bool {
	x := r.program.Amounts()
	some := false
	for _, j := range byAmount(x) {
		if n := int(x[j] + 1e-4); n > 0 && d.take(r.columns[j], n) {
			some = true
		}
	}
	if some {
		return true
	}
	order := byAmount(x)
	if d.wild && len(order) > 1 {
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
func byAmount(x []float64) []int {
	var order []int
	for j, v := range x {
		if v > 1e-4 {
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
	n = min(n, p.times(d.left))
	if d.m.stock[p.stock].limit > 0 {
		n = min(n, d.stockLeft[p.stock])
	}
	if n == 0 {
		return false
	}
	for _, e := range p.use {
		d.left[e.kind] -= e.n * n
	}
	if d.m.stock[p.stock].limit > 0 {
		d.stockLeft[p.stock] -= n
	}
	d.uses = append(d.uses, use{p, n})
	d.cost += d.m.stock[p.stock].cost * int64(n)
	return true
}

// close completes the plan by filling boards.
func (d *dive) close() {
	for _, f := range []filler{{exact: true, forced: true}, {exact: true}} {
		f.m, f.meter = d.m, d.meter
		uses, cost, ok := f.complete(d.left, d.stockLeft, d.best-d.cost)
		if ok && d.cost+cost < d.best {
			d.best = d.cost + cost
			d.found = append(slices.Clone(d.uses), uses...)
		}
		if d.best <= d.bound {
			return
		}
	}
}
