package sheets

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// mostSampled bounds the rectangles of a sample, sampleLength its short lists.
const (
	mostSampled  = 40_000
	sampleLength = 2
)

// sampled adds fillings in any number of stages that other means did not find:
// of those kinds only that are worth most per area, give or take some chance, so
// few that short lists soon go through the rectangles that they make.
func (o *oracle) sampled(ask cover.Ask, reply *cover.Reply, meter *work.Meter) {
	m := o.models[0]
	if !m.fine() || len(m.p.Sequences) > 0 || m.p.Feed != (problem.Feed{}) {
		return
	}
	for i := range m.stock {
		if ask.Stock[i] == 0 || len(m.stock[i].defects) > 0 {
			continue
		}
		some := ask
		some.Value = m.sample(i, ask, o.chance, meter)
		if _, p, _ := m.lists(i, some, sampleLength, meter); p != nil {
			reply.Found = append(reply.Found, p)
		}
	}
}

// sample returns the values of some kinds, and nothing for the others.
func (m *model) sample(i int, ask cover.Ask, chance *rand.Rand, meter *work.Meter) []int64 {
	var order []int
	density := make([]float64, len(m.kinds))
	for k, kd := range m.kinds {
		if ask.Value[k] > 0 && ask.Left[k] > 0 {
			order = append(order, k)
			density[k] = float64(ask.Value[k]) / (float64(kd.x) * float64(kd.y)) * (0.8 + float64(0.2*chance.Float64()))
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(density[b], density[a]) })
	t := &m.stock[i]
	pieces := m.order(largest)
	value := make([]int64, len(ask.Value))
	for at, next := 0, 8; at < len(order); at, next = next, next+max(2, next/5) {
		more := order[at:min(next, len(order))]
		for _, k := range more {
			value[k] = ask.Value[k]
		}
		fits := ceiling.Fits(nil, pieces, t.x, t.y, value, ask.Left)
		rectangles := len(ceiling.XPoints(t.x, fits, ask.Left).At) * len(ceiling.YPoints(t.y, fits, ask.Left).At)
		if at > 0 && rectangles > mostSampled || !meter.Take(int64(len(fits))*(t.x+t.y)*2) {
			for _, k := range more {
				value[k] = 0
			}
			break
		}
	}
	return value
}
