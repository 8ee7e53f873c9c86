package sheets

import (
	"math"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// Solve cuts the sheets of a checked problem. The meter bounds the search that
// follows the first method; the first method always runs and is counted on
// firstMethod. It returns a [problem.Fault] if the limited sheets do not
// suffice or the stages do not allow a part.
func Solve(p problem.Problem, firstMethod, meter *work.Meter, workers int) (problem.Answer, error) {
	s := &search{p: p, meter: meter, cost: math.MaxInt64}
	for _, d := range []problem.Direction{problem.Rip, problem.Crosscut} {
		if p.Cutting.First == problem.Any || p.Cutting.First == d {
			s.models = append(s.models, newModel(p, d))
		}
	}
	bound, enough := s.models[0].material()
	if !enough {
		return problem.Answer{}, shortage("all of it together is smaller than the parts")
	}
	s.bound, s.proof = bound, problem.ByMaterial
	s.constructed(firstMethod)
	if s.m == nil {
		return problem.Answer{}, shortage("no way was found to cut all parts from it")
	}
	return s.answer(), nil
}

func shortage(why string) error {
	return &problem.Fault{Reason: problem.Shortage, Part: -1, Stock: -1,
		Text: "the stock does not suffice: " + why + "; raise a limit, add stock without one, or allow more stages"}
}

// search is a run on one problem.
type search struct {
	p      problem.Problem
	models []*model
	meter  *work.Meter
	// The best so far, in the terms of model m. Under MostValue cost is the
	// value less than nothing, so that less is better throughout.
	m     *model
	uses  []use
	cost  int64
	bound int64
	proof problem.Proof
}

// offer notes a plan if it is better than the best so far.
func (s *search) offer(m *model, uses []use, cost int64) {
	if cost < s.cost || s.m == nil {
		s.m, s.uses, s.cost = m, uses, cost
	}
}

// done says that nothing better can exist.
func (s *search) done() bool {
	if s.p.Goal == problem.MostValue {
		return s.m != nil && -s.cost >= s.bound
	}
	return s.cost <= s.bound
}

// constructed tries the fillings in several orders. All but the first are
// skipped when the meter ends.
func (s *search) constructed(meter *work.Meter) {
	for _, tries := range []int{1, 6} {
		for o := sorting(0); o < sortings; o++ {
			for _, m := range s.models {
				if s.m != nil && (meter.Ended() || s.done()) {
					return
				}
				f := &filler{m: m, order: m.order(o), tries: tries}
				s.construct(f)
				meter.Take(f.steps)
			}
		}
	}
}

func (s *search) construct(f *filler) {
	m := f.m
	left, stockLeft := make([]int, len(m.kinds)), make([]int, len(m.stock))
	for k := range m.kinds {
		left[k] = m.kinds[k].d
	}
	for i := range m.stock {
		stockLeft[i] = m.stock[i].limit
	}
	if s.p.Goal == problem.MostValue {
		if p := f.sheet(0, left); p != nil {
			s.offer(m, []use{{p, 1}}, -p.worth)
		} else {
			s.offer(m, nil, 0)
		}
		return
	}
	if uses, cost, ok := f.complete(left, stockLeft, s.cost); ok {
		s.offer(m, uses, cost)
	}
}

func (s *search) answer() problem.Answer {
	cost := s.cost
	if s.p.Goal == problem.MostValue {
		cost = -cost
	}
	a := problem.Answer{
		Diagrams: s.m.diagrams(s.uses), Cost: problem.Cost(cost),
		Bound: problem.Cost(s.bound), Proof: s.proof, Status: problem.Gap,
	}
	switch {
	case s.done():
		a.Status = problem.Proved
	case s.meter.Stopped():
		a.Status = problem.Stopped
	case s.meter.Spent():
		a.Status = problem.Spent
	}
	return a
}
