package problems

import (
	"math/rand/v2"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Random returns a small problem of the given form with everything a problem
// may have, drawn from r. It always passes Check, and can be cut unless its
// sequences or its stages forbid it.
func Random(r *rand.Rand, form problem.Form) problem.Problem {
	p := problem.Problem{Name: "random", Form: form, Kerf: unit.MM(int64(r.IntN(5)))}
	if r.IntN(3) == 0 {
		p.Useful = problem.Size{Length: unit.MM(300), Width: unit.MM(80)}
	}
	for i := range 1 + r.IntN(3) {
		s := problem.Stock{Size: problem.Size{Length: unit.MM(1500 + r.Int64N(1500))}}
		if form == problem.Sheets {
			s.Width = unit.MM(800 + r.Int64N(800))
		}
		s.Cost = problem.Cost(s.Length/unit.Millimetre) + problem.Cost(r.IntN(500))
		if i > 0 && r.IntN(2) == 0 {
			s.Limit = 1 + r.IntN(3)
		}
		if r.IntN(3) == 0 {
			s.Trim = problem.Trim{Start: unit.MM(10), End: unit.MM(r.Int64N(20))}
			if form == problem.Sheets {
				s.Trim.Low, s.Trim.High = unit.MM(5), unit.MM(r.Int64N(10))
			}
		}
		if i > 0 && r.IntN(3) == 0 {
			d := problem.Box{Point: problem.Point{Along: unit.MM(r.Int64N(1500))}, Size: problem.Size{Length: unit.MM(1 + r.Int64N(60))}}
			if form == problem.Sheets {
				d.Across, d.Width = unit.MM(r.Int64N(800)), unit.MM(1+r.Int64N(60))
			}
			s.Defects = []problem.Box{d}
		}
		p.Stock = append(p.Stock, s)
	}
	for range 1 + r.IntN(8) {
		part := problem.Part{Size: problem.Size{Length: unit.MM(60 + r.Int64N(1200))}, Quantity: 1 + r.IntN(5)}
		if form == problem.Sheets {
			part.Width = unit.MM(40 + r.Int64N(600))
			part.Turn = r.IntN(2) == 0
		}
		p.Parts = append(p.Parts, part)
	}
	if form == problem.Sheets {
		p.Cutting.Stages = []int{0, 2, 3}[r.IntN(3)]
		p.Cutting.First = problem.Direction(r.IntN(3))
		p.Cutting.Exact = p.Cutting.Stages == 3 && r.IntN(4) == 0
	} else if r.IntN(4) == 0 {
		p.Feed.Long = unit.MM(r.Int64N(400))
	}
	return p
}
