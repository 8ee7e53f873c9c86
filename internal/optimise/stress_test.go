package optimise_test

import (
	"context"
	"errors"
	"math/rand/v2"
	"reflect"
	"sync/atomic"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// large returns an order with many kinds of lengths that share no measure.
func large(form problem.Form, kinds int) problem.Problem {
	p := problem.Problem{Form: form, Kerf: unit.Inch / 8}
	for i := range 6 {
		p.Stock = append(p.Stock, problem.Stock{
			Size: problem.Size{Length: unit.MM(2400) + unit.Length(i)*7_777_777, Width: unit.MM(1200)}, Cost: problem.Cost(100 + 3*i)})
	}
	for i := range kinds {
		p.Parts = append(p.Parts, problem.Part{
			Size:     problem.Size{Length: unit.MM(100) + unit.Length(i)*1_234_567%unit.MM(2000), Width: unit.MM(50) + unit.Length(i)*7_654_321%unit.MM(900)},
			Quantity: 1 + i%7, Turn: i%2 == 0})
	}
	return p
}

// countdown is a context that ends at the n-th look at it.
type countdown struct {
	context.Context
	looks atomic.Int64
}

func (c *countdown) Err() error {
	if c.looks.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// TestPrompt checks that a run ends soon after it is cancelled: a context that
// ends after so many looks leaves no more work done than lies between the looks,
// and what comes back is sound.
func TestPrompt(t *testing.T) {
	const between = 1 << 17 // twice the work between two looks of one meter
	stopped := 0
	for looks := int64(1); looks < 100; looks *= 2 {
		ctx := &countdown{Context: t.Context()}
		ctx.looks.Store(looks)
		p := hard()
		a, err := optimise.Solve(ctx, p, problem.Budget{})
		if err != nil {
			if !errors.Is(err, context.Canceled) {
				t.Error(err)
			}
			continue
		}
		switch a.Status {
		case problem.Stopped:
			stopped++
		case problem.Proved:
		default:
			t.Errorf("%d looks: status %v", looks, a.Status)
		}
		if a.Work > (looks+1)*between+1_000_000 {
			t.Errorf("%d looks: %d units of work", looks, a.Work)
		}
		if err := conform.Verify(p, a); err != nil {
			t.Error(err)
		}
	}
	if stopped < 3 {
		t.Errorf("only %d runs were stopped: the test tests too little", stopped)
	}
}

// hard returns an order that takes some work: many different pieces that nearly
// fill the boards.
func hard() problem.Problem {
	p := problem.Problem{Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(1000)}, Cost: 1}}}
	r := rand.New(rand.NewPCG(14, 28))
	for range 160 {
		p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(1 + r.Int64N(800))}, Quantity: 1})
	}
	return p
}

// TestObeyed checks that the work allowed beyond the first method's is never
// passed, whatever it is, and that two workers answer as one does.
func TestObeyed(t *testing.T) {
	p := hard()
	first, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 1})
	if err != nil {
		t.Fatal(err)
	}
	for w := int64(1000); w < 30_000_000; w *= 7 {
		var both [2]problem.Answer
		for n := range both {
			a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: w, Workers: n + 1})
			if err != nil {
				t.Fatal(err)
			}
			if err := conform.Verify(p, a); err != nil {
				t.Error(err)
			}
			both[n] = a
		}
		if !reflect.DeepEqual(both[0], both[1]) {
			t.Errorf("%d units: two workers answer differently", w)
		}
		if a := both[0].Work; a > first.Work+w {
			t.Errorf("%d units: %d spent after the first method", w, a-first.Work)
		}
	}
}

// TestLarge checks that large orders of odd sizes are answered soundly within
// the work allowed, and that a stopped run ends without an answer or with a
// sound one.
func TestLarge(t *testing.T) {
	for _, form := range []problem.Form{problem.Boards, problem.Sheets} {
		p := large(form, 300)
		a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 20_000_000})
		if err != nil {
			t.Fatal(err)
		}
		if err := conform.Verify(p, a); err != nil {
			t.Error(err)
		}
		ctx, cancel := context.WithCancel(t.Context())
		cancel()
		a, err = optimise.Solve(ctx, large(form, 2000), problem.Budget{})
		if err != nil && !errors.Is(err, context.Canceled) {
			t.Error(err)
		}
		if err == nil && a.Status != problem.Stopped {
			t.Errorf("status %v", a.Status)
		}
	}
}
