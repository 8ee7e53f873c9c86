package sheets

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/coarse"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

// odd draws an order in odd numbers of micrometres with everything an order of
// sheets may have.
func odd(r *rand.Rand) problem.Problem {
	size := func(l, w, over int64) problem.Size {
		return problem.Size{Length: unit.MM(l+r.Int64N(over)) / 1000, Width: unit.MM(w+r.Int64N(over)) / 1000}
	}
	p := problem.Problem{Form: problem.Sheets, Kerf: unit.MM(r.Int64N(4000)) / 1000,
		Cutting: problem.Cutting{Stages: []int{0, 2, 3}[r.IntN(3)], First: problem.Direction(r.IntN(3))}}
	p.Cutting.Exact = p.Cutting.Stages == 3 && r.IntN(3) == 0
	stocks := 1 + r.IntN(2)
	if r.IntN(4) == 0 {
		p.Goal, stocks = problem.MostValue, 1
	}
	for range stocks {
		s := problem.Stock{Size: size(900_000, 700_000, 400_000), Cost: problem.Cost(50 + r.IntN(50))}
		if r.IntN(4) == 0 {
			s.Defects = []problem.Box{{Point: problem.Point{Along: unit.MM(r.Int64N(500)), Across: unit.MM(r.Int64N(500))}, Size: size(1, 1, 40_000)}}
		}
		p.Stock = append(p.Stock, s)
	}
	for range 2 + r.IntN(12) {
		part := problem.Part{Size: size(90_000, 60_000, 350_000), Quantity: 1 + r.IntN(5), Turn: r.IntN(2) == 0}
		if p.Goal == problem.MostValue {
			part.Value = problem.Cost(1 + r.IntN(100))
		}
		p.Parts = append(p.Parts, part)
	}
	if r.IntN(5) == 0 {
		p.Feed = problem.Feed{Long: unit.MM(120)}
	}
	return p
}

// TestFewUnits solves odd orders with tables of so few units that more fits the
// loose rooms than the tight ones: the diagrams hold, no bound passes a cost, nor
// a bound another cost for the same order, found with more units.
func TestFewUnits(t *testing.T) {
	apart := 0
	for seed := range uint64(60) {
		p := odd(rand.New(rand.NewPCG(seed, 51)))
		if p.Check() != nil {
			continue
		}
		var all []problem.Answer
		for _, most := range []int64{1 << 9, 1 << 7, 1 << 8, ceiling.MostUnits} {
			models := rounded([]*model{newModel(p, problem.Rip)}, most, free())
			if m := models[0]; m != m.loose && m.exact != m {
				apart++
			}
			a, err := solve(p, most, work.New(t.Context(), 50_000_000), work.New(t.Context(), 8_000_000), 1)
			if err != nil {
				t.Logf("seed %d: %v", seed, err)
				continue
			}
			if err := conform.Verify(p, a); err != nil {
				t.Errorf("seed %d, %d units: %v", seed, most, err)
			}
			all = append(all, a)
		}
		for _, a := range all {
			for _, b := range all {
				if p.Goal == problem.MostValue && a.Bound < b.Cost || p.Goal == problem.LeastCost && a.Bound > b.Cost {
					t.Errorf("seed %d: %d found, bound %d (%v) and %d (%v)", seed, b.Cost, b.Bound, b.Proof, a.Bound, a.Proof)
				}
			}
		}
	}
	if apart < 40 {
		t.Errorf("only in %d runs more fitted the loose rooms: the test tests too little", apart)
	}
}

// TestLooseAndTight draws fillings in the three models of an order: one that fits
// in true sizes fits the loose model, and one that fits the tight model fits in
// true sizes.
func TestLooseAndTight(t *testing.T) {
	fitted := [3]int{}
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 52))
		p := odd(r)
		p.Goal, p.Cutting, p.Feed = problem.LeastCost, problem.Cutting{First: problem.Rip}, problem.Feed{}
		for i := range p.Stock {
			p.Stock[i].Defects = nil
		}
		m := newModel(p, problem.Rip)
		tight := rounded([]*model{m}, 1<<7, free())[0]
		if tight == m {
			continue
		}
		var pieces []lying
		for _, l := range m.order(highest) {
			if l.Turned == (r.IntN(2) == 0) {
				pieces = append(pieces, l)
			}
		}
		left, _ := m.demand()
		var draw func(n int) *ceiling.Parcel
		draw = func(n int) *ceiling.Parcel {
			if n == 0 {
				l := pieces[r.IntN(len(pieces))]
				if left[l.Kind] == 0 {
					return nil
				}
				left[l.Kind]--
				return &ceiling.Parcel{Piece: &l}
			}
			return &ceiling.Parcel{Cut: problem.Direction(1 + r.IntN(2)), Parts: [2]*ceiling.Parcel{draw(n - 1), draw(n - 1)}}
		}
		if len(pieces) == 0 {
			continue
		}
		root := draw(1 + r.IntN(3))
		if root == nil {
			continue
		}
		var fits [3]bool
		for i, in := range []*model{tight.loose, m, tight} {
			size := coarse.True(func(l lying) lying {
				k := in.kinds[l.Kind]
				if l.X, l.Y = k.x, k.y; l.Turned {
					l.X, l.Y = k.tx, k.ty
				}
				return l
			})
			if fits[i] = size.Parcel(root, in.stock[0].x, in.stock[0].y) != nil; fits[i] {
				fitted[i]++
			}
		}
		if fits[1] && !fits[0] || fits[2] && !fits[1] {
			t.Errorf("seed %d: fits loose %v, truly %v, tight %v", seed, fits[0], fits[1], fits[2])
		}
	}
	if fitted[2] < 60 || fitted[0] > 280 {
		t.Errorf("%v fitted: the test tests too little", fitted)
	}
	t.Logf("%v fitted the loose model, in true sizes, the tight one", fitted)
}
