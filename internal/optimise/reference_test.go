package optimise_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/outside"
	"scantling/internal/unit"
)

// TestAgainstCBC compares small random orders of boards with the optimum that
// CBC finds for the plain assignment model (coin-or/Cbc, Debian package
// coinor-cbc): limits, trims at both ends, defects, kerfs in millimetres and in
// eighths of an inch beside lengths in either.
func TestAgainstCBC(t *testing.T) {
	cbc := outside.Program(t, "small random orders beside CBC", "cbc")
	n := uint64(16)
	if outside.Long() {
		n = 150
	}
	for seed := range n {
		p := smallOrder(rand.New(rand.NewPCG(seed, 4)))
		v := runCBC(t, cbc, assignment(p), 60)
		a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 50_000_000})
		if err != nil {
			if f, ok := err.(*problem.Fault); !ok || f.Reason != problem.Shortage && f.Reason != problem.TooLong || v.cost != math.MaxInt64 {
				t.Errorf("seed %d: %v, but CBC has %d", seed, err, v.cost)
			}
			continue
		}
		if err := conform.Verify(p, a); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if !v.optimal {
			t.Errorf("seed %d: CBC does not finish", seed)
		} else if int64(a.Cost) != v.cost || int64(a.Bound) > v.cost {
			t.Errorf("seed %d: cost %d, bound %d (%v), CBC has %d", seed, a.Cost, a.Bound, a.Status, v.cost)
		}
	}
}

// smallOrder draws an order that CBC settles in a second.
func smallOrder(r *rand.Rand) problem.Problem {
	p := problem.Problem{Kerf: unit.MM(int64(r.IntN(5)))}
	length := func(least, most int64) unit.Length {
		return unit.MM(least + r.Int64N(most-least))
	}
	if r.IntN(3) == 0 {
		p.Kerf = unit.Inch / 8
		length = func(least, most int64) unit.Length {
			l := least + r.Int64N(most-least)
			if r.IntN(2) == 0 {
				return unit.MM(l)
			}
			return unit.Inch / 8 * unit.Length(l*10/32)
		}
	}
	for i := range 1 + r.IntN(3) {
		s := problem.Stock{Size: problem.Size{Length: length(1000, 2500)}, Cost: problem.Cost(100 + r.IntN(200))}
		if i > 0 {
			s.Limit = 1 + r.IntN(2)
		}
		s.Trim.Start, s.Trim.End = unit.MM(r.Int64N(20)), unit.MM(r.Int64N(20))
		if r.IntN(3) == 0 {
			// No shorter than the kerf, so that either side is cut to its full length.
			s.Defects = append(s.Defects, problem.Box{Point: problem.Point{Along: length(50, 900)}, Size: problem.Size{Length: length(5, 60)}})
		}
		p.Stock = append(p.Stock, s)
	}
	for range 2 + r.IntN(4) {
		p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: length(100, 700)}, Quantity: 1 + r.IntN(3)})
	}
	return p
}

// TestSample solves a few published instances whose optimum is proved, so that
// the ordinary tests notice when the engine gets worse.
func TestSample(t *testing.T) {
	for _, c := range []struct {
		set, variant string
		n            int
		rules        problems.Rules
	}{
		{"1d-schwerin", "min-bins", 5, problems.Rules{}},
		{"1d-falkenauer-u", "min-bins", 5, problems.Rules{}},
		{"1d-scholl-1", "min-bins", 10, problems.Rules{}},
		{"2d-knapsack-unconstrained", "max-value; guillotine, unlimited stages, any number of copies; no rotation", 3, problems.Rules{}},
	} {
		for _, in := range readSet(t, c.set).Instances[:c.n] {
			target, ok := targetOf(in, c.variant)
			if !ok || !target.Proved {
				continue
			}
			p, err := in.Problem(c.rules)
			if err != nil {
				t.Fatal(err)
			}
			a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 200_000_000})
			if err != nil {
				t.Fatal(err)
			}
			if err := conform.Verify(p, a); err != nil {
				t.Errorf("%s: %v", in.Name, err)
			}
			if float64(a.Cost) != *target.BestKnown || a.Status != problem.Proved {
				t.Errorf("%s: %d (%v), published optimum %g (%s)", in.Name, a.Cost, a.Status, *target.BestKnown, target.Source)
			}
		}
	}
}

// FuzzSolve draws a problem from the seed and the knobs, and checks that the
// engine answers soundly or refuses with a fault.
func FuzzSolve(f *testing.F) {
	f.Add(uint64(1), false, int64(3_000_000), int64(0), int64(0))
	f.Add(uint64(2), true, int64(3_175_000), int64(1), int64(0))
	f.Add(uint64(3), true, int64(0), int64(-5), int64(1<<40))
	f.Fuzz(func(t *testing.T, seed uint64, sheets bool, kerf, nudge, feed int64) {
		form := problem.Boards
		if sheets {
			form = problem.Sheets
		}
		p := problems.Random(rand.New(rand.NewPCG(seed, 9)), form)
		p.Kerf, p.Feed.Long = unit.Length(kerf), unit.Length(feed)
		p.Parts[0].Length += unit.Length(nudge)
		if p.Kerf > unit.MM(50) {
			p.Kerf %= unit.MM(50)
		}
		a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 300_000})
		if err != nil {
			if _, ok := err.(*problem.Fault); !ok {
				t.Fatalf("not a fault: %v", err)
			}
			return
		}
		if err := conform.Verify(p, a); err != nil {
			t.Fatal(err)
		}
	})
}
