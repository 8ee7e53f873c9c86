package optimise_test

import (
	"slices"
	"testing"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
)

// refuted is an instance whose published value, said to be proved with guillotine
// cuts, is one too high: see TestRefuted.
const refuted = "okp2"

// TestRefuted tries everything out for the published value of okp2 and for one
// less, with nothing of the engine: rectangles that are built up piece by piece
// and box by box, those left out that cannot reach the value with the best that
// may lie beside them (the method of Viswanathan and Bagchi, Operations Research
// 41, 1993, without its order).
func TestRefuted(t *testing.T) {
	set := readSet(t, "2d-knapsack-classic").Instances
	in := set[slices.IndexFunc(set, func(in problems.Instance) bool { return in.Name == refuted })]
	target, _ := targetOf(in, "max-value; guillotine, unlimited stages; no rotation")
	p, err := in.Problem(problems.Rules{})
	if err != nil {
		t.Fatal(err)
	}
	if *target.BestKnown != 22503 {
		t.Errorf("published as %g", *target.BestKnown)
	}
	e := newExhaustion(p)
	if e.reaches(22503) || !e.reaches(22502) {
		t.Error("22502 should be the best")
	}
}

// exhaustion holds the pieces of a sheet, each once, in millimetres.
type exhaustion struct {
	x, y           int
	w, h, value    []int
	within, beside [][]int // by box: the most in it and beside it, any number of copies
}

func newExhaustion(p problem.Problem) *exhaustion {
	mm := func(s problem.Size) (int, int) { return int(s.Length / 1_000_000), int(s.Width / 1_000_000) }
	e := &exhaustion{}
	e.x, e.y = mm(p.Stock[0].Size)
	for _, part := range p.Parts {
		for range part.Quantity {
			w, h := mm(part.Size)
			e.w, e.h, e.value = append(e.w, w), append(e.h, h), append(e.value, int(part.Value))
		}
	}
	for range e.x + 1 {
		e.within, e.beside = append(e.within, make([]int, e.y+1)), append(e.beside, make([]int, e.y+1))
	}
	for x := 1; x <= e.x; x++ {
		for y := 1; y <= e.y; y++ {
			best := 0
			for i := range e.w {
				if e.w[i] <= x && e.h[i] <= y {
					best = max(best, e.value[i])
				}
			}
			for a := 1; a < x; a++ {
				best = max(best, e.within[a][y]+e.within[x-a][y])
			}
			for a := 1; a < y; a++ {
				best = max(best, e.within[x][a]+e.within[x][y-a])
			}
			e.within[x][y] = best
		}
	}
	for x := e.x; x > 0; x-- {
		for y := e.y; y > 0; y-- {
			best := 0
			for a := 1; x+a <= e.x; a++ {
				best = max(best, e.beside[x+a][y]+e.within[a][y])
			}
			for a := 1; y+a <= e.y; a++ {
				best = max(best, e.beside[x][y+a]+e.within[x][a])
			}
			e.beside[x][y] = best
		}
	}
	return e
}

// built is a set of pieces that a box can be cut into.
type built struct {
	set   uint64
	value int
}

// reaches says whether pieces of so much value come out of the sheet.
func (e *exhaustion) reaches(goal int) bool {
	boxes := make([][][]built, e.x+1)
	reached := false
	for x := range boxes {
		boxes[x] = make([][]built, e.y+1)
		for y := range boxes[x] {
			if x == 0 || y == 0 {
				continue
			}
			seen := map[uint64]bool{}
			add := func(set uint64, value int) {
				if value+e.beside[x][y] >= goal && !seen[set] {
					seen[set] = true
					boxes[x][y] = append(boxes[x][y], built{set, value})
					reached = reached || value >= goal
				}
			}
			join := func(as, bs []built) {
				for _, a := range as {
					for _, b := range bs {
						if a.set&b.set == 0 {
							add(a.set|b.set, a.value+b.value)
						}
					}
				}
			}
			for i := range e.w {
				if e.w[i] == x && e.h[i] == y {
					add(1<<i, e.value[i])
				}
			}
			for a := 1; a < x; a++ {
				for y2 := 1; y2 <= y; y2++ {
					join(boxes[a][y2], boxes[x-a][y])
				}
			}
			for a := 1; a < y; a++ {
				for x2 := 1; x2 <= x; x2++ {
					join(boxes[x2][a], boxes[x][y-a])
				}
			}
		}
	}
	return reached
}
