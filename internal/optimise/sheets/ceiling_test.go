package sheets

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

func free() *work.Meter { return work.New(context.Background(), math.MaxInt64) }

func randomSheet(r *rand.Rand, stages int) problem.Problem {
	p := problem.Problem{Form: problem.Sheets, Cutting: problem.Cutting{Stages: stages, First: problem.Rip},
		Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(8 + r.Int64N(10)), Width: unit.MM(6 + r.Int64N(10))}, Cost: 1}}}
	for range 1 + r.IntN(5) {
		p.Parts = append(p.Parts, problem.Part{
			Size:     problem.Size{Length: unit.MM(1 + r.Int64N(8)), Width: unit.MM(1 + r.Int64N(6))},
			Quantity: 400, Turn: r.IntN(3) == 0})
	}
	return p
}

// TestRaster compares the recursion over points with one over every unit.
func TestRaster(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 1))
		m := newModel(randomSheet(r, 0), problem.Rip)
		left, _ := m.demand()
		value := make([]int64, len(m.kinds))
		for k := range value {
			value[k] = r.Int64N(30)
		}
		var ra ceiling.Raster
		if !m.raster(&ra, 0, value, left, free()) {
			t.Fatalf("seed %d", seed)
		}
		want := everyUnit(m, value)
		if ra.Top() != want {
			t.Errorf("seed %d: %d, every unit gives %d", seed, ra.Top(), want)
		}
		if p := m.parcelled(0, ra.Filling(left)); want > 0 && (p == nil || worth(p, value) != want) {
			t.Errorf("seed %d: the filling is not worth %d", seed, want)
		}
		var c ceiling.Stages
		if !m.stages(&c, 0, value, left, true, free()) || c.Worth() > want {
			t.Errorf("seed %d: three stages %d, any number %d", seed, c.Worth(), want)
		}
	}
}

// everyUnit is the plain recursion.
func everyUnit(m *model, value []int64) int64 {
	t := &m.stock[0]
	f := make([][]int64, t.x+1)
	for x := range f {
		f[x] = make([]int64, t.y+1)
	}
	for x := int64(1); x <= t.x; x++ {
		for y := int64(1); y <= t.y; y++ {
			for _, l := range m.order(largest) {
				if l.X <= x && l.Y <= y {
					f[x][y] = max(f[x][y], value[l.Kind])
				}
			}
			for a := int64(1); a < x; a++ {
				f[x][y] = max(f[x][y], f[a][y]+f[x-a][y])
			}
			for a := int64(1); a < y; a++ {
				f[x][y] = max(f[x][y], f[x][a]+f[x][y-a])
			}
		}
	}
	return f[t.x][t.y]
}

// TestConflict checks the bound from conflicts against orders that are known to
// fit: sheets cut at random into parts need no more than so many sheets.
func TestConflict(t *testing.T) {
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 2))
		p := problem.Problem{Form: problem.Sheets, Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(60), Width: unit.MM(40)}, Cost: 1}}}
		sheets := 1 + r.IntN(5)
		for range sheets {
			p.Parts = append(p.Parts, cutUp(r, 60, 40, 3)...)
		}
		m := newModel(p, problem.Rip)
		if n := m.conflict(free()); n > int64(sheets) {
			t.Errorf("seed %d: %d sheets proved, %d suffice", seed, n, sheets)
		}
	}
	// More than half in both directions: no two fit together.
	p := problem.Problem{Form: problem.Sheets,
		Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(60), Width: unit.MM(40)}, Cost: 1}},
		Parts: []problem.Part{{Size: problem.Size{Length: unit.MM(31), Width: unit.MM(21)}, Quantity: 7}}}
	if n := newModel(p, problem.Rip).conflict(free()); n != 7 {
		t.Errorf("seven parts that exclude each other: %d sheets", n)
	}
}

func cutUp(r *rand.Rand, l, w int64, depth int) []problem.Part {
	if depth == 0 || l < 4 || w < 4 {
		return []problem.Part{{Size: problem.Size{Length: unit.MM(l), Width: unit.MM(w)}, Quantity: 1, Turn: r.IntN(2) == 0}}
	}
	if r.IntN(2) == 0 {
		a := 1 + r.Int64N(l-1)
		return append(cutUp(r, a, w, depth-1), cutUp(r, l-a, w, depth-1)...)
	}
	a := 1 + r.Int64N(w-1)
	return append(cutUp(r, l, a, depth-1), cutUp(r, l, w-a, depth-1)...)
}
