package sheets

import (
	"math"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// Solve cuts the sheets of a checked problem. The meter bounds the search that
// follows the first method; the first method always runs and is counted on
// firstMethod. It returns a [problem.Fault] if the limited sheets do not
// suffice or the stages do not allow a part.
func Solve(p problem.Problem, firstMethod, meter *work.Meter, workers int) (problem.Answer, error) {
	return solve(p, ceiling.MostUnits, firstMethod, meter, workers)
}

// solve is [Solve] with tables of at most so many units a side.
func solve(p problem.Problem, most int64, firstMethod, meter *work.Meter, workers int) (problem.Answer, error) {
	s := &search{p: p, meter: meter, cost: math.MaxInt64, workers: workers}
	for _, d := range []problem.Direction{problem.Rip, problem.Crosscut} {
		if p.Cutting.First == problem.Any || p.Cutting.First == d {
			s.models = append(s.models, newModel(p, d))
		}
	}
	s.exact = s.models
	bound, enough := s.models[0].material()
	if !enough {
		return problem.Answer{}, shortage("all of it together is smaller than the parts")
	}
	s.bound, s.proof = bound, problem.ByMaterial
	s.models = rounded(s.exact, most, firstMethod)
	s.memory = cover.NewMemory(len(s.models[0].kinds))
	if p.Goal == problem.LeastCost {
		m := s.models[0].loose
		if n := m.conflict(firstMethod); n > 0 && n*m.stock[0].cost > s.bound {
			s.bound, s.proof = n*m.stock[0].cost, problem.ByConflict
		}
	}
	s.constructed(firstMethod)
	if p.Goal == problem.MostValue {
		part := s.meter.Split(s.meter.Left() / multiplyShare)
		s.multiply(part)
		s.meter.Join(part)
	}
	if s.p.Goal == problem.LeastCost || !s.shortlists() {
		s.beams()
	}
	if p.Goal == problem.LeastCost {
		s.correct()
		share := s.meter.Left() / rebuildShare
		if !s.models[0].plain() {
			share /= 4 // of several sizes, columns and their prices choose better
		}
		s.rebuild(min(mostRebuilding, share))
		if s.models[0].loose.fine() {
			s.cover()
		}
		s.rebuild(s.meter.Left())
		if s.cost == math.MaxInt64 && firstMethod.Cancelled() {
			return problem.Answer{}, firstMethod.Err()
		}
		if s.cost == math.MaxInt64 {
			return problem.Answer{}, shortage("no way was found to cut all parts from it")
		}
	}
	s.polish(firstMethod.Bonus(polishWork))
	return s.answer(), nil
}

func shortage(why string) error {
	return &problem.Fault{Reason: problem.Shortage, Part: -1, Stock: -1,
		Text: "the stock does not suffice: " + why + "; raise a limit, add stock without one, or allow more stages"}
}

// search is a run on one problem.
type search struct {
	p       problem.Problem
	exact   []*model // in true sizes, by the way that strips lie
	models  []*model // that are searched, see rounded
	meter   *work.Meter
	workers int
	// The best so far. Under MostValue cost is the value less than nothing, so
	// that less is better throughout.
	uses  []cover.Use
	cost  int64
	bound int64
	proof problem.Proof
	// reduced is what each kind is worth less the price of its limit, where that
	// gave the lowest ceiling under MostValue, which is level.
	reduced []int64
	level   int64
	// memory is of well filled sheets, under LeastCost.
	memory *cover.Memory
}

// offer notes a plan if it is better than the best so far.
func (s *search) offer(uses []cover.Use, cost int64) {
	if cost < s.cost {
		s.uses, s.cost = uses, cost
	}
}

// remember keeps the sheets of a plan for column generation to begin with.
func (s *search) remember(uses []cover.Use) {
	for _, u := range uses {
		s.memory.Note(u.Pattern, s.exact[0].held(u.Pattern))
	}
}

// done says that nothing better can exist.
func (s *search) done() bool {
	if s.p.Goal == problem.MostValue {
		return s.cost < math.MaxInt64 && -s.cost >= s.bound
	}
	return s.cost <= s.bound
}

// constructed tries the fillings in several orders. All but the first are
// skipped when the meter ends.
func (s *search) constructed(meter *work.Meter) {
	for _, tries := range []int{1, 6} {
		for o := sorting(0); o < sortings; o++ {
			for _, m := range s.exact {
				if s.cost < math.MaxInt64 && (meter.Ended() || s.done()) {
					return
				}
				f := &filler{m: m, order: m.order(o), tries: tries, value: m.values(), meter: meter}
				s.construct(f)
				meter.Take(f.steps)
			}
		}
	}
}

// values returns what one piece of each kind counts.
func (m *model) values() []int64 {
	out := make([]int64, len(m.kinds))
	for k := range m.kinds {
		out[k] = m.kinds[k].value
	}
	return out
}

func (m *model) demand() (left, limits []int) {
	left, limits = make([]int, len(m.kinds)), make([]int, len(m.stock))
	for k := range m.kinds {
		left[k] = m.kinds[k].d
	}
	for i := range m.stock {
		limits[i] = m.stock[i].limit
	}
	return left, limits
}

func (s *search) construct(f *filler) {
	m := f.m
	left, limits := m.demand()
	if s.p.Goal == problem.MostValue {
		if p := f.sheet(0, left); p != nil {
			s.offer([]cover.Use{{Pattern: p, N: 1}}, -worth(p, f.value))
		} else {
			s.offer(nil, 0)
		}
		return
	}
	if uses, cost, ok := f.complete(left, limits, s.cost); ok {
		s.offer(uses, cost)
	}
}

// correctShare is the part of the work that value correction may take before
// column generation begins: one in so many, but no more than mostCorrected.
const (
	correctShare  = 8
	mostCorrected = 250_000_000
)

// correct makes rounds of value correction.
func (s *search) correct() {
	part := s.meter.Split(min(mostCorrected, s.meter.Left()/correctShare))
	left, limits := s.models[0].demand()
	for i, m := range s.models {
		by := m.corrections(uint64(i))
		for n := 0; n < 2000 && !s.done() && !part.Ended(); n++ {
			if !part.Take(1) {
				break
			}
			if uses, cost, ok := by[n%len(by)].round(left, limits, math.MaxInt64, part); ok {
				s.remember(uses)
				s.offer(uses, cost)
			}
		}
	}
	s.meter.Join(part)
}

// fine says whether the sheets are few enough units in size for tables.
func (m *model) fine() bool { return m.counted(ceiling.MostUnits) }

// counted says whether no side of a sheet has more units.
func (m *model) counted(most int64) bool {
	return !slices.ContainsFunc(m.stock, func(t stock) bool { return t.x > most || t.y > most })
}

// cover improves the plan by column generation.
func (s *search) cover() {
	m := s.models[0]
	demand, limits := m.demand()
	c := &cover.Problem{Demand: demand, Step: m.step, Oracle: func(task int) cover.Oracle {
		o := newOracle(s.models)
		o.cornered = task%cornersEvery != cornersEvery-1
		return o
	}}
	for i := range m.stock {
		c.Stock = append(c.Stock, cover.Stock{Cost: m.stock[i].cost, Limit: limits[i]})
	}
	begin := cover.Result{Uses: s.uses, Cost: s.cost, Bound: s.bound}
	end := cover.Improve(c, begin, s.memory.Patterns(), s.meter, s.workers)
	s.uses, s.cost = slices.Clone(end.Uses), end.Cost
	if end.Bound > s.bound {
		s.bound, s.proof = end.Bound, problem.ByColumns
		if end.Branched {
			s.proof = problem.BySearch
		}
	}
}

func (s *search) answer() problem.Answer {
	cost := s.cost
	if s.p.Goal == problem.MostValue {
		cost = -cost
	}
	a := problem.Answer{
		Diagrams: s.exact[0].diagrams(s.uses), Cost: problem.Cost(cost),
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
