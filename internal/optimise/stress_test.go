package optimise_test

import (
	"context"
	"errors"
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
