package sheets

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/beam"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// rebuildShare is the part of the work that rebuilding may take before column
// generation: one in so many, but no more than mostRebuilding.
const (
	rebuildShare   = 2
	mostRebuilding = 1_000_000_000
)

// rebuilding takes a few sheets of a plan apart and cuts their pieces anew, from
// less stock, or so that the fuller sheets become fuller still (ruin and
// recreate: Schrimpf and others, Journal of Computational Physics 159, 2000).
type rebuilding struct {
	s       *search
	r       *rand.Rand
	meter   *work.Meter
	sheets  []*cover.Pattern
	correct []*correction
	// free is by stock how many pieces the plan leaves.
	free []int
}

// mostRebuilt bounds the sheets of a plan that is rebuilt.
const mostRebuilt = 1 << 10

// rebuild improves the best plan with so much work.
func (s *search) rebuild(units int64) {
	if s.done() || s.meter.Ended() {
		return
	}
	part := s.meter.Split(units)
	b := &rebuilding{s: s, r: rand.New(rand.NewPCG(11, 0x5a3)), meter: part}
	_, b.free = s.models[0].demand()
	for _, u := range s.uses {
		for range min(u.N, mostRebuilt) {
			b.sheets = append(b.sheets, u.Pattern)
		}
		if b.free[u.Pattern.Stock] < cover.Plenty {
			b.free[u.Pattern.Stock] -= u.N
		}
	}
	if len(b.sheets) < 2 || len(b.sheets) > mostRebuilt || s.cost == 0 {
		return
	}
	for i, m := range s.models {
		b.correct = append(b.correct, m.corrections(uint64(50+i))...)
	}
	for round := 0; round < 20_000 && !s.done() && !part.Ended() && len(b.sheets) > 1; round++ {
		if !part.Take(int64(len(b.sheets))) {
			break
		}
		b.round(round)
	}
	s.meter.Join(part)
}

// round rebuilds two to four sheets.
func (b *rebuilding) round(n int) {
	m := b.s.models[n%len(b.s.models)]
	slices.SortStableFunc(b.sheets, func(a, c *cover.Pattern) int { return cmp.Compare(m.held(a), m.held(c)) })
	count := min(2+b.r.IntN(3), len(b.sheets))
	taken := b.sheets[:0:0]
	rest := slices.Clone(b.sheets)
	left := make([]int, len(m.kinds))
	stock := slices.Clone(b.free)
	money := int64(0)
	for i := range count {
		at := b.r.IntN(len(rest))
		if i == 0 { // an empty one among them
			at = b.r.IntN(1 + at/2)
		}
		p := rest[at]
		rest = slices.Delete(rest, at, at+1)
		taken = append(taken, p)
		for _, e := range p.Use {
			left[e.Kind] += e.N
		}
		if stock[p.Stock] < cover.Plenty {
			stock[p.Stock]++
		}
		money += m.stock[p.Stock].cost
	}
	made, cost := b.anew(m, n, left, stock, money)
	if made == nil || cost == money && m.unevenness(made) < m.unevenness(taken) {
		return
	}
	b.sheets = append(rest, made...)
	for _, p := range taken {
		if b.free[p.Stock] < cover.Plenty {
			b.free[p.Stock]++
		}
	}
	for _, p := range made {
		if b.free[p.Stock] < cover.Plenty {
			b.free[p.Stock]--
		}
	}
	if cost < money {
		uses := make([]cover.Use, len(b.sheets))
		for i, p := range b.sheets {
			uses[i] = cover.Use{Pattern: p, N: 1}
		}
		b.s.offer(uses, b.s.cost-money+cost)
	}
}

// anew cuts what is left for at most so much money.
func (b *rebuilding) anew(m *model, n int, left, stock []int, money int64) ([]*cover.Pattern, int64) {
	if each := m.stock[0].cost; n%4 == 0 && m.exact.plain() && money > each {
		q := m.inBeams()
		q.Left, q.Most = left, int(money/each)-1
		if plan, ok := beam.Search(q, 4<<b.r.IntN(7), beam.Guide(b.r.IntN(3)), nil, b.meter); ok {
			var made []*cover.Pattern
			for _, strips := range plan.Sheets {
				if p := m.stripped(0, strips); p != nil {
					made = append(made, p)
				}
			}
			if holds(made, left) {
				return made, each * int64(len(made))
			}
		}
	}
	c := b.correct[n%len(b.correct)]
	c.f.listed = 0
	if n%3 == 1 && c.f.m.listable() || n%2 == 1 && c.f.m.joinable() {
		c.f.listed = 1 << b.r.IntN(4)
	}
	uses, cost, ok := c.round(left, stock, money+1, b.meter)
	b.s.remember(uses)
	if !ok {
		return nil, 0
	}
	var made []*cover.Pattern
	for _, u := range uses {
		for range u.N {
			made = append(made, u.Pattern)
		}
	}
	return made, cost
}

// holds says whether patterns make all that is left.
func holds(made []*cover.Pattern, left []int) bool {
	left = slices.Clone(left)
	for _, p := range made {
		for _, e := range p.Use {
			left[e.Kind] -= e.N
		}
	}
	return !slices.ContainsFunc(left, func(n int) bool { return n != 0 })
}

// held is the area of the pieces of a pattern as a share of its sheet.
func (m *model) held(p *cover.Pattern) float64 {
	sum := 0.0
	for _, e := range p.Use {
		sum += float64(float64(m.kinds[e.Kind].x) * float64(m.kinds[e.Kind].y) * float64(e.N))
	}
	return sum / (float64(m.stock[p.Stock].x) * float64(m.stock[p.Stock].y))
}

// unevenness grows as full sheets become fuller and empty ones emptier.
func (m *model) unevenness(made []*cover.Pattern) float64 {
	sum := 0.0
	for _, p := range made {
		sum += float64(m.held(p) * m.held(p))
	}
	return sum
}
