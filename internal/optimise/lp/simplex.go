package lp

import "scantling/internal/optimise/work"

// tolerances of the method: for reduced costs, for pivots, for amounts.
const (
	reducedTol = 1e-9
	pivotTol   = 1e-8
	amountTol  = 1e-9
)

// rebuildEvery is the number of pivots after which the inverse is built afresh.
const rebuildEvery = 150

// Solve improves the basis until no column has a negative reduced cost. It
// returns false if the meter ends or the method stalls; the basis is then
// feasible all the same.
func (p *Program) Solve(meter *work.Meter) bool {
	m := len(p.demand)
	entries := int64(0)
	for _, c := range p.columns {
		entries += int64(len(c))
	}
	for range 200 + 60*m {
		if !meter.Take(entries + int64(len(p.columns)) + int64(m)) {
			return false
		}
		j, ok := p.entering()
		if !ok {
			return true
		}
		p.setDirection(j)
		r := p.leaving()
		if r < 0 {
			return false
		}
		if !meter.Take(int64(m)*int64(len(p.touched))/2 + int64(m)) {
			return false
		}
		p.pivot(r, j)
		if p.pivots >= rebuildEvery {
			if !meter.Take(int64(m) * int64(m) * int64(m) / 4) {
				return false
			}
			p.rebuild()
		}
	}
	return false
}

// entering returns the column or slack with the most negative reduced cost.
func (p *Program) entering() (int, bool) {
	best, at := -reducedTol, 0
	found := false
	for j := range p.columns {
		if p.inside[j] || p.barred[j] {
			continue
		}
		if r := p.Reduced(j); r < best {
			best, at, found = r, j, true
		}
	}
	for i, y := range p.price {
		if y < best {
			best, at, found = y, p.slack(i), true
		}
	}
	return at, found
}

// setDirection computes the inverse times column j.
func (p *Program) setDirection(j int) {
	clear(p.direction)
	if j < 0 {
		i := -1 - j
		for k, v := range p.inverse[i] {
			p.direction[k] = -v
		}
	} else {
		for _, e := range p.columns[j] {
			for k, v := range p.inverse[e.Row] {
				p.direction[k] += float64(v * e.Value)
			}
		}
	}
	p.touched = p.touched[:0]
	for i, v := range p.direction {
		if v > 1e-12 || v < -1e-12 {
			p.touched = append(p.touched, i)
		} else {
			p.direction[i] = 0
		}
	}
}

// leaving returns the row whose basic column reaches zero first; among nearly
// equal ones that with the largest pivot (after Harris, Mathematical
// Programming 5, 1973).
func (p *Program) leaving() int {
	limit := -1.0
	for _, i := range p.touched {
		if d := p.direction[i]; d > pivotTol {
			if t := (max(p.amount[i], 0) + amountTol) / d; limit < 0 || t < limit {
				limit = t
			}
		}
	}
	if limit < 0 {
		return -1
	}
	r, largest := -1, 0.0
	for _, i := range p.touched {
		if d := p.direction[i]; d > pivotTol && max(p.amount[i], 0)/d <= limit && d > largest {
			r, largest = i, d
		}
	}
	return r
}

// pivot brings column j into the basis in row r.
func (p *Program) pivot(r, j int) {
	step := max(p.amount[r], 0) / p.direction[r]
	reduced := 0.0
	if j >= 0 {
		reduced = p.Reduced(j)
	} else {
		reduced = p.price[-1-j]
	}
	p.exchange(r)
	for _, i := range p.touched {
		p.amount[i] -= float64(step * p.direction[i])
	}
	p.amount[r] = step
	if old := p.basis[r]; old >= 0 {
		p.inside[old] = false
	}
	p.basis[r] = j
	if j >= 0 {
		p.inside[j] = true
	}
	for k := range p.price {
		p.price[k] += float64(reduced * p.inverse[k][r])
	}
	p.pivots++
}

// exchange updates the inverse for a pivot in row r along direction.
func (p *Program) exchange(r int) {
	d := p.direction
	for _, col := range p.inverse {
		t := col[r]
		if t == 0 {
			continue
		}
		t /= d[r]
		for _, i := range p.touched {
			col[i] -= float64(d[i] * t)
		}
		col[r] = t
	}
}

// rebuild computes the inverse afresh from the basis, with the largest pivot
// for each column. A column that has become dependent is replaced by a helper.
func (p *Program) rebuild() {
	m := len(p.demand)
	old := append([]int(nil), p.basis...)
	for i := range m {
		clear(p.inverse[i])
		p.inverse[i][i] = 1
		p.basis[i] = p.artificial(i)
	}
	free := make([]bool, m)
	for i := range free {
		free[i] = true
	}
	for _, j := range old {
		if j < -m {
			continue
		}
		p.setDirection(j)
		r, largest := -1, 1e-7
		for _, i := range p.touched {
			if v := max(p.direction[i], -p.direction[i]); free[i] && v > largest {
				r, largest = i, v
			}
		}
		if r < 0 {
			if j >= 0 {
				p.inside[j] = false
			}
			continue
		}
		p.exchange(r)
		free[r] = false
		p.basis[r] = j
	}
	p.refresh()
	p.pivots = 0
}
