package sheets

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/shortlist"
)

// mostListed bounds the lengths of short lists.
const mostListed = 1 << 12

// shortlists seeks the filling of one sheet that is worth most, with longer and
// longer short lists, and says whether one run at least went through.
func (s *search) shortlists() bool {
	m := s.models[0]
	if !m.loose.fine() || !s.exact[0].plain() {
		return false
	}
	left, _ := m.demand()
	guide, limits := s.guide(left, m.values())
	models := s.models
	if s.p.Cutting.Stages == 0 {
		models = models[:1] // both ways to lay the strips are the same
	}
	through := false
	open := len(models)
	for _, m := range models[:open] { // loose ones prove, tight ones find what fits
		if m.loose != m {
			models = append(models[:len(models):len(models)], m.loose)
		}
	}
	complete := make([]bool, len(models))
	most := int64(0) // that complete runs leave possible
	for length := 1; length <= mostListed && !s.done(); length *= 2 {
		for i, m := range models {
			if complete[i] {
				continue
			}
			a, ok := s.listed(m, shortlist.Question{
				X: m.stock[0].x, Y: m.stock[0].y, Left: left, Value: m.values(), Step: m.step,
				Guide: guide, Limits: limits, Scale: lagrange, Floor: -s.cost,
			}, length)
			if a.Complete {
				if complete[i] = true; m.loose == m {
					most = max(most, a.Value)
					open--
				}
			}
			if !ok {
				return through // longer lists end sooner still
			}
		}
		through = true
		if open == 0 && max(most, -s.cost) < s.bound {
			s.bound, s.proof = max(most, -s.cost), problem.BySearch
		}
	}
	return through
}

// listed makes one run and offers what it found.
func (s *search) listed(m *model, q shortlist.Question, length int) (shortlist.Answer, bool) {
	if s.p.Cutting.Stages == 0 {
		q.Pieces = m.order(largest)
		a, ok := shortlist.Search(q, length, s.meter)
		if a.Filling != nil {
			s.mend(m.parcelled(0, a.Filling))
		}
		return a, ok
	}
	q.Pieces = m.order(widest)
	a, ok := shortlist.SearchStages(q, m.rules(), length, s.meter)
	if a.Strips != nil {
		s.mend(m.stripped(0, a.Strips))
	}
	return a, ok
}

// rules are the stages as the ceilings know them.
func (m *model) rules() ceiling.Rules {
	return ceiling.Rules{Two: m.p.Cutting.Stages == 2, Exact: m.p.Cutting.Exact, All: true}
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

// joinable says whether sheets may be cut in any number of stages, so that short
// lists over all rectangles may fill them.
func (m *model) joinable() bool {
	return m.fine() && m.plain() && m.p.Cutting.Stages == 0
}

// mostListable bounds the sheets, in square units, that value correction fills
// with short lists.
const mostListable = 1 << 19

// listable says whether it may.
func (m *model) listable() bool {
	return m.fine() && m.plain() && m.stock[0].x*m.stock[0].y <= mostListable
}
