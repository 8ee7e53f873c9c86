package boards

import (
	"math"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// Solve cuts the boards of a checked problem. The meter bounds the search that
// follows the first method; the first method always runs and is counted on
// firstMethod. It returns a [problem.Fault] if the limited boards do not
// suffice.
func Solve(p problem.Problem, firstMethod, meter *work.Meter, workers int) (problem.Answer, error) {
	m := newModel(p)
	s := &search{m: m, meter: meter, best: plan{cost: math.MaxInt64}}
	bound, enough := m.material()
	if !enough {
		return problem.Answer{}, m.shortage("all of it together is shorter than the parts")
	}
	s.raise(bound, problem.ByMaterial)
	s.constructed(firstMethod)
	s.improve(workers)
	if len(s.best.uses) == 0 {
		return problem.Answer{}, m.shortage("no way was found to cut all parts from it")
	}
	return s.answer(), nil
}

func (m *model) shortage(why string) error {
	return &problem.Fault{Reason: problem.Shortage, Part: -1, Stock: -1,
		Text: "the stock does not suffice: " + why + "; raise a limit, or add stock without one"}
}

// search is a run on one problem.
type search struct {
	m     *model
	meter *work.Meter
	best  plan
	bound int64
	proof problem.Proof
	// branched says that the bound rests on more than one relaxation.
	branched bool
}

// raise notes a proven bound.
func (s *search) raise(bound int64, by problem.Proof) {
	if bound > s.bound || s.proof == 0 {
		s.bound, s.proof = bound, by
	}
}

// offer notes a plan if it is cheaper than the best so far.
func (s *search) offer(uses []use, cost int64) bool {
	if cost >= s.best.cost {
		return false
	}
	s.best = plan{uses: uses, cost: cost}
	return true
}

// done says that nothing cheaper can exist.
func (s *search) done() bool { return s.best.cost <= s.bound }

// constructed tries the fillings.
func (s *search) constructed(meter *work.Meter) {
	left, stockLeft := s.m.demand()
	for _, f := range []filler{{exact: true, forced: true}, {exact: true}, {}} {
		f.m, f.meter = s.m, meter
		if uses, cost, ok := f.complete(left, stockLeft, s.best.cost); ok {
			s.offer(uses, cost)
		}
		if s.done() {
			return
		}
	}
}

func (m *model) demand() (left, stockLeft []int) {
	left, stockLeft = make([]int, len(m.kinds)), make([]int, len(m.stock))
	for k := range m.kinds {
		left[k] = m.kinds[k].d
	}
	for i := range m.stock {
		stockLeft[i] = m.stock[i].limit
	}
	return left, stockLeft
}

func (s *search) answer() problem.Answer {
	a := problem.Answer{
		Diagrams: s.m.diagrams(s.best), Cost: problem.Cost(s.best.cost),
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
