package sheets

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

func sized(l, w int64) problem.Size {
	return problem.Size{Length: unit.MM(l), Width: unit.MM(w)}
}

// TestMerit orders plans of one sheet as a maker would: one large remnant before
// two small ones, then fewer settings of fence and stop.
func TestMerit(t *testing.T) {
	p := problem.Problem{Form: problem.Sheets, Cutting: problem.Cutting{Stages: 3, First: problem.Rip},
		Stock: []problem.Stock{{Size: sized(101, 60), Cost: 1}}, // so that a unit is a millimetre
		Parts: []problem.Part{{Size: sized(40, 20), Quantity: 2}, {Size: sized(40, 10), Quantity: 2}}}
	m := newModel(p, problem.Rip)
	piece := func(k int) []lying { return []lying{{Kind: k, X: 40, Y: []int64{20, 10}[k]}} }
	stack := func(k int) []lying { return append(piece(k), piece(k)...) }
	plan := func(rows ...[][]lying) merit {
		var strips []ceiling.Strip
		for _, r := range rows {
			strips = append(strips, r)
		}
		return meritOf([]cover.Use{{Pattern: m.stripped(0, strips), N: 1}})
	}
	inRow := plan([][]lying{piece(0), piece(0)}, [][]lying{piece(1), piece(1)}) // 30 of 60 stay whole
	apart := plan([][]lying{piece(0)}, [][]lying{piece(0)}, [][]lying{piece(1), piece(1)})
	stacked := plan([][]lying{piece(0), stack(1)}, [][]lying{piece(0)}) // 20 of 60 stay whole
	if !inRow.better(apart) || apart.better(inRow) {
		t.Errorf("in a row %+v, apart %+v", inRow, apart)
	}
	if !inRow.better(stacked) {
		t.Errorf("in a row %+v, stacked %+v", inRow, stacked)
	}
	if inRow.remnant != 101*30 || inRow.settings != 3 {
		t.Errorf("30 of 60 at full length, rips of 20 and 10, stops at 40: %+v", inRow)
	}
	same := merit{remnant: inRow.remnant, settings: inRow.settings + 1}
	if !inRow.better(same) || same.better(inRow) {
		t.Error("fewer settings come first at an equal remnant")
	}
}

// TestPolish: looking for a handier plan never costs more and never loses merit.
func TestPolish(t *testing.T) {
	better := 0
	for seed := range uint64(25) {
		r := rand.New(rand.NewPCG(seed, 5))
		p := problem.Problem{Form: problem.Sheets, Cutting: problem.Cutting{Stages: 3}, Kerf: unit.MM(3),
			Stock: []problem.Stock{{Size: sized(2440, 1220), Cost: 7}}}
		for range 3 + r.IntN(6) {
			p.Parts = append(p.Parts, problem.Part{Size: sized(200+r.Int64N(900), 100+r.Int64N(500)), Quantity: 1 + r.IntN(4), Turn: r.IntN(2) == 0})
		}
		s := &search{p: p, meter: free(), cost: 1 << 62, workers: 1}
		s.models = []*model{newModel(p, problem.Rip), newModel(p, problem.Crosscut)}
		s.exact = s.models
		s.constructed(work.New(t.Context(), 50_000_000))
		cost, before := s.cost, meritOf(s.uses)
		s.polish(work.New(t.Context(), polishWork))
		after := meritOf(s.uses)
		if s.cost > cost || s.cost == cost && before.better(after) {
			t.Errorf("seed %d: cost %d and %+v, then %d and %+v", seed, cost, before, s.cost, after)
		}
		if s.cost == cost && after.better(before) {
			better++
		}
		if !complete(s.models[0], s.uses) {
			t.Errorf("seed %d: pieces are missing", seed)
		}
	}
	if better < 5 {
		t.Errorf("only %d of 25 orders came out handier", better)
	}
}

// TestLongRipsFirst: on a sheet whose first cuts may run either way, and where
// only strips are cut, the first cuts of a diagram run with the length, widest
// strip first, and every rip is as wide as some part is (restricted cuts).
func TestLongRipsFirst(t *testing.T) {
	for seed := range uint64(25) {
		r := rand.New(rand.NewPCG(seed, 6))
		p := problem.Problem{Form: problem.Sheets, Cutting: problem.Cutting{Stages: 2, First: problem.Rip}, Kerf: unit.MM(3),
			Stock: []problem.Stock{{Size: sized(2440, 1220), Cost: 7}}}
		for range 2 + r.IntN(5) {
			p.Parts = append(p.Parts, problem.Part{Size: sized(200+r.Int64N(900), 100+r.Int64N(500)), Quantity: 1 + r.IntN(4)})
		}
		a, err := Solve(p, free(), work.New(t.Context(), 3_000_000), 1)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range a.Diagrams {
			last := unit.MM(5000)
			for n := d.Root; n != nil && n.Kind == problem.Sawn && n.Direction == problem.Rip && n.Length == d.Root.Length; n = n.Far {
				if n.At > last {
					t.Errorf("seed %d: a rip of %d after one of %d", seed, n.At, last)
				}
				last = n.At
				fits := false
				for _, part := range p.Parts {
					fits = fits || part.Width == n.At
				}
				if !fits {
					t.Errorf("seed %d: a rip of %d, as wide as no part", seed, n.At)
				}
			}
			if d.Root.Kind == problem.Sawn && d.Root.Direction != problem.Rip {
				t.Errorf("seed %d: the first cut crosses the sheet", seed)
			}
		}
	}
}
