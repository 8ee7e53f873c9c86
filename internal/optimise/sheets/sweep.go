package sheets

import (
	"slices"

	"scantling/internal/optimise/beam"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// beamShare is the part of the work that beam searches may take: one in so many,
// but no more than mostBeams.
const (
	beamShare = 3
	mostBeams = 1_000_000_000
)

// beams runs wider and wider beam searches. Sheets of several sizes, with
// defects, and sequences are left to the other methods.
func (s *search) beams() {
	m := s.models[0]
	if !m.plain() || s.p.Pieces() > 1<<13 {
		return
	}
	part := s.meter.Split(min(mostBeams, s.meter.Left()/beamShare))
	views := s.outlooks(part)
	for width := 1; width <= 1<<11 && !part.Ended() && !s.done(); width *= 2 {
		for guide := beam.Waste; guide <= beam.Larger; guide++ {
			for _, m := range s.models {
				s.beam(m, width, guide, nil, part)
				if s.done() || part.Ended() {
					break
				}
			}
		}
		for i, v := range views {
			for guide := beam.Loss; guide <= beam.LossPerArea && v != nil && !s.done() && !part.Ended(); guide++ {
				s.beam(s.models[i], width, guide, v, part)
			}
		}
	}
	s.meter.Join(part)
}

// plain says whether there is one kind of sheet without defects, and no rules on
// sequences and feeding.
func (m *model) plain() bool {
	return len(m.stock) == 1 && len(m.stock[0].defects) == 0 && m.p.Feed == (problem.Feed{}) && len(m.p.Sequences) == 0
}

// inBeams is the problem as a beam search takes it.
func (m *model) inBeams() beam.Question {
	left, _ := m.demand()
	return beam.Question{
		X: m.stock[0].x, Y: m.stock[0].y, Pieces: m.order(largest), Left: left, Value: m.values(),
		Rules: m.rules(), One: m.p.Goal == problem.MostValue,
	}
}

// outlooks returns an outlook for each model under MostValue, once the limits on
// copies have prices.
func (s *search) outlooks(meter *work.Meter) []*beam.Outlook {
	var out []*beam.Outlook
	if s.reduced != nil {
		for _, m := range s.models {
			out = append(out, beam.NewOutlook(m.inBeams(), s.reduced, meter))
		}
	}
	return out
}

func (s *search) beam(m *model, width int, guide beam.Guide, view *beam.Outlook, meter *work.Meter) {
	q := m.inBeams()
	if !q.One {
		if m.stock[0].cost == 0 {
			return
		}
		q.Most = int((s.cost - 1) / m.stock[0].cost)
		if m.stock[0].limit < cover.Plenty {
			q.Most = min(q.Most, m.stock[0].limit)
		}
	}
	plan, ok := beam.Search(q, width, guide, view, meter)
	if !ok {
		return
	}
	var uses []cover.Use
	for _, strips := range plan.Sheets {
		p := m.stripped(0, strips)
		if p == nil {
			return
		}
		uses = append(uses, cover.Use{Pattern: p, N: 1})
	}
	if q.One {
		s.offer(uses, -plan.Value)
		return
	}
	s.remember(uses)
	if complete(m, uses) {
		s.offer(uses, int64(len(uses))*m.stock[0].cost)
	}
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
