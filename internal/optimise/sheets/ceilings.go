package sheets

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// stages builds the ceilings of stock i for cutting in stages. With all set,
// strips may be as high as any stack; otherwise only as a single piece.
func (m *model) stages(c *ceiling.Stages, i int, value []int64, left []int, all bool, meter *work.Meter) bool {
	rules := ceiling.Rules{Two: m.p.Cutting.Stages == 2, Exact: m.p.Cutting.Exact, All: all}
	return c.Build(m.stock[i].x, m.stock[i].y, m.order(widest), value, left, rules, meter)
}

// raster builds the ceilings of stock i for any number of stages.
func (m *model) raster(r *ceiling.Raster, i int, value []int64, left []int, meter *work.Meter) bool {
	return r.Build(m.stock[i].x, m.stock[i].y, m.order(largest), value, left, meter)
}

// conflict returns the least number of sheets, where all are of one kind, that
// parts too large to lie together need; 0 where nothing can be said.
func (m *model) conflict(meter *work.Meter) int64 {
	if len(m.stock) != 1 || !m.fine() || len(m.p.Sequences) > 0 {
		return 0
	}
	demand, _ := m.demand()
	return ceiling.Sheets(m.stock[0].x, m.stock[0].y, m.order(largest), demand, meter)
}
