package optimise_test

import (
	"flag"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

var publishedFine = flag.Int64("published-fine", 0, "measure the published sets with every size 127 units for one, one part longer by so many units, usually 1 or -1")

// finer returns a problem with 127 units of a micrometre for every millimetre,
// and so many more for the length of the last part that leaves room for them.
func finer(p problem.Problem, more int64) problem.Problem {
	const micron = unit.Millimetre / 1000
	f := func(l unit.Length) unit.Length { return l / unit.Millimetre * 127 * micron }
	size := func(s problem.Size) problem.Size { return problem.Size{Length: f(s.Length), Width: f(s.Width)} }
	p.Kerf, p.Useful = f(p.Kerf), size(p.Useful)
	p.Feed = problem.Feed{Long: f(p.Feed.Long), Short: f(p.Feed.Short)}
	stock, parts := p.Stock, p.Parts
	p.Stock, p.Parts = nil, nil
	for _, s := range stock {
		s.Size = size(s.Size)
		s.Trim = problem.Trim{Start: f(s.Trim.Start), End: f(s.Trim.End), Low: f(s.Trim.Low), High: f(s.Trim.High)}
		p.Stock = append(p.Stock, s)
	}
	for _, part := range parts {
		part.Size = size(part.Size)
		p.Parts = append(p.Parts, part)
	}
	if more != 0 {
		last := &p.Parts[len(p.Parts)-1]
		last.Length += unit.Length(more) * micron
		if p.Check() != nil {
			last.Length -= unit.Length(more) * micron
		}
	}
	return p
}

// TestFinerIsTheSame cuts small random orders in units 127 times as fine, one part
// shorter by one of them, which no fewer than 127 parts in a row can tell: the
// optimum is that by exhaustion in the coarse units, and it is met and proved as
// it is there.
func TestFinerIsTheSame(t *testing.T) {
	for seed := range uint64(30) {
		p := smallSheets(rand.New(rand.NewPCG(seed, 41)))
		want := problem.Cost(10 * fewestSheets(p))
		for _, stages := range []int{0, 3, 2} {
			p.Cutting.Stages = stages
			var both [2]problem.Answer
			for i, q := range []problem.Problem{p, finer(p, -1)} {
				a, err := optimise.Solve(t.Context(), q, problem.Budget{Work: 60_000_000})
				if err != nil {
					t.Fatalf("seed %d: %v", seed, err)
				}
				if err := conform.Verify(q, a); err != nil {
					t.Errorf("seed %d, %d stages: %v", seed, stages, err)
				}
				if a.Bound > a.Cost || a.Cost < want || stages == 0 && (a.Cost != want || a.Bound > want) {
					t.Errorf("seed %d, %d stages: cost %d, bound %d (%v); the optimum of any number of stages is %d", seed, stages, a.Cost, a.Bound, a.Status, want)
				}
				both[i] = a
			}
			if a, b := both[0], both[1]; a.Status == problem.Proved && b.Status == problem.Proved && a.Cost != b.Cost {
				t.Errorf("seed %d, %d stages: %d in coarse units, %d in fine ones, both proved", seed, stages, a.Cost, b.Cost)
			} else if a.Status == problem.Proved && b.Status != problem.Proved {
				t.Errorf("seed %d, %d stages: %d is proved in coarse units only: %d, bound %d", seed, stages, a.Cost, b.Cost, b.Bound)
			}
		}
	}
}
