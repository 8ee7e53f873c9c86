package lp

import "slices"

// Bar takes column j out of the program: it stays in the basis, if it is there,
// only at the cost of a penalty. Call [Program.Restart] afterwards.
func (p *Program) Bar(j int) {
	p.barred[j] = true
	p.cost[j] = Penalty
}

// Barred says whether column j was taken out.
func (p *Program) Barred(j int) bool { return p.barred[j] }

// SetDemand changes the demand of row i. Call [Program.Restart] afterwards. A
// demand above zero must not become one below it, or the other way round.
func (p *Program) SetDemand(i int, demand float64) {
	p.demand[i] = demand
	p.rhs[i] = perturbed(i, demand)
}

// Restart makes the basis feasible for changed demands: a basic column whose
// amount fell below zero is replaced by its opposite, which is barred.
func (p *Program) Restart() {
	p.refresh()
	for r, v := range p.amount {
		if v >= -amountTol {
			continue
		}
		j := p.Add(Penalty, p.opposite(p.basis[r]))
		p.barred[j] = true
		if old := p.basis[r]; old >= 0 {
			p.inside[old] = false
		}
		p.basis[r], p.inside[j] = j, true
		for k := range p.inverse {
			p.inverse[k][r] = -p.inverse[k][r]
		}
		p.amount[r] = -v
	}
	p.refresh()
}

// opposite returns the entries of a column or helper, negated.
func (p *Program) opposite(j int) []Entry {
	switch m := len(p.demand); {
	case j >= 0:
		out := make([]Entry, len(p.columns[j]))
		for i, e := range p.columns[j] {
			out[i] = Entry{e.Row, -e.Value}
		}
		return out
	case j < -m:
		return []Entry{{-1 - m - j, -1}}
	default:
		return []Entry{{-1 - j, 1}}
	}
}

// Clone returns a program that can be changed on its own.
func (p *Program) Clone() *Program {
	m := len(p.demand)
	c := &Program{
		demand: slices.Clone(p.demand), rhs: slices.Clone(p.rhs), cost: slices.Clone(p.cost),
		columns: slices.Clone(p.columns), basis: slices.Clone(p.basis), inside: slices.Clone(p.inside),
		barred: slices.Clone(p.barred), inverse: make([][]float64, m), amount: slices.Clone(p.amount),
		price: slices.Clone(p.price), pivots: p.pivots, direction: make([]float64, m),
	}
	cells := make([]float64, m*m)
	for i := range c.inverse {
		c.inverse[i] = cells[i*m : (i+1)*m]
		copy(c.inverse[i], p.inverse[i])
	}
	return c
}
