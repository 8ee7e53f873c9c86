package optimise_test

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/outside"
	"scantling/internal/unit"
)

// TestExact checks, on lengths and kerfs in millimetres, inches and their binary
// fractions mixed, that parts which fill a board to the nanometre come out of
// it, and that a nanometre more on any one of them takes another board.
func TestExact(t *testing.T) {
	units := []unit.Length{unit.Millimetre, unit.Millimetre / 10, unit.Inch / 8, unit.Inch / 16, unit.Inch / 64, 1}
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 12))
		draw := func(least, most unit.Length) unit.Length {
			u := units[r.IntN(len(units))]
			return (least + unit.Length(r.Int64N(int64(most-least)))) / u * u
		}
		p := problem.Problem{Kerf: draw(unit.MM(1), unit.MM(5))}
		s := problem.Stock{Cost: 3, Trim: problem.Trim{Start: draw(0, unit.MM(20)), End: draw(0, unit.MM(20))}}
		clear := -p.Kerf
		for range 2 + r.IntN(6) {
			part := problem.Part{Size: problem.Size{Length: draw(unit.MM(80), unit.MM(500))}, Quantity: 1 + r.IntN(2)}
			p.Parts = append(p.Parts, part)
			clear += (part.Length + p.Kerf) * unit.Length(part.Quantity)
		}
		s.Length = s.Trim.Start + clear + s.Trim.End
		p.Stock = []problem.Stock{s}
		for _, c := range []struct {
			more unit.Length
			cost problem.Cost
		}{{0, 3}, {1, 6}} {
			p.Parts[0].Length += c.more
			a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 5_000_000})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if err := conform.Verify(p, a); err != nil {
				t.Errorf("seed %d: %v", seed, err)
			}
			if a.Cost != c.cost || a.Status != problem.Proved {
				t.Errorf("seed %d, %d nm more: cost %d (%v), want %d", seed, c.more, a.Cost, a.Status, c.cost)
			}
		}
	}
}

// TestShortage checks that the message says how much stock is missing.
func TestShortage(t *testing.T) {
	p := problem.Problem{
		Kerf:  unit.MM(3),
		Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(1000)}, Cost: 1, Limit: 2}},
		Parts: []problem.Part{{Size: problem.Size{Length: unit.MM(497)}, Quantity: 5}},
	}
	var f *problem.Fault
	if _, err := optimise.Solve(t.Context(), p, problem.Budget{}); !errors.As(err, &f) || f.Reason != problem.Shortage {
		t.Fatalf("%v", err)
	}
	// 5 (497 + 3) = 2500, 2 (1000 + 3) = 2006.
	for _, want := range []string{"2500 mm", "2006 mm", "494 mm too little", "raise a limit"} {
		if !strings.Contains(f.Text, want) {
			t.Errorf("%q does not say %q", f.Text, want)
		}
	}
}

// TestHard solves the classical instances that need cuts and branching, with one
// worker and with two.
func TestHard(t *testing.T) {
	for _, c := range []struct{ set, name string }{
		{"1d-waescher", "waescher_TEST0022"}, {"1d-hard28", "hard28_BPP119"}, {"1d-hard28", "hard28_BPP766"}, {"1d-hard28", "hard28_BPP14"}, {"1d-scholl-3", "scholl_HARD2"},
	} {
		if c.name != "waescher_TEST0022" && !outside.Long() {
			continue
		}
		for _, in := range readSet(t, c.set).Instances {
			if in.Name != c.name {
				continue
			}
			p, err := in.Problem(problems.Rules{})
			if err != nil {
				t.Fatal(err)
			}
			one, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 4_000_000_000})
			if err != nil {
				t.Fatal(err)
			}
			two, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 4_000_000_000, Workers: 2})
			if err != nil || !reflect.DeepEqual(one, two) {
				t.Errorf("%s: two workers answer differently: %v", c.name, err)
			}
			if err := conform.Verify(p, one); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			if target, ok := targetOf(in, "min-bins"); !ok || float64(one.Cost) != *target.BestKnown || one.Status != problem.Proved {
				t.Errorf("%s: %d, bound %d (%v)", c.name, one.Cost, one.Bound, one.Status)
			}
		}
	}
}
