package sheets

import (
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/shortlist"
)

// mostListed bounds the lengths of short lists.
const mostListed = 1 << 12

// shortlists seeks the filling of one sheet that is worth most, with longer and
// longer short lists, and says whether one run at least went through.
func (s *search) shortlists() bool {
	m := s.models[0]
	t := &m.stock[0]
	if !m.fine() || s.p.Cutting.Stages != 0 || len(t.defects) > 0 || len(s.p.Sequences) > 0 || s.p.Feed != (problem.Feed{}) {
		return false
	}
	left, _ := m.demand()
	q := shortlist.Question{X: t.x, Y: t.y, Pieces: m.order(largest), Left: left, Value: m.values(), Scale: lagrange, Step: m.step}
	q.Guide, q.Limits = s.guide(left, q.Value)
	through := false
	for length := 1; length <= mostListed && !s.done(); length *= 2 {
		q.Floor = -s.cost
		a, ok := shortlist.Search(q, length, s.meter)
		if a.Filling != nil {
			p := m.parcelled(0, a.Filling)
			s.offer([]cover.Use{{Pattern: p, N: 1}}, -worth(p, q.Value))
		}
		if a.Complete {
			s.bound, s.proof = -s.cost, problem.BySearch
		}
		if !ok {
			break // longer lists end sooner still
		}
		through = true
	}
	return through
}

// guide returns the best values less prices of limits, and the limits at their
// prices.
func (s *search) guide(left []int, value []int64) ([]int64, int64) {
	guide := make([]int64, len(value))
	limits := int64(0)
	for k, v := range value {
		guide[k] = v * lagrange
		if s.reduced != nil {
			limits += (guide[k] - s.reduced[k]) * int64(left[k])
			guide[k] = s.reduced[k]
		}
	}
	return guide, limits
}
