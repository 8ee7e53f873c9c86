package sheets

import (
	"slices"

	"scantling/internal/optimise/cover"
)

// complete cuts all that is left, sheet after sheet, each on the stock that
// costs least per worth, and returns the uses and their cost, or false when the
// limited sheets do not suffice or the cost reaches most.
func (f *filler) complete(left, stockLeft []int, most int64) ([]cover.Use, int64, bool) {
	left, stockLeft = slices.Clone(left), slices.Clone(stockLeft)
	var uses []cover.Use
	var cost int64
	for slices.ContainsFunc(left, func(n int) bool { return n > 0 }) {
		if len(uses)&63 == 63 && f.meter.Cancelled() {
			return nil, 0, false
		}
		p := f.best(left, stockLeft)
		if p == nil {
			return nil, 0, false
		}
		n := p.Times(left)
		t := &f.m.stock[p.Stock]
		if stockLeft[p.Stock] < cover.Plenty {
			n = min(n, stockLeft[p.Stock])
			stockLeft[p.Stock] -= n
		}
		for _, e := range p.Use {
			left[e.Kind] -= e.N * n
		}
		uses = append(uses, cover.Use{Pattern: p, N: n})
		if cost += t.cost * int64(n); cost >= most {
			return nil, 0, false
		}
	}
	return uses, cost, true
}

// best returns the filled sheet that costs least for what it holds; a cheaper
// one that holds all that is left comes before everything.
func (f *filler) best(left, stockLeft []int) *cover.Pattern {
	total := 0
	for _, n := range left {
		total += n
	}
	var best *cover.Pattern
	var bestAll bool
	for i := range f.m.stock {
		if stockLeft[i] == 0 {
			continue
		}
		p := f.sheet(i, left)
		if p == nil {
			continue
		}
		held := 0
		for _, e := range p.Use {
			held += e.N
		}
		all := held == total
		if best == nil || f.better(p, all, best, bestAll) {
			best, bestAll = p, all
		}
	}
	return best
}

func (f *filler) better(p *cover.Pattern, all bool, best *cover.Pattern, bestAll bool) bool {
	a, b := f.m.stock[p.Stock].cost, f.m.stock[best.Stock].cost
	if all != bestAll {
		return all
	}
	if all {
		return a < b
	}
	pw, bw := worth(p, f.value), worth(best, f.value)
	x, y := float64(a)*float64(bw), float64(b)*float64(pw)
	return x < y || x == y && pw > bw
}
