package boards

import (
	"fmt"
	"math"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

// polishWork bounds what is spent on a plan of the same cost that is pleasanter to
// saw; a share of any budget is kept for it.
const polishWork = 20_000_000

// Solve cuts the boards of a checked problem. The first method always runs and is
// counted on first; everything else is bounded by meter. It returns a
// [problem.Fault] if the limited boards do not suffice.
func Solve(p problem.Problem, first, meter *work.Meter, workers int) (problem.Answer, error) {
	m := newModel(p)
	bound, enough := m.material()
	if !enough {
		return problem.Answer{}, m.tooShort()
	}
	c := m.cover()
	begin := m.constructed(c, bound, first)
	reserve := min(meter.Left()/20, polishWork)
	search := meter.Split(meter.Left() - reserve)
	end := cover.Improve(c, begin, nil, search, workers)
	meter.Join(search)
	if end.Cost == math.MaxInt64 && (first.Cancelled() || meter.Cancelled()) {
		return problem.Answer{}, first.Err()
	}
	if end.Cost == math.MaxInt64 {
		return problem.Answer{}, m.shortage("no way was found to cut all parts from it")
	}
	polish := meter.Split(polishWork)
	end.Uses = m.repeat(m.tidy(end.Uses, polish), polish)
	end.Cost = c.Cost(end.Uses)
	state := status(end, search)
	meter.Join(polish)
	a := problem.Answer{
		Diagrams: m.diagrams(end.Uses), Cost: problem.Cost(end.Cost), Status: state,
		Bound: problem.Cost(end.Bound), Proof: problem.ByMaterial,
	}
	switch {
	case end.Bound > bound && end.Branched:
		a.Proof = problem.BySearch
	case end.Bound > bound:
		a.Proof = problem.ByColumns
	}
	return a, nil
}

func status(r cover.Result, meter *work.Meter) problem.Status {
	switch {
	case r.Cost <= r.Bound:
		return problem.Proved
	case meter.Stopped():
		return problem.Stopped
	case meter.Spent():
		return problem.Spent
	}
	return problem.Gap
}

func (m *model) shortage(why string) *problem.Fault {
	return &problem.Fault{Reason: problem.Shortage, Part: -1, Stock: -1,
		Text: "the stock does not suffice: " + why + "; raise a limit, or add stock without one"}
}

// tooShort says by how much all boards together are shorter than the parts.
func (m *model) tooShort() *problem.Fault {
	var need, have int64
	for _, k := range m.kinds {
		need += k.w * int64(k.d)
	}
	for i := range m.stock {
		have += m.stock[i].length() * int64(m.stock[i].limit)
	}
	in := func(n int64) float64 { return (unit.Length(n) * m.scale).Millimetres() }
	f := m.shortage(fmt.Sprintf("the parts, with a kerf to each, are %.10g mm long in all, and all boards, with a kerf to each clear length, %.10g mm: %.10g mm too little",
		in(need), in(have), in(need-have)))
	f.Have, f.Limit = unit.Length(need)*m.scale, unit.Length(have)*m.scale
	return f
}

// cover returns the problem as one of covering.
func (m *model) cover() *cover.Problem {
	c := &cover.Problem{Step: m.step, Oracle: func(int) cover.Oracle { return newOracle(m) }}
	for _, k := range m.kinds {
		c.Demand = append(c.Demand, k.d)
	}
	for _, t := range m.stock {
		c.Stock = append(c.Stock, cover.Stock{Cost: t.cost, Limit: t.limit})
	}
	return c
}

// constructed tries the fillings, the plain one in any case.
func (m *model) constructed(c *cover.Problem, bound int64, meter *work.Meter) cover.Result {
	best := cover.Result{Cost: math.MaxInt64, Bound: bound}
	limits := make([]int, len(m.stock))
	for i := range m.stock {
		limits[i] = m.stock[i].limit
	}
	for _, f := range []filler{{exact: true, forced: true}, {exact: true}, {}} {
		f.m, f.meter, f.sums = m, meter, &subset{}
		if uses, cost, ok := f.complete(slices.Clone(c.Demand), limits, best.Cost); ok {
			best.Uses, best.Cost = uses, cost
		}
		if best.Cost <= best.Bound {
			break
		}
	}
	return best
}

// Means returns 2: subset sums with and without the longest piece forced in.
func (pr *oracle) Means() int { return 2 }

// Complete fills one board after the other.
func (pr *oracle) Complete(variant int, left, stockLeft []int, money int64, meter *work.Meter) ([]cover.Use, int64, bool) {
	f := filler{m: pr.m, exact: true, forced: variant == 0, meter: meter, sums: &pr.sums}
	return f.complete(left, stockLeft, money)
}

// Finish tries out the last few boards.
func (pr *oracle) Finish(left, stockLeft []int, money int64, effort int, meter *work.Meter) ([]cover.Use, int64, bool) {
	e := newEnding(pr.m, left, stockLeft, money, meter)
	e.most = endingNodes * effort
	return e.run()
}

// Uniform returns a board with pieces of one kind alone.
func (pr *oracle) Uniform(i, k, most int) *cover.Pattern {
	t := &pr.m.stock[i]
	segs := make([][]cover.Entry, len(t.caps))
	left := most
	for s, room := range t.caps {
		if n := min(left, int(room/pr.m.kinds[k].w)); n > 0 {
			segs[s] = []cover.Entry{{Kind: k, N: n}}
			left -= n
		}
	}
	if left == most {
		return nil
	}
	return pr.m.feedable(newPattern(i, segs))
}
