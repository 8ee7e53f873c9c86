package account_test

import (
	"context"
	"math/big"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/account"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

const mm = unit.Millimetre

// By hand: a board of 1000 with 10 off one end and a defect of 60 at 400. A part of
// 300 and one of 250: 300 | 3 | 97 to the defect... whatever the order, parts take
// 550 and the trim 10.
func TestByHand(t *testing.T) {
	p := problem.Problem{
		Form: problem.Boards, Kerf: 3 * mm,
		Stock: []problem.Stock{{
			Size: problem.Size{Length: 1000 * mm}, Cost: 1, Trim: problem.Trim{Start: 10 * mm},
			Defects: []problem.Box{{Point: problem.Point{Along: 400 * mm}, Size: problem.Size{Length: 60 * mm}}},
		}},
		Parts: []problem.Part{{Size: problem.Size{Length: 300 * mm}, Quantity: 1}, {Size: problem.Size{Length: 250 * mm}, Quantity: 1}},
	}
	a := solve(t, p)
	got := account.Of(p, a)
	for _, c := range []struct {
		what string
		got  *big.Int
		want unit.Length
	}{{"whole", got.Whole, 1000 * mm}, {"parts", got.Parts, 550 * mm}, {"trim", got.Trim, 10 * mm}, {"unavoidable", got.Unavoidable, 450 * mm}} {
		if c.got.Int64() != int64(c.want) {
			t.Errorf("%s: %v nm, by hand %d", c.what, c.got, c.want)
		}
	}
	// The defect lies in waste or under the blade; the parts lie beside it.
	if d := got.Defects.Int64(); d > int64(60*mm) || d < int64(54*mm) {
		t.Errorf("defects: %d nm of 60 mm", d)
	}
	closes(t, got)
}

func TestCloses(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := problem.Problem{Form: problem.Form(r.IntN(2)), Kerf: unit.Length(r.IntN(5)) * mm / 2, Useful: problem.Size{Length: 200 * mm}}
		s := problem.Stock{Size: problem.Size{Length: 1200 * mm}, Cost: 1, Trim: problem.Trim{Start: unit.Length(r.IntN(9)) * mm, End: 3 * mm}}
		if p.Form == problem.Sheets {
			s.Width, s.Trim.Low, p.Useful.Width = 600*mm, 4*mm, 200*mm
		}
		for range r.IntN(3) {
			d := problem.Box{Point: problem.Point{Along: unit.Length(100+r.IntN(800)) * mm}, Size: problem.Size{Length: 30 * mm}}
			if p.Form == problem.Sheets {
				d.Across, d.Width = unit.Length(r.IntN(500))*mm, unit.Length(1+r.IntN(60))*mm
			}
			s.Defects = append(s.Defects, d)
		}
		p.Stock = []problem.Stock{s}
		for range 1 + r.IntN(4) {
			part := problem.Part{Size: problem.Size{Length: unit.Length(60+r.IntN(200)) * mm}, Quantity: 1 + r.IntN(3)}
			if p.Form == problem.Sheets {
				part.Width = unit.Length(50+r.IntN(200)) * mm
			}
			p.Parts = append(p.Parts, part)
		}
		got := account.Of(p, solve(t, p))
		closes(t, got)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

func solve(t *testing.T, p problem.Problem) problem.Answer {
	t.Helper()
	a, err := optimise.Solve(context.Background(), p, problem.Budget{Work: 5_000_000, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// closes checks that the terms add up, and that none is negative.
func closes(t *testing.T, a account.Account) {
	t.Helper()
	sum, shares := new(big.Int), 0
	for i, term := range []*big.Int{a.Parts, a.Kerf, a.Trim, a.Defects, a.Remnant, a.Rest} {
		if term.Sign() < 0 {
			t.Errorf("term %d is negative: %v", i, term)
		}
		sum.Add(sum, term)
		shares += a.Shares()[i]
	}
	if sum.Cmp(a.Whole) != 0 || shares != 1000 {
		t.Errorf("terms add up to %v of %v, shares to %d", sum, a.Whole, shares)
	}
}
