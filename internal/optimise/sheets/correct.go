package sheets

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// correction fills sheet after sheet with the pieces that count most, and lets
// a piece count more the worse the sheets were that it lay on: sequential value
// correction (Mukhacheva and others, Pesquisa Operacional 20, 2000).
type correction struct {
	f      filler
	r      *rand.Rand
	guided bool
	guide  ceiling.Stages
	weight []float64 // of one piece, about 1 per area
}

func newCorrection(m *model, seed uint64) *correction {
	c := &correction{r: rand.New(rand.NewPCG(seed, 0x5eed)), weight: make([]float64, len(m.kinds))}
	c.f = filler{m: m, value: make([]int64, len(m.kinds)), tries: 1}
	for k := range c.weight {
		c.weight[k] = 1
	}
	return c
}

// corrections returns what fills sheets with knapsacks where there are tables,
// and beside it, where sizes are rounded, strips in true sizes.
func (m *model) corrections(seed uint64) []*correction {
	c := newCorrection(m, seed)
	if c.guided = m.fine(); m.exact == m {
		return []*correction{c}
	}
	return []*correction{c, newCorrection(m.exact, seed)}
}

// round makes one plan for what is left.
func (c *correction) round(left, stockLeft []int, money int64, meter *work.Meter) ([]cover.Use, int64, bool) {
	m := c.f.m
	c.f.tries = 1 + c.r.IntN(4)
	for k := range m.kinds {
		noise := 0.85 + float64(0.3*c.r.Float64())
		c.f.value[k] = max(1, int64(float64(m.kinds[k].value)*c.weight[k]*noise))
	}
	c.f.order = m.byValue(c.f.value)
	c.f.steps = 0
	c.f.guide, c.f.meter = nil, meter
	if c.guided {
		c.f.guide = &c.guide
	}
	uses, cost, ok := c.f.complete(left, stockLeft, money)
	meter.Take(c.f.steps)
	for _, u := range uses {
		c.learn(u.Pattern)
	}
	return uses, cost, ok
}

// learn corrects the weights after a sheet.
func (c *correction) learn(p *cover.Pattern) {
	m := c.f.m
	t := &m.stock[p.Stock]
	used := 0.0
	for _, e := range p.Use {
		used += float64(float64(m.kinds[e.Kind].x) * float64(m.kinds[e.Kind].y) * float64(e.N))
	}
	bad := float64(t.x) * float64(t.y) / used // 1 and more
	for _, e := range p.Use {
		c.weight[e.Kind] = float64(0.6*c.weight[e.Kind]) + float64(0.4*bad)
	}
}

// byValue lists all kinds in all ways they may lie, dearest per area first;
// large pieces come before small ones that are worth as much per area.
func (m *model) byValue(value []int64) []lying {
	out := m.order(longestSide)
	density := make([]float64, len(m.kinds))
	for k, kd := range m.kinds {
		density[k] = float64(value[k]) / float64(max(1, kd.value))
		density[k] *= 1 + float64(float64(kd.x)*float64(kd.y)/m.largest)
	}
	slices.SortStableFunc(out, func(a, b lying) int {
		return cmp.Compare(density[b.Kind], density[a.Kind])
	})
	return out
}
