package boards

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

// blunt is an oracle that neither completes plans nor tries anything out, so
// that diving, cuts and branching must find and prove by themselves.
type blunt struct{ *oracle }

func (blunt) Means() int { return 0 }

func (blunt) Finish([]int, []int, int64, int, *work.Meter) ([]cover.Use, int64, bool) {
	return nil, 0, false
}

// TestAlone compares what diving, cuts and branching find and prove by
// themselves with trying everything, on orders whose pieces nearly fill the
// boards.
func TestAlone(t *testing.T) {
	met, short := 0, 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 21))
		p := problem.Problem{Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(300)}, Cost: 1}}}
		for range 13 + r.IntN(8) {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(55 + r.Int64N(110))}, Quantity: 1})
		}
		// The last piece fills the boards up, but for a little.
		total := unit.Length(0)
		for _, part := range p.Parts {
			total += part.Length
		}
		spare := (299 - int64(total/unit.Millimetre)%300) - r.Int64N(6)
		for ; spare > 165; spare -= spare / 2 {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(spare / 2)}, Quantity: 1})
		}
		if spare > 0 {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(spare)}, Quantity: 1})
		}
		m := newModel(p)
		optimum := leastBoards(t, m)
		c := m.cover()
		c.Oracle = func(int) cover.Oracle { return blunt{newOracle(m)} }
		material, _ := m.material()
		// One board a piece to begin with.
		begin := cover.Result{Bound: material}
		for k := range m.kinds {
			begin.Uses = append(begin.Uses, cover.Use{Pattern: newPattern(0, [][]cover.Entry{{{Kind: k, N: 1}}}), N: m.kinds[k].d})
			begin.Cost += int64(m.kinds[k].d)
		}
		end := cover.Improve(c, begin, nil, work.New(t.Context(), 30_000_000), 1)
		if end.Bound > optimum || end.Cost < optimum {
			t.Fatalf("seed %d: cost %d, bound %d, the optimum is %d", seed, end.Cost, end.Bound, optimum)
		}
		if optimum > material {
			short++
		}
		if end.Cost == end.Bound {
			met++
		}
	}
	if met < 55 || short < 20 {
		t.Errorf("%d of 60 proved, %d above the material", met, short)
	}
}

// leastBoards returns the optimum by trying everything.
func leastBoards(t *testing.T, m *model) int64 {
	left := make([]int, len(m.kinds))
	pieces := 0
	for k := range left {
		left[k] = m.kinds[k].d
		pieces += left[k]
	}
	for n := 1; ; n++ {
		e := newEnding(m, left, []int{cover.Plenty}, int64(n), free())
		e.most = math.MaxInt
		uses, _, complete := e.run()
		switch {
		case uses != nil:
			return int64(n)
		case !complete || n > pieces:
			t.Fatal("not everything was tried")
		}
	}
}

// brutal puts piece after piece on every board that is open or can still be
// bought, and keeps the least cost.
type brutal struct {
	m      *model
	pieces []int64
	open   [][]int64 // room left in each clear length of each board
	stock  []int
	best   int64
}

func (b *brutal) put(i int, cost int64) {
	if cost >= b.best {
		return
	}
	if i == len(b.pieces) {
		b.best = cost
		return
	}
	w := b.pieces[i]
	for _, board := range b.open {
		for s := range board {
			if board[s] >= w {
				board[s] -= w
				b.put(i+1, cost)
				board[s] += w
			}
		}
	}
	for k, n := range b.stock {
		if n > 0 {
			b.stock[k]--
			b.open = append(b.open, slices.Clone(b.m.stock[k].caps))
			last := b.open[len(b.open)-1]
			for s := range last {
				if last[s] >= w {
					last[s] -= w
					b.put(i+1, cost+b.m.stock[k].cost)
					last[s] += w
				}
			}
			b.open = b.open[:len(b.open)-1]
			b.stock[k]++
		}
	}
}

// TestEnding compares trying board after board with trying piece after piece, on
// boards with prices, limits and defects: it finds the optimum where that may be
// spent, and nothing, and says so, where it may not.
func TestEnding(t *testing.T) {
	tried := 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 51))
		p := problem.Problem{Kerf: unit.MM(r.Int64N(3))}
		for i := range 1 + r.IntN(3) {
			s := problem.Stock{Size: problem.Size{Length: unit.MM(30 + r.Int64N(40))}, Cost: problem.Cost(1 + r.IntN(9)), Limit: i}
			if r.IntN(2) == 0 {
				s.Defects = []problem.Box{{Point: problem.Point{Along: unit.MM(5 + r.Int64N(20))}, Size: problem.Size{Length: unit.MM(3 + r.Int64N(3))}}}
			}
			p.Stock = append(p.Stock, s)
		}
		b := &brutal{best: math.MaxInt64}
		for range 3 + r.IntN(4) {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(3 + r.Int64N(25))}, Quantity: 1})
		}
		if p.Check() != nil {
			continue
		}
		m := newModel(p)
		b.m = m
		left := make([]int, len(m.kinds))
		for k, kind := range m.kinds {
			left[k] = kind.d
			for range kind.d {
				b.pieces = append(b.pieces, kind.w)
			}
		}
		for i := range m.stock {
			b.stock = append(b.stock, m.stock[i].limit)
		}
		b.put(0, 0)
		if b.best == math.MaxInt64 {
			continue
		}
		tried++
		for _, money := range []int64{b.best, b.best - 1} {
			e := newEnding(m, left, slices.Clone(b.stock), money, free())
			e.most = math.MaxInt
			uses, cost, complete := e.run()
			if !complete || (uses != nil) != (money == b.best) || uses != nil && (cost != b.best || m.cover().Cost(uses) != cost) {
				t.Errorf("seed %d: with %d: cost %d, found %v, complete %v; the optimum is %d", seed, money, cost, uses != nil, complete, b.best)
			}
		}
	}
	if tried < 80 {
		t.Errorf("only %d orders were tried", tried)
	}
}
