package sheets

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// beamShare is the part of the work that beam searches may take: one in so many.
const beamShare = 2

// beams runs wider and wider beam searches. Sheets of several sizes, with
// defects, and sequences are left to the other methods.
func (s *search) beams() {
	m := s.models[0]
	if len(m.stock) != 1 || len(m.stock[0].defects) > 0 || s.p.Feed != (problem.Feed{}) || len(s.p.Sequences) > 0 || s.p.Pieces() > 1<<13 {
		return
	}
	part := s.meter.Split(s.meter.Left() / beamShare)
	views := s.outlooks(part)
	for width := 1; width <= 1<<11 && !part.Ended() && !s.done(); width *= 2 {
		for guide := range 3 {
			for _, m := range s.models {
				s.beam(m, width, guide, nil, part)
				if s.done() || part.Ended() {
					break
				}
			}
		}
		for i, v := range views {
			for guide := 3; guide <= 4 && v != nil && !s.done() && !part.Ended(); guide++ {
				s.beam(s.models[i], width, guide, v, part)
			}
		}
	}
	s.meter.Join(part)
}

// outlooks returns an outlook for each model under MostValue, once the limits on
// copies have prices.
func (s *search) outlooks(meter *work.Meter) []*outlook {
	var out []*outlook
	if s.reduced != nil {
		for _, m := range s.models {
			out = append(out, newOutlook(m, s.reduced, meter))
		}
	}
	return out
}

func (s *search) beam(m *model, width, guide int, view *outlook, meter *work.Meter) {
	most := 0
	if s.p.Goal == problem.LeastCost {
		if m.stock[0].cost == 0 {
			return
		}
		most = int((s.cost - 1) / m.stock[0].cost)
		if m.stock[0].limit < cover.Plenty {
			most = min(most, m.stock[0].limit)
		}
	}
	b := newBeam(m, width, guide, most, meter)
	b.view = view
	p, _ := b.run()
	if p == nil || p.parent == nil {
		return
	}
	uses := b.plan(p)
	if s.p.Goal == problem.MostValue {
		s.offer(uses, -p.worth)
		return
	}
	if !complete(m, uses) {
		return
	}
	s.offer(uses, int64(len(uses))*m.stock[0].cost)
}

// complete says whether a plan makes all pieces.
func complete(m *model, uses []cover.Use) bool {
	left, _ := m.demand()
	for _, u := range uses {
		for _, e := range u.Pattern.Use {
			left[e.Kind] -= e.N * u.N
		}
	}
	return !slices.ContainsFunc(left, func(n int) bool { return n != 0 })
}
