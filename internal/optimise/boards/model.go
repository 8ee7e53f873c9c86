package boards

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/cover"
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
	limit int // cover.Plenty: none
	top   int64
}

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
		t.limit = cover.Plenty
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

// newPattern sums the segments: what lies in each clear length of the board.
func newPattern(stock int, segs [][]cover.Entry) *cover.Pattern {
	return cover.NewPattern(stock, slices.Concat(segs...), segs)
}

// segments returns what lies in each clear length of a pattern's board.
func segments(p *cover.Pattern) [][]cover.Entry { return p.Filling.([][]cover.Entry) }

// filled returns the length that the pieces take, kerfs included.
func (m *model) filled(p *cover.Pattern) int64 {
	var sum int64
	for _, e := range p.Use {
		sum += m.kinds[e.Kind].w * int64(e.N)
	}
	return sum
}
