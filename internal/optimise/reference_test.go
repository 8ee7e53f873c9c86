package optimise_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
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
// coinor-cbc).
func TestAgainstCBC(t *testing.T) {
	cbc := outside.Program(t, "small random orders beside CBC", "cbc")
	for seed := range uint64(12) {
		p := smallOrder(rand.New(rand.NewPCG(seed, 4)))
		a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 50_000_000})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := conform.Verify(p, a); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		optimum := solveWithCBC(t, cbc, p)
		if int64(a.Cost) != optimum || int64(a.Bound) > optimum {
			t.Errorf("seed %d: cost %d, bound %d (%v), CBC has %d", seed, a.Cost, a.Bound, a.Status, optimum)
		}
	}
}

func smallOrder(r *rand.Rand) problem.Problem {
	p := problem.Problem{Kerf: unit.MM(int64(r.IntN(5)))}
	for i := range 1 + r.IntN(3) {
		s := problem.Stock{Size: problem.Size{Length: unit.MM(1000 + r.Int64N(1500))}, Cost: problem.Cost(100 + r.IntN(200))}
		if i > 0 {
			s.Limit = 1 + r.IntN(2)
		}
		s.Trim.End = unit.MM(r.Int64N(20))
		p.Stock = append(p.Stock, s)
	}
	for range 2 + r.IntN(4) {
		p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(150 + r.Int64N(800))}, Quantity: 1 + r.IntN(3)})
	}
	return p
}

// solveWithCBC writes the model "so many of each part on each board that is
// bought" as an LP file and returns its optimum.
func solveWithCBC(t *testing.T, cbc string, p problem.Problem) int64 {
	t.Helper()
	var goal, fit, whole, binary strings.Builder
	need := make([]strings.Builder, len(p.Parts))
	b := 0
	for _, s := range p.Stock {
		n := p.Pieces()
		if s.Limit > 0 {
			n = s.Limit
		}
		for range min(n, 9) {
			fmt.Fprintf(&goal, " + %d y%d", s.Cost, b)
			fmt.Fprintf(&binary, " y%d", b)
			for k, part := range p.Parts {
				fmt.Fprintf(&fit, " + %d a%d_%d", (part.Length+p.Kerf)/unit.Millimetre, b, k)
				fmt.Fprintf(&need[k], " + a%d_%d", b, k)
				fmt.Fprintf(&whole, " a%d_%d", b, k)
			}
			fmt.Fprintf(&fit, " - %d y%d <= 0\n", (s.Usable(problem.Boards).Length+p.Kerf)/unit.Millimetre, b)
			b++
		}
	}
	var lp strings.Builder
	fmt.Fprintf(&lp, "Minimize\n obj:%s\nSubject To\n%s", goal.String(), fit.String())
	for k, part := range p.Parts {
		fmt.Fprintf(&lp, "%s >= %d\n", need[k].String(), part.Quantity)
	}
	fmt.Fprintf(&lp, "Generals\n%s\nBinaries\n%s\nEnd\n", whole.String(), binary.String())
	file := filepath.Join(t.TempDir(), "order.lp")
	if err := os.WriteFile(file, []byte(lp.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.CommandContext(t.Context(), cbc, file, "sec", "60", "solve", "quit").CombinedOutput()
	if err != nil || !bytes.Contains(out, []byte("Optimal solution found")) {
		t.Fatalf("cbc: %v\n%s", err, out)
	}
	_, rest, _ := strings.Cut(string(out), "Objective value:")
	v, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	return int64(v + 0.5)
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
