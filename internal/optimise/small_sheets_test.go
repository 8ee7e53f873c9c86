package optimise_test

import (
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// smallSheets draws an order of up to seven parts from sheets of one size.
func smallSheets(r *rand.Rand) problem.Problem {
	p := problem.Problem{Form: problem.Sheets, Kerf: unit.MM(int64(r.IntN(4)))}
	s := problem.Stock{Size: problem.Size{Length: unit.MM(40 + r.Int64N(60)), Width: unit.MM(40 + r.Int64N(60))}, Cost: 10}
	s.Trim = problem.Trim{Start: unit.MM(r.Int64N(4)), Low: unit.MM(r.Int64N(4))}
	p.Stock = []problem.Stock{s}
	u := s.Usable(problem.Sheets)
	for p.Pieces() < 7 {
		p.Parts = append(p.Parts, problem.Part{
			Size: problem.Size{
				Length: unit.MM(8 + r.Int64N(int64(u.Length/unit.Millimetre)*3/4)),
				Width:  unit.MM(8 + r.Int64N(int64(u.Width/unit.Millimetre)*3/4)),
			},
			Quantity: 1 + r.IntN(7-p.Pieces())%3, Turn: r.IntN(2) == 0,
		})
		last := &p.Parts[len(p.Parts)-1]
		if last.Length > u.Length || last.Width > u.Width {
			last.Length, last.Width = min(last.Length, u.Length), min(last.Width, u.Width)
		}
	}
	return p
}

// fewestSheets returns the least number of sheets with guillotine cuts in any
// number of stages: for every set of parts all smallest boxes that it comes out
// of, by every way to part the set in two; then the fewest sets that fit.
func fewestSheets(p problem.Problem) int {
	var parts []int
	for i, part := range p.Parts {
		for range part.Quantity {
			parts = append(parts, i)
		}
	}
	u := p.Stock[0].Usable(problem.Sheets)
	sets := 1 << len(parts)
	boxes := make([][]problem.Size, sets)
	fewest := make([]int, sets)
	for set := 1; set < sets; set++ {
		var all []problem.Size
		if bits.OnesCount(uint(set)) == 1 {
			part := p.Parts[parts[bits.TrailingZeros(uint(set))]]
			all = append(all, part.Size)
			if part.Turn {
				all = append(all, problem.Size{Length: part.Width, Width: part.Length})
			}
		}
		for a := (set - 1) & set; a > 0; a = (a - 1) & set {
			for _, x := range boxes[a] {
				for _, y := range boxes[set&^a] {
					all = append(all,
						problem.Size{Length: x.Length + p.Kerf + y.Length, Width: max(x.Width, y.Width)},
						problem.Size{Length: max(x.Length, y.Length), Width: x.Width + p.Kerf + y.Width})
				}
			}
		}
		for i, b := range all {
			if b.Length <= u.Length && b.Width <= u.Width && !slices.ContainsFunc(all, func(c problem.Size) bool {
				return c.Length <= b.Length && c.Width <= b.Width && c != b
			}) && !slices.Contains(all[:i], b) {
				boxes[set] = append(boxes[set], b)
			}
		}
		fewest[set] = len(parts)
		for a := set; a > 0; a = (a - 1) & set {
			if len(boxes[a]) > 0 {
				fewest[set] = min(fewest[set], 1+fewest[set&^a])
			}
		}
	}
	return fewest[sets-1]
}

// TestSmallSheets compares small random orders of sheets with the optimum by
// exhaustion: any number of stages meets it, fewer are no better, no bound is
// above.
func TestSmallSheets(t *testing.T) {
	for seed := range uint64(60) {
		p := smallSheets(rand.New(rand.NewPCG(seed, 14)))
		want := problem.Cost(10 * fewestSheets(p))
		for _, stages := range []int{0, 3, 2} {
			p.Cutting.Stages = stages
			a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 20_000_000})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if err := conform.Verify(p, a); err != nil {
				t.Errorf("seed %d, %d stages: %v", seed, stages, err)
			}
			if a.Cost < want || stages == 0 && (a.Cost != want || a.Bound > want) {
				t.Errorf("seed %d, %d stages: cost %d, bound %d (%v); the optimum of any number of stages is %d", seed, stages, a.Cost, a.Bound, a.Status, want)
			}
		}
	}
}
