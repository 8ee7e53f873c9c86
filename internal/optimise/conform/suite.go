package conform

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/unit"
)

// Solver is what the suite tests.
type Solver func(context.Context, problem.Problem, problem.Budget) (problem.Answer, error)

// Suite runs every test that a solver must pass.
func Suite(t *testing.T, solve Solver) {
	t.Run("known", func(t *testing.T) { known(t, solve) })
	t.Run("random", func(t *testing.T) { random(t, solve) })
	t.Run("refusals", func(t *testing.T) { refusals(t, solve) })
	t.Run("budget", func(t *testing.T) { budget(t, solve) })
	t.Run("cut off", func(t *testing.T) { cutOff(t, solve) })
	t.Run("stopped", func(t *testing.T) { stopped(t, solve) })
}

// suiteWork keeps the suite quick.
const suiteWork = 20_000_000

func known(t *testing.T, solve Solver) {
	for _, c := range problems.Known() {
		a, err := solve(t.Context(), c.Problem, problem.Budget{Work: suiteWork})
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
			continue
		}
		if err := Verify(c.Problem, a); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if a.Cost != c.Optimum || a.Bound > c.Optimum && c.Goal == problem.LeastCost {
			t.Errorf("%s: cost %d, bound %d; the optimum is %d (%s)", c.Name, a.Cost, a.Bound, c.Optimum, c.Reference)
		}
	}
}

// random checks the laws on seeded problems: the answer is sound, is the same
// for one worker and two, and does not get better when the kerf grows.
func random(t *testing.T, solve Solver) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := problems.Random(r, problem.Form(seed%2))
		if p.Check() != nil {
			continue
		}
		a, err := solve(t.Context(), p, problem.Budget{Work: suiteWork / 20})
		if err != nil {
			var f *problem.Fault
			if !errors.As(err, &f) {
				t.Errorf("seed %d: %v", seed, err)
			}
			continue
		}
		if err := Verify(p, a); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		b, err := solve(t.Context(), p, problem.Budget{Work: suiteWork / 20, Workers: 2})
		if err != nil || !reflect.DeepEqual(a, b) {
			t.Errorf("seed %d: two workers answer differently: %v (%v, %d, %d)", seed, err, b.Status, b.Cost, b.Bound)
		}
	}
}

func refusals(t *testing.T, solve Solver) {
	good := func() problem.Problem {
		return problem.Problem{
			Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(2400)}, Cost: 1}},
			Parts: []problem.Part{{Size: problem.Size{Length: unit.MM(500)}, Quantity: 2}},
		}
	}
	for _, c := range []struct {
		why    problem.Reason
		change func(*problem.Problem)
	}{
		{problem.Empty, func(p *problem.Problem) { p.Parts = nil }},
		{problem.Empty, func(p *problem.Problem) { p.Stock = nil }},
		{problem.Empty, func(p *problem.Problem) { p.Parts[0].Quantity = 0 }},
		{problem.BadSize, func(p *problem.Problem) { p.Parts[0].Length = 0 }},
		{problem.BadSize, func(p *problem.Problem) { p.Parts[0].Length = -1 }},
		{problem.BadSize, func(p *problem.Problem) { p.Stock[0].Length = 1 << 62 }},
		{problem.BadSize, func(p *problem.Problem) { p.Stock[0].Trim.End = unit.MM(2400) }},
		{problem.BadSize, func(p *problem.Problem) { p.Kerf = -1 }},
		{problem.BadSize, func(p *problem.Problem) { p.Form = problem.Sheets }},
		{problem.Count, func(p *problem.Problem) { p.Parts[0].Quantity = -1 }},
		{problem.Count, func(p *problem.Problem) { p.Parts[0].Quantity = 1 << 40 }},
		{problem.Range, func(p *problem.Problem) { p.Stock[0].Cost = -1 }},
		{problem.Range, func(p *problem.Problem) { p.Stock[0].Cost = 1 << 62 }},
		{problem.TooLong, func(p *problem.Problem) { p.Parts[0].Length = unit.MM(2401) }},
		{problem.Shortage, func(p *problem.Problem) { p.Stock[0].Limit = 1; p.Parts[0].Quantity = 5 }},
		{problem.Malformed, func(p *problem.Problem) { p.Cutting.Stages = 1 }},
		{problem.Malformed, func(p *problem.Problem) { p.Goal = problem.MostValue }},
		{problem.Malformed, func(p *problem.Problem) {
			p.Sequences = []problem.Sequence{{Parts: []int{0}, Direction: problem.Crosscut}}
		}},
		{problem.Malformed, func(p *problem.Problem) {
			p.Sequences = []problem.Sequence{{Parts: []int{0, 7}, Direction: problem.Crosscut}}
		}},
	} {
		p := good()
		c.change(&p)
		_, err := solve(t.Context(), p, problem.Budget{Work: suiteWork})
		var f *problem.Fault
		if !errors.As(err, &f) || f.Reason != c.why {
			t.Errorf("wanted a fault for %s, got %v", c.why, err)
		}
	}
	if _, err := solve(t.Context(), good(), problem.Budget{Work: suiteWork}); err != nil {
		t.Errorf("the problem without a fault is refused: %v", err)
	}
}

// budget checks that more work is never spent than allowed beyond what the
// first method takes, and that a larger budget is no worse.
func budget(t *testing.T, solve Solver) {
	for seed := range uint64(6) {
		p := problems.Random(rand.New(rand.NewPCG(seed, 2)), problem.Form(seed%2))
		if p.Check() != nil {
			continue
		}
		least, err := solve(t.Context(), p, problem.Budget{Work: 1})
		if err != nil {
			continue
		}
		cost, bound := least.Cost, least.Bound
		for _, w := range []int64{1000, 100_000, 10_000_000} {
			a, err := solve(t.Context(), p, problem.Budget{Work: w})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if a.Work > least.Work+w {
				t.Errorf("seed %d: %d units spent, %d + %d allowed", seed, a.Work, least.Work, w)
			}
			if a.Cost > cost || a.Bound < bound {
				t.Errorf("seed %d: with %d units cost %d and bound %d, with fewer %d and %d", seed, w, a.Cost, a.Bound, cost, bound)
			}
			cost, bound = a.Cost, a.Bound
		}
	}
}

// cutOff checks that a budget that ends anywhere inside a step proves nothing
// that is not so: no bound is above a cost that another budget found.
func cutOff(t *testing.T, solve Solver) {
	for seed := range uint64(12) {
		p := problems.Random(rand.New(rand.NewPCG(seed, 2)), problem.Form(seed%2))
		if p.Check() != nil {
			continue
		}
		cheapest, proved := problem.Cost(math.MaxInt64), problem.Cost(0)
		for w := int64(1000); w < 4_000_000; w += w / 3 {
			a, err := solve(t.Context(), p, problem.Budget{Work: w})
			if err != nil {
				break
			}
			cheapest, proved = min(cheapest, a.Cost), max(proved, a.Bound)
		}
		if proved > cheapest {
			t.Errorf("seed %d: a bound of %d is said to be proved, but a plan costs %d", seed, proved, cheapest)
		}
	}
}

func stopped(t *testing.T, solve Solver) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	for seed := range uint64(6) {
		p := problems.Random(rand.New(rand.NewPCG(seed, 3)), problem.Form(seed%2))
		if p.Check() != nil {
			continue
		}
		a, err := solve(ctx, p, problem.Budget{})
		if err != nil {
			continue
		}
		if err := Verify(p, a); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if a.Status != problem.Stopped && a.Status != problem.Proved {
			t.Errorf("seed %d: status %v of a stopped run", seed, a.Status)
		}
	}
}
