package cover

import (
	"scantling/internal/optimise/work"
)

// pricing asks the oracle at given prices, in whole numbers, so that what it
// answers also proves a bound.
type pricing struct {
	p      *Problem
	oracle Oracle
	scale  int64   // one unit of cost in these numbers
	value  []int64 // price of each kind
	price  []int64 // of each stock: its cost and the prices of its limits
	cuts   []Cut   // those with a price
	found  []*Pattern
	worth  []int64 // by stock, as the oracle answers
	exact  bool
	slow   bool
	prove  bool    // ask for proofs
	bound  float64 // estimate of what these prices prove, in cost
	best   float64 // the greatest such estimate
	better bool    // bound is the greatest so far
	// scaleAll chooses between two ways to a bound, see scales.
	scaleAll bool
}

func newPricing(p *Problem, oracle Oracle) *pricing {
	return &pricing{
		p: p, oracle: oracle, value: make([]int64, len(p.Demand)), price: make([]int64, len(p.Stock)),
		best: -1, prove: true, scale: max(1, (1<<34)/p.dearest()),
	}
}

// run asks for patterns at the given prices of the program's rows.
func (pr *pricing) run(r *relaxation, prices []float64, meter *work.Meter) bool {
	// A piece is worth at most what it costs to leave it out. A cut may cost as
	// much as several pieces.
	ceiling := pr.p.dearest() * pr.scale * 1024
	bounded := func(y float64, ceiling int64) int64 {
		return max(0, min(ceiling, int64(min(y*r.unit*float64(pr.scale), 1e18))))
	}
	whole := func(y float64) int64 { return bounded(y, ceiling) }
	for k := range pr.value {
		pr.value[k] = 0
		if row := r.rowOf[k]; row >= 0 {
			pr.value[k] = whole(prices[row])
		}
	}
	for i := range pr.price {
		pr.price[i] = pr.p.Stock[i].Cost * pr.scale
		if row := r.limitRow[i]; row >= 0 {
			pr.price[i] += whole(prices[row])
		}
		if row := r.leastRow[i]; row >= 0 {
			pr.price[i] -= whole(prices[row])
		}
	}
	pr.cuts = pr.cuts[:0]
	for i, c := range r.cuts {
		if c.Price = bounded(prices[r.cutRow[i]], 16*ceiling); c.Price > 0 {
			pr.cuts = append(pr.cuts, c)
		}
	}
	reply, ok := pr.oracle.Price(Ask{Left: r.left, Stock: r.box.hi, Value: pr.value, Price: pr.price, Cuts: pr.cuts, Together: r.together, Apart: r.apart, Prove: pr.prove}, meter)
	if !ok {
		return false
	}
	pr.found, pr.worth, pr.exact, pr.slow = reply.Found, reply.Worth, reply.Exact, reply.Slow
	pr.better = false
	if pr.exact {
		pr.estimate(r)
	}
	return true
}
