package sheets

import (
	"math"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// merit is what a maker looks at among plans of equal cost, in this order.
type merit struct {
	remnant  float64 // area of the largest rest
	settings int     // different fence and stop settings, sheet by sheet
}

func (a merit) better(b merit) bool {
	if a.remnant != b.remnant {
		return a.remnant > b.remnant
	}
	return a.settings < b.settings
}

// merit of a plan. Plans that are not all strips have none.
func meritOf(uses []cover.Use) merit {
	var out merit
	for _, u := range uses {
		f, ok := u.Pattern.Filling.(*staged)
		if !ok {
			return merit{settings: math.MaxInt}
		}
		t := &f.m.stock[u.Pattern.Stock]
		rips, stops := map[int64]bool{}, map[int64]bool{}
		free := t.y
		for _, s := range f.strips {
			rips[s.y] = true
			free -= s.y
			along := t.x
			for _, c := range s.columns {
				stops[c.x] = true
				along -= c.x
			}
			out.remnant = max(out.remnant, float64(along)*float64(s.y))
		}
		out.remnant = max(out.remnant, float64(free)*float64(t.x))
		out.settings += len(rips) + len(stops)
	}
	return out
}

// polishRounds and polishWork bound the search for a handier plan of the same
// cost.
const (
	polishRounds = 80
	polishWork   = 30_000_000
)

// polish looks for a plan that costs the same and is handier. It is counted
// with the first method, so that the search's budget does not decide about it.
func (s *search) polish(meter *work.Meter) {
	if s.p.Goal != problem.LeastCost || len(s.models[0].kinds) > 200 {
		return
	}
	best := meritOf(s.uses)
	left, limits := s.models[0].demand()
	for i, m := range s.exact {
		c := newCorrection(m, uint64(100+i))
		for range polishRounds {
			if !meter.Take(1) {
				return
			}
			uses, cost, ok := c.round(left, limits, s.cost+1, meter)
			if !ok || cost > s.cost {
				continue
			}
			if q := meritOf(uses); cost < s.cost || q.better(best) {
				s.uses, s.cost, best = uses, cost, q
			}
		}
	}
}
