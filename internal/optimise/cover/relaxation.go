package cover

import (
	"maps"
	"slices"

	"scantling/internal/optimise/lp"
	"scantling/internal/optimise/work"
)

// relaxation is the linear program over patterns for what is left to cut.
type relaxation struct {
	p        *Problem
	left     []int
	box      box
	rows     []int // kinds with something left
	rowOf    []int // by kind, -1: none
	limitRow []int // by stock, -1: none
	leastRow []int // by stock, -1: none
	cuts     []Cut
	cutRow   []int // by cut
	together [][]int
	apart    [][2]int
	program  *lp.Program
	columns  []*Pattern // nil for the program's own
	unit     float64    // cost that counts as 1
	prices   *pricing
	has      map[*Pattern]bool
}

// newRelaxation begins with patterns of one kind each and those of the pool
// that make nothing too often. Its building is counted too.
func newRelaxation(p *Problem, left []int, b box, cuts []Cut, known *pool, pr *pricing, meter *work.Meter) *relaxation {
	r := &relaxation{
		p: p, left: left, box: b, prices: pr, has: map[*Pattern]bool{},
		rowOf: make([]int, len(p.Demand)), limitRow: make([]int, len(p.Stock)), leastRow: make([]int, len(p.Stock)),
	}
	var demand []float64
	for k, n := range left {
		r.rowOf[k] = -1
		if n > 0 {
			r.rowOf[k] = len(r.rows)
			r.rows = append(r.rows, k)
			demand = append(demand, float64(n))
		}
	}
	for i := range p.Stock {
		r.limitRow[i], r.leastRow[i] = -1, -1
		if b.hi[i] < Plenty {
			r.limitRow[i] = len(demand)
			demand = append(demand, -float64(b.hi[i]))
		}
		if b.lo[i] > 0 {
			r.leastRow[i] = len(demand)
			demand = append(demand, float64(b.lo[i]))
		}
	}
	for _, c := range cuts {
		r.cuts = append(r.cuts, c)
		r.cutRow = append(r.cutRow, len(demand))
		demand = append(demand, -float64(c.most(left)))
	}
	r.unit = float64(p.dearest())
	r.program = lp.New(demand)
	meter.Take(int64(len(demand)) * int64(len(demand)))
	for _, k := range r.rows {
		if p := r.uniform(k); p != nil {
			r.add(p)
		}
	}
	for p := range known.all() {
		if meter.Take(int64(len(p.Use))) && r.proper(p) && meter.Take(int64(4*len(p.Use)+len(cuts))) {
			r.add(p)
		}
	}
	r.program.Start()
	return r
}

// uniform returns the cheapest pattern on stock free of limits that holds pieces
// of kind k alone.
func (r *relaxation) uniform(k int) *Pattern {
	var best *Pattern
	for i, s := range r.p.Stock {
		if r.box.hi[i] < Plenty || r.box.lo[i] > 0 || best != nil && s.Cost >= r.p.Stock[best.Stock].Cost {
			continue
		}
		if p := r.prices.oracle.Uniform(i, k, r.left[k]); p != nil {
			best = p
		}
	}
	return best
}

// proper says whether a pattern may be cut at least once.
func (r *relaxation) proper(p *Pattern) bool {
	if r.box.hi[p.Stock] == 0 {
		return false
	}
	return !slices.ContainsFunc(p.Use, func(e Entry) bool { return e.N > r.left[e.Kind] })
}

func (r *relaxation) add(p *Pattern) {
	entries := make([]lp.Entry, 0, len(p.Use)+1)
	for _, e := range p.Use {
		entries = append(entries, lp.Entry{Row: r.rowOf[e.Kind], Value: float64(e.N)})
	}
	if row := r.limitRow[p.Stock]; row >= 0 {
		entries = append(entries, lp.Entry{Row: row, Value: -1})
	}
	if row := r.leastRow[p.Stock]; row >= 0 {
		entries = append(entries, lp.Entry{Row: row, Value: 1})
	}
	for i, c := range r.cuts {
		if n := c.Sets(p); n > 0 {
			entries = append(entries, lp.Entry{Row: r.cutRow[i], Value: -float64(n)})
		}
	}
	r.has[p] = true
	j := r.program.Add(float64(r.p.Stock[p.Stock].Cost)/r.unit, entries)
	for len(r.columns) < j {
		r.columns = append(r.columns, nil) // helpers of the program
	}
	r.columns = append(r.columns, p)
}

// smoothing is how much of the prices is taken from a centre: those that proved
// most, or where nothing is proved the last.
const smoothing = 0.3

// generate solves the relaxation by adding patterns until none improves it, for
// at most rounds. After each pricing, bounded is told the prices and what was
// found, and may end the work by returning false. It returns whether the
// optimum was reached.
func (r *relaxation) generate(known *pool, rounds int, meter *work.Meter, bounded func(*pricing) bool) bool {
	smooth := smoothing
	var centre []float64
	for range rounds {
		if !r.program.Solve(meter) {
			return false
		}
		if v := r.program.Worth(); r.prices.slow && r.prices.best > 0 && r.p.ceil(r.prices.best) >= r.p.ceil(v*r.unit) {
			return true // rounded up, the bound cannot rise
		}
		prices := r.program.Prices()
		mixed := prices
		if centre != nil && smooth > 0 {
			mixed = make([]float64, len(prices))
			for i := range prices {
				mixed[i] = float64(smooth*centre[i]) + float64((1-smooth)*prices[i])
			}
		}
		improved, ok := r.price(mixed, known, meter)
		if !ok {
			return false
		}
		if r.prices.better || !r.prices.exact {
			centre = slices.Clone(mixed)
		}
		if bounded != nil && !bounded(r.prices) {
			return false
		}
		if improved > 0 {
			continue
		}
		if centre == nil || smooth == 0 {
			return true
		}
		// The mixed prices found nothing: look at the true ones.
		if smooth -= 0.3; smooth < 0.1 {
			smooth = 0
		}
		centre = slices.Clone(mixed)
	}
	return false
}

// price looks for patterns that cost less than the prices of what they hold and
// adds them. It returns how many improve the program at its own prices.
func (r *relaxation) price(prices []float64, known *pool, meter *work.Meter) (int, bool) {
	if !r.prices.run(r, prices, meter) {
		return 0, false
	}
	improved := 0
	for _, p := range r.prices.found {
		if p = known.add(p); r.has[p] {
			continue
		}
		r.add(p)
		if r.program.Reduced(r.program.Len()-1) < -1e-8 {
			improved++
		}
	}
	return improved, true
}

// reduce takes over what is left after some boards were fixed. It returns false
// when a fresh relaxation is better.
func (r *relaxation) reduce(left []int, b box) bool {
	live := 0
	for _, k := range r.rows {
		if left[k] > 0 {
			live++
		}
	}
	if live*10 < len(r.rows)*7 {
		return false
	}
	for i := range b.hi {
		if r.leastRow[i] >= 0 && b.lo[i] == 0 || r.limitRow[i] >= 0 && b.hi[i] == 0 {
			return false
		}
	}
	r.shrink(left, b)
	return true
}

// shrink changes the demands and bars the patterns that now make too much.
func (r *relaxation) shrink(left []int, b box) {
	r.left, r.box = left, b
	for row, k := range r.rows {
		r.program.SetDemand(row, float64(left[k]))
	}
	for i := range b.hi {
		if row := r.limitRow[i]; row >= 0 {
			r.program.SetDemand(row, -float64(b.hi[i]))
		}
		if row := r.leastRow[i]; row >= 0 {
			r.program.SetDemand(row, float64(b.lo[i]))
		}
	}
	for i, c := range r.cuts {
		r.program.SetDemand(r.cutRow[i], -float64(c.most(left)))
	}
	for j, p := range r.columns {
		if p != nil && !r.program.Barred(j) && !r.proper(p) {
			r.program.Bar(j)
		}
	}
	r.program.Restart()
}

// clone returns a relaxation that can be changed on its own.
func (r *relaxation) clone() *relaxation {
	c := *r
	c.program = r.program.Clone()
	c.columns = slices.Clone(r.columns)
	c.has = maps.Clone(r.has)
	return &c
}
