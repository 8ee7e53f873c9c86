package boards

import (
	"iter"
	"maps"
	"slices"
	"strconv"

	"scantling/internal/optimise/lp"
	"scantling/internal/optimise/work"
)

// pool is all patterns that were ever generated, each once: those of a shared
// pool that is only read, and its own.
type pool struct {
	base     *pool
	patterns []*pattern
	seen     map[string]*pattern
}

func newPool(base *pool) *pool { return &pool{base: base, seen: map[string]*pattern{}} }

// add returns the pattern of the pool that equals p: p itself if it is new.
func (l *pool) add(p *pattern) *pattern {
	key := p.key()
	if q := l.seen[key]; q != nil {
		return q
	}
	if l.base != nil {
		if q := l.base.seen[key]; q != nil {
			return q
		}
	}
	l.seen[key] = p
	l.patterns = append(l.patterns, p)
	return p
}

// all walks the patterns, the shared ones first.
func (l *pool) all() iter.Seq[*pattern] {
	return func(yield func(*pattern) bool) {
		if l.base != nil {
			for _, p := range l.base.patterns {
				if !yield(p) {
					return
				}
			}
		}
		for _, p := range l.patterns {
			if !yield(p) {
				return
			}
		}
	}
}

// box is how many boards of each kind may be used at least and at most.
type box struct{ lo, hi []int }

func (b box) clone() box { return box{slices.Clone(b.lo), slices.Clone(b.hi)} }

func (p *pattern) key() string {
	b := strconv.AppendInt(nil, int64(p.stock), 10)
	for _, e := range p.use {
		b = append(strconv.AppendInt(append(b, ' '), int64(e.kind), 10), ':')
		b = strconv.AppendInt(b, int64(e.n), 10)
	}
	return string(b)
}

// relaxation is the linear program over patterns for what is left to cut.
type relaxation struct {
	m        *model
	left     []int
	box      box
	rows     []int // kinds with something left
	rowOf    []int // by kind, -1: none
	limitRow []int // by stock, -1: none
	leastRow []int // by stock, -1: none
	program  *lp.Program
	columns  []*pattern // nil for the program's own
	unit     float64    // cost that counts as 1
	prices   *pricing
	has      map[*pattern]bool
}

// newRelaxation begins with patterns of one kind each and those of the pool
// that make nothing too often.
func newRelaxation(m *model, left []int, b box, known *pool, pr *pricing) *relaxation {
	r := &relaxation{
		m: m, left: left, box: b, prices: pr, has: map[*pattern]bool{},
		rowOf: make([]int, len(m.kinds)), limitRow: make([]int, len(m.stock)), leastRow: make([]int, len(m.stock)),
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
	for i := range m.stock {
		r.limitRow[i], r.leastRow[i] = -1, -1
		if b.hi[i] < plenty {
			r.limitRow[i] = len(demand)
			demand = append(demand, -float64(b.hi[i]))
		}
		if b.lo[i] > 0 {
			r.leastRow[i] = len(demand)
			demand = append(demand, float64(b.lo[i]))
		}
	}
	r.unit = float64(m.dearest())
	r.program = lp.New(demand)
	for _, k := range r.rows {
		if p := m.uniform(k, left[k], b); p != nil {
			r.add(p)
		}
	}
	for p := range known.all() {
		if r.proper(p) {
			r.add(p)
		}
	}
	r.program.Start()
	return r
}

// dearest returns the greatest price of a board, at least 1.
func (m *model) dearest() int64 {
	most := int64(1)
	for i := range m.stock {
		most = max(most, m.stock[i].cost)
	}
	return most
}

// uniform returns the cheapest board free of limits that holds pieces of kind k
// alone, as many as go in.
func (m *model) uniform(k, most int, b box) *pattern {
	var best *pattern
	for i := range m.stock {
		t := &m.stock[i]
		if b.hi[i] < plenty || b.lo[i] > 0 || best != nil && t.cost >= m.stock[best.stock].cost {
			continue
		}
		segs := make([][]entry, len(t.caps))
		left := most
		for s, room := range t.caps {
			if n := min(left, int(room/m.kinds[k].w)); n > 0 {
				segs[s] = []entry{{k, n}}
				left -= n
			}
		}
		if left == most {
			continue
		}
		if p := m.feedable(newPattern(i, segs)); p != nil {
			best = p
		}
	}
	return best
}

// proper says whether a pattern may be cut at least once.
func (r *relaxation) proper(p *pattern) bool {
	if r.box.hi[p.stock] == 0 {
		return false
	}
	return !slices.ContainsFunc(p.use, func(e entry) bool { return e.n > r.left[e.kind] })
}

func (r *relaxation) add(p *pattern) {
	entries := make([]lp.Entry, 0, len(p.use)+1)
	for _, e := range p.use {
		entries = append(entries, lp.Entry{Row: r.rowOf[e.kind], Value: float64(e.n)})
	}
	if row := r.limitRow[p.stock]; row >= 0 {
		entries = append(entries, lp.Entry{Row: row, Value: -1})
	}
	if row := r.leastRow[p.stock]; row >= 0 {
		entries = append(entries, lp.Entry{Row: row, Value: 1})
	}
	r.has[p] = true
	j := r.program.Add(float64(r.m.stock[p.stock].cost)/r.unit, entries)
	for len(r.columns) < j {
		r.columns = append(r.columns, nil) // helpers of the program
	}
	r.columns = append(r.columns, p)
}

// generate solves the relaxation by adding patterns until none improves it, for
// at most rounds. After each pricing, bounded is told the prices and what was
// found, and may end the work by returning false. It returns whether the
// optimum was reached.
func (r *relaxation) generate(known *pool, rounds int, meter *work.Meter, bounded func(*pricing) bool) bool {
	smooth := 0.6
	var centre []float64
	for range rounds {
		if !r.program.Solve(meter) {
			return false
		}
		if v := r.program.Worth(); r.prices.dense && r.prices.best > 0 && r.m.ceil(r.prices.best) >= r.m.ceil(v*r.unit) {
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
		if r.prices.better {
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
