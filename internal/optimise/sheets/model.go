package sheets

import (
	"cmp"
	"math/bits"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// kind is all pieces of one size.
type kind struct {
	x, y    int64 // kerf included
	tx, ty  int64 // the same when it is turned
	d       int
	turn    bool
	value   int64             // under MostValue; otherwise the area
	row     problem.Direction // of a sequence, as its parts are cut in the model's axes; Any: single parts
	uneven  bool              // of a sequence: its parts are not all of one size
	sources []source
}

// source is where a kind's pieces come from: a part, or a sequence.
type source struct {
	part, sequence int // index, or -1
	quantity       int
}

// defect is a rectangle that no part may cover, from the usable corner, as if
// parts had their kerf: a part at x with size dx misses it if x+dx-kerf <= x0
// or x >= x1.
type defect struct{ x0, y0, x1, y1 int64 }

// stock is one kind of sheet.
type stock struct {
	index   int
	x, y    int64 // usable, kerf included
	cost    int64
	limit   int // cover.Plenty: none
	defects []defect
}

// model is a problem in the engine's own terms, x along the strips.
type model struct {
	p       problem.Problem
	swapped bool // x is the width of the stock
	scale   unit.Length
	kerf    int64
	kinds   []kind
	stock   []stock
	step    int64
	largest float64 // the greatest area of a piece
	// exact is the model of true sizes, in which patterns are laid out; loose is
	// one in which everything fits that truly does, for ceilings. Both are the
	// model itself unless its sizes were rounded.
	exact, loose *model
}

func newModel(p problem.Problem, first problem.Direction) *model {
	m := &model{p: p, swapped: first == problem.Crosscut, scale: commonMeasure(p)}
	m.exact, m.loose = m, m
	m.kerf = int64(p.Kerf / m.scale)
	m.addKinds()
	for i, s := range p.Stock {
		m.step = gcd(m.step, int64(s.Cost))
		m.stock = append(m.stock, m.newStock(i, s))
	}
	if p.Goal == problem.MostValue {
		m.step = 0
		for _, k := range m.kinds {
			m.step = gcd(m.step, k.value)
		}
	}
	m.step = max(m.step, 1)
	for _, k := range m.kinds {
		m.largest = max(m.largest, float64(k.x)*float64(k.y))
	}
	return m
}

// commonMeasure returns the greatest length of which all sizes are multiples.
func commonMeasure(p problem.Problem) unit.Length {
	g := int64(p.Kerf)
	for _, part := range p.Parts {
		if part.Quantity > 0 {
			g = gcd(gcd(g, int64(part.Length)), int64(part.Width))
		}
	}
	for _, s := range p.Stock {
		u := s.Usable(problem.Sheets)
		g = gcd(gcd(g, int64(u.Length)), int64(u.Width))
	}
	return unit.Length(max(g, 1))
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// axes returns a size as x and y, in units.
func (m *model) axes(s problem.Size) (x, y int64) {
	x, y = int64(s.Length/m.scale)+m.kerf, int64(s.Width/m.scale)+m.kerf
	if m.swapped {
		x, y = y, x
	}
	return x, y
}

// direction turns a direction between the stock's axes and the model's, where
// Crosscut divides x.
func (m *model) direction(d problem.Direction) problem.Direction {
	if !m.swapped {
		return d
	}
	switch d {
	case problem.Crosscut:
		return problem.Rip
	case problem.Rip:
		return problem.Crosscut
	}
	return d
}

func (m *model) newStock(i int, s problem.Stock) stock {
	t := stock{index: i, cost: int64(s.Cost), limit: s.Limit}
	if t.limit == 0 {
		t.limit = cover.Plenty
	}
	t.x, t.y = m.axes(s.Usable(problem.Sheets))
	for _, d := range s.Defects {
		from := problem.Point{Along: d.Along - s.Trim.Start, Across: d.Across - s.Trim.Low}
		to := problem.Point{Along: from.Along + d.Length, Across: from.Across + d.Width}
		e := defect{
			int64(from.Along.Round(m.scale, unit.Down) / m.scale), int64(from.Across.Round(m.scale, unit.Down) / m.scale),
			int64(to.Along.Round(m.scale, unit.Up) / m.scale), int64(to.Across.Round(m.scale, unit.Up) / m.scale),
		}
		if m.swapped {
			e = defect{e.y0, e.x0, e.y1, e.x1}
		}
		if e.x1 > 0 && e.y1 > 0 && e.x0 < t.x && e.y0 < t.y {
			t.defects = append(t.defects, e)
		}
	}
	return t
}

func (m *model) addKinds() {
	type key struct {
		x, y, value int64
		turn        bool
		row         problem.Direction
		uneven      bool
	}
	at := map[key]int{}
	shift := m.coarse()
	add := func(size problem.Size, turn bool, value int64, row problem.Direction, uneven bool, s source) {
		if s.quantity == 0 {
			return
		}
		if turn = turn && size.Length != size.Width; turn && size.Length < size.Width {
			size.Length, size.Width = size.Width, size.Length
		}
		x, y := m.axes(size)
		k := key{x, y, value, turn, row, uneven}
		i, ok := at[k]
		if !ok {
			i = len(m.kinds)
			at[k] = i
			if m.p.Goal != problem.MostValue {
				value = max(1, x>>shift) * max(1, y>>shift)
			}
			m.kinds = append(m.kinds, kind{x: x, y: y, tx: y, ty: x, turn: turn, value: value, row: row})
		}
		m.kinds[i].d += s.quantity
		m.kinds[i].sources = append(m.kinds[i].sources, s)
	}
	held := make([]bool, len(m.p.Parts))
	for i, s := range m.p.Sequences {
		for _, part := range s.Parts {
			held[part] = true
		}
		add(m.p.Row(s), false, 0, m.direction(s.Direction), m.uneven(s), source{part: -1, sequence: i, quantity: 1})
	}
	for i, part := range m.p.Parts {
		if !held[i] {
			add(part.Size, part.Turn, int64(part.Value), problem.Any, false, source{part: i, sequence: -1, quantity: part.Quantity})
		}
	}
	// The order is the same whichever way the model lies.
	slices.SortStableFunc(m.kinds, func(a, b kind) int {
		if m.swapped {
			a.x, a.y, b.x, b.y = a.y, a.x, b.y, b.x
		}
		return cmp.Or(cmp.Compare(b.x, a.x), cmp.Compare(b.y, a.y))
	})
}

// uneven says whether the parts of a sequence differ in size.
func (m *model) uneven(s problem.Sequence) bool {
	first := m.p.Parts[s.Parts[0]].Size
	return slices.ContainsFunc(s.Parts, func(i int) bool { return m.p.Parts[i].Size != first })
}

// coarse returns how many bits are dropped from sizes where an area stands in
// for a value and only comparison matters, so that sums stay in range.
func (m *model) coarse() int {
	var most int64
	for _, s := range m.p.Stock {
		x, y := m.axes(s.Usable(problem.Sheets))
		most = max(most, x, y)
	}
	return max(0, bits.Len64(uint64(most))-20)
}
