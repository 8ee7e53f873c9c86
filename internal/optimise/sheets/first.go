package sheets

import "slices"

// complete cuts all that is left, sheet after sheet, each on the stock that
// costs least per worth, and returns the uses and their cost, or false when the
// limited sheets do not suffice or the cost reaches most.
func (f *filler) complete(left, stockLeft []int, most int64) ([]use, int64, bool) {
	left, stockLeft = slices.Clone(left), slices.Clone(stockLeft)
	var uses []use
	var cost int64
	for slices.ContainsFunc(left, func(n int) bool { return n > 0 }) {
		p := f.best(left, stockLeft)
		if p == nil {
			return nil, 0, false
		}
		n := p.times(left)
		t := &f.m.stock[p.stock]
		if t.limit > 0 {
			n = min(n, stockLeft[p.stock])
			stockLeft[p.stock] -= n
		}
		for _, e := range p.use {
			left[e.kind] -= e.n * n
		}
		uses = append(uses, use{p, n})
		if cost += t.cost * int64(n); cost >= most {
			return nil, 0, false
		}
	}
	return uses, cost, true
}

// best returns the filled sheet that costs least for what it holds; a cheaper
// one that holds all that is left comes before everything.
func (f *filler) best(left, stockLeft []int) *pattern {
	total := 0
	for _, n := range left {
		total += n
	}
	var best *pattern
	var bestAll bool
	for i := range f.m.stock {
		t := &f.m.stock[i]
		if t.limit > 0 && stockLeft[i] == 0 {
			continue
		}
		p := f.sheet(i, left)
		if p == nil {
			continue
		}
		held := 0
		for _, e := range p.use {
			held += e.n
		}
		all := held == total
		if best == nil || f.better(p, all, best, bestAll) {
			best, bestAll = p, all
		}
	}
	return best
}

func (f *filler) better(p *pattern, all bool, best *pattern, bestAll bool) bool {
	a, b := f.m.stock[p.stock].cost, f.m.stock[best.stock].cost
	if all != bestAll {
		return all
	}
	if all {
		return a < b
	}
	x, y := float64(a)*float64(best.worth), float64(b)*float64(p.worth)
	return x < y || x == y && p.worth > best.worth
}
