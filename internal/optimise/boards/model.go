package boards

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// kind is all pieces of one length.
type kind struct {
	w       int64 // length and one kerf
	d       int   // how many are wanted
	sources []source
}

// source is where a kind's pieces come from: a part, or a sequence.
type source struct {
	part, sequence int // index, or -1
	quantity       int
}

// stock is one kind of board.
type stock struct {
	index int     // in Problem.Stock
	caps  []int64 // clear lengths, one kerf added to each
	// wide are the clear lengths without regard to a kerf that is wider than
	// the defect beside it: for bounds only.
	wide  []int64
	at    []int64 // where they begin, from the near trim
	cost  int64
	limit int // plenty: none
	top   int64
}

// plenty stands for the number of boards of a kind that is not limited.
const plenty = 1 << 30

// model is a problem in the engine's own terms.
type model struct {
	p     problem.Problem
	scale unit.Length
	kerf  int64
	kinds []kind // longest first
	stock []stock
	step  int64 // every total cost is a multiple of it
	rates []int // stock, cheapest per length first
}

func newModel(p problem.Problem) *model {
	m := &model{p: p}
	m.scale = commonMeasure(p)
	m.kerf = int64(p.Kerf / m.scale)
	m.addKinds()
	for i, s := range p.Stock {
		m.step = gcd(m.step, int64(s.Cost))
		if t, ok := m.newStock(i, s); ok {
			m.stock = append(m.stock, t)
		}
	}
	m.step = max(m.step, 1)
	m.rates = m.byRate()
	return m
}

// commonMeasure returns the greatest length of which all lengths of p are whole
// multiples.
func commonMeasure(p problem.Problem) unit.Length {
	g := int64(p.Kerf)
	for _, part := range p.Parts {
		if part.Quantity > 0 {
			g = gcd(g, int64(part.Length))
		}
	}
	for _, s := range p.Stock {
		for _, c := range s.Clear() {
			g = gcd(g, int64(c.Length))
			g = gcd(g, int64(c.Along-s.Trim.Start))
		}
	}
	return unit.Length(max(g, 1))
}

func gcd(a, b int64) int64 {
	if a < 0 {
		a = -a
	}
	if b < 0 {
		b = -b
	}
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (m *model) addKinds() {
	byLength := map[int64]int{}
	add := func(l unit.Length, s source) {
		if s.quantity == 0 {
			return
		}
		w := int64(l/m.scale) + m.kerf
		k, ok := byLength[w]
		if !ok {
			k = len(m.kinds)
			byLength[w] = k
			m.kinds = append(m.kinds, kind{w: w})
		}
		m.kinds[k].d += s.quantity
		m.kinds[k].sources = append(m.kinds[k].sources, s)
	}
	held := make([]bool, len(m.p.Parts))
	for i, s := range m.p.Sequences {
		for _, part := range s.Parts {
			held[part] = true
		}
		add(m.p.Row(s).Length, source{part: -1, sequence: i, quantity: 1})
	}
	for i, part := range m.p.Parts {
		if !held[i] {
			add(part.Length, source{part: i, sequence: -1, quantity: part.Quantity})
		}
	}
	slices.SortFunc(m.kinds, func(a, b kind) int { return cmp.Compare(b.w, a.w) })
}

// newStock measures one kind of board. A defect shorter than the kerf counts as
// kerf long for cutting.
func (m *model) newStock(i int, s problem.Stock) (stock, bool) {
	t := stock{index: i, cost: int64(s.Cost), limit: s.Limit}
	if t.limit == 0 {
		t.limit = plenty
	}
	var after unit.Length // where the blade of the cut before may reach to
	for _, c := range s.Clear() {
		from := max(c.Along, after)
		after = c.Along + c.Length + m.p.Kerf
		t.wide = append(t.wide, int64(c.Length/m.scale)+m.kerf)
		if from >= c.Along+c.Length {
			from = c.Along + c.Length
		}
		// The shift is a kerf less a defect: a whole multiple as both are.
		t.caps = append(t.caps, int64((c.Along+c.Length-from)/m.scale)+m.kerf)
		t.at = append(t.at, int64((from-s.Trim.Start)/m.scale))
		t.top = max(t.top, t.wide[len(t.wide)-1])
	}
	return t, len(t.caps) > 0
}

// entry is a number of pieces of one kind.
type entry struct {
	kind, n int
}

// pattern is the filling of one board.
type pattern struct {
	stock int // index in model.stock
	segs  [][]entry
	use   []entry // all segments together, by kind
}

// use of a pattern.
type use struct {
	p *pattern
	n int
}

// plan is a whole answer in the engine's terms.
type plan struct {
	uses []use
	cost int64
}

func (pl *plan) add(m *model, p *pattern, n int) {
	pl.uses = append(pl.uses, use{p, n})
	pl.cost += m.stock[p.stock].cost * int64(n)
}

// newPattern sums the segments.
func newPattern(stock int, segs [][]entry) *pattern {
	p := &pattern{stock: stock, segs: segs}
	for _, seg := range segs {
		p.use = append(p.use, seg...)
	}
	slices.SortFunc(p.use, func(a, b entry) int { return cmp.Compare(a.kind, b.kind) })
	out := p.use[:0:0]
	for _, e := range p.use {
		if last := len(out) - 1; last >= 0 && out[last].kind == e.kind {
			out[last].n += e.n
		} else {
			out = append(out, e)
		}
	}
	p.use = out
	return p
}

// filled returns the length that the pieces take, kerfs included.
func (m *model) filled(p *pattern) int64 {
	var sum int64
	for _, e := range p.use {
		sum += m.kinds[e.kind].w * int64(e.n)
	}
	return sum
}

// times returns how often p can be cut before it makes too many of some kind.
func (p *pattern) times(left []int) int {
	n := -1
	for _, e := range p.use {
		if k := left[e.kind] / e.n; n < 0 || k < n {
			n = k
		}
	}
	return max(n, 0)
}
