package lp

// Entry is a coefficient of a column.
type Entry struct {
	Row   int
	Value float64
}

// Program is a linear program and its present basis.
type Program struct {
	demand  []float64 // as stated
	rhs     []float64 // perturbed
	cost    []float64
	columns [][]Entry

	basis  []int // column in the basis for each row; see slack and artificial
	inside []bool
	barred []bool // never enters the basis again
	// inverse of the basis, by columns: inverse[j][i] is row i, column j.
	inverse [][]float64
	amount  []float64 // of the basic columns
	price   []float64
	pivots  int // since the inverse was built afresh

	direction []float64
	touched   []int
}

// Basis entries below zero stand for the helpers of row i: its slack (entry -1,
// what is covered beyond the demand) and its artificial column (entry +1, what
// is not covered, at a cost that no real column has).
func (p *Program) slack(i int) int      { return -1 - i }
func (p *Program) artificial(i int) int { return -1 - len(p.demand) - i }

// Penalty is the cost of leaving one unit of a row uncovered. Costs of columns
// should not be much above 1.
const Penalty = 1e3

// New returns a program with one row for each demand.
func New(demand []float64) *Program {
	m := len(demand)
	p := &Program{
		demand: demand, rhs: make([]float64, m), basis: make([]int, m),
		inverse: make([][]float64, m), amount: make([]float64, m),
		price: make([]float64, m), direction: make([]float64, m),
	}
	cells := make([]float64, m*m)
	for i := range p.inverse {
		p.inverse[i] = cells[i*m : (i+1)*m]
	}
	for i, d := range demand {
		p.rhs[i] = perturbed(i, d)
	}
	return p
}

func perturbed(i int, d float64) float64 {
	if d <= 0 {
		return d
	}
	return d + float64(1e-6*(1+float64((i*7919)%127)/127))
}

// Add adds a column and returns its number.
func (p *Program) Add(cost float64, entries []Entry) int {
	p.cost = append(p.cost, cost)
	p.columns = append(p.columns, entries)
	p.inside = append(p.inside, false)
	p.barred = append(p.barred, false)
	return len(p.cost) - 1
}

// Len returns the number of columns.
func (p *Program) Len() int { return len(p.cost) }

// Start sets the first basis: for every row a column that has its only entry
// there, if one was added, otherwise a helper.
func (p *Program) Start() {
	m := len(p.demand)
	for i := range m {
		p.basis[i] = p.artificial(i)
		if p.demand[i] <= 0 {
			p.basis[i] = p.slack(i)
		}
		clear(p.inverse[i])
		p.inverse[i][i] = 1
		if p.demand[i] <= 0 {
			p.inverse[i][i] = -1
		}
	}
	for j, col := range p.columns {
		if len(col) == 1 && col[0].Value > 0 && p.basis[col[0].Row] == p.artificial(col[0].Row) {
			i := col[0].Row
			p.basis[i] = j
			p.inside[j] = true
			p.inverse[i][i] = 1 / col[0].Value
		}
	}
	p.refresh()
}

// refresh computes amounts and prices from the inverse.
func (p *Program) refresh() {
	m := len(p.demand)
	clear(p.amount)
	for j, b := range p.rhs {
		if b == 0 {
			continue
		}
		for i, v := range p.inverse[j] {
			p.amount[i] += float64(v * b)
		}
	}
	for j := range m {
		sum := 0.0
		for i, v := range p.inverse[j] {
			sum += float64(v * p.basicCost(i))
		}
		p.price[j] = sum
	}
}

func (p *Program) basicCost(i int) float64 {
	switch b := p.basis[i]; {
	case b >= 0:
		return p.cost[b]
	case b < -len(p.demand):
		return Penalty
	}
	return 0
}

// Prices returns the price of each row; none is negative at an optimum.
func (p *Program) Prices() []float64 { return p.price }

// Amounts returns the amount of every column.
func (p *Program) Amounts() []float64 {
	x := make([]float64, len(p.cost))
	for i, b := range p.basis {
		if b >= 0 {
			x[b] = max(0, p.amount[i])
		}
	}
	return x
}

// Value returns the cost of the present basis and whether every row is covered
// without artificial columns.
func (p *Program) Value() (float64, bool) {
	sum, covered := 0.0, true
	for i := range p.basis {
		sum += float64(p.amount[i] * p.basicCost(i))
		if p.basis[i] < -len(p.demand) && p.amount[i] > 1e-5 {
			covered = false
		}
	}
	return sum, covered
}

// Reduced returns the cost of column j less the prices of what it covers.
func (p *Program) Reduced(j int) float64 {
	r := p.cost[j]
	for _, e := range p.columns[j] {
		r -= float64(e.Value * p.price[e.Row])
	}
	return r
}

// Worth returns what the demands, as stated, are worth at the present prices:
// at an optimum the cost, without the perturbation.
func (p *Program) Worth() float64 {
	sum := 0.0
	for i, y := range p.price {
		sum += float64(y * p.demand[i])
	}
	return sum
}
