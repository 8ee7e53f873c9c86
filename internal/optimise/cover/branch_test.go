package cover

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise/work"
)

// exhaustive is an oracle that tries every pattern of single pieces.
type exhaustive struct {
	length []int64
	room   int64
}

func (o exhaustive) Counts() bool { return true }
func (o exhaustive) Means() int   { return 1 }

func (o exhaustive) Uniform(_, kind, _ int) *Pattern { return o.pattern(1 << kind) }

// Complete puts all that is left on one board, if it fits.
func (o exhaustive) Complete(_ int, left, _ []int, money int64, _ *work.Meter) ([]Use, int64, bool) {
	set := 0
	for k, n := range left {
		set |= n << k
	}
	if !o.fits(set) || money <= 1 {
		return nil, 0, false
	}
	return []Use{{o.pattern(set), 1}}, 1, true
}

func (o exhaustive) Finish([]int, []int, int64, int, *work.Meter) ([]Use, int64, bool) {
	return nil, 0, false
}

func (o exhaustive) pattern(set int) *Pattern {
	var e []Entry
	for k := range o.length {
		if set>>k&1 == 1 {
			e = append(e, Entry{k, 1})
		}
	}
	return NewPattern(0, e, nil)
}

func (o exhaustive) fits(set int) bool {
	sum := int64(0)
	for k, w := range o.length {
		sum += int64(set>>k&1) * w
	}
	return sum <= o.room
}

func (o exhaustive) Price(ask Ask, _ *work.Meter) (Reply, bool) {
	best, at := int64(0), 0
	for set := range 1 << len(o.length) {
		if !o.fits(set) {
			continue
		}
		p, worth, bad := o.pattern(set), int64(0), false
		for _, e := range p.Use {
			worth += ask.Value[e.Kind]
			bad = bad || ask.Left[e.Kind] == 0
		}
		for _, c := range ask.Cuts {
			worth -= c.Price * int64(c.Sets(p))
		}
		bad = bad || !(&relaxation{together: ask.Together, apart: ask.Apart}).allows(p)
		if !bad && worth > best {
			best, at = worth, set
		}
	}
	r := Reply{Worth: []int64{best}, Exact: true}
	if best > ask.Price[0] {
		r.Found = []*Pattern{o.pattern(at)}
	}
	return r, true
}

// fewest returns the least number of boards, by trying for every set of pieces
// which part of it goes on the last board.
func (o exhaustive) fewest() int64 {
	least := make([]int64, 1<<len(o.length))
	for set := 1; set < len(least); set++ {
		least[set] = math.MaxInt64
		for part := set; part > 0; part = (part - 1) & set {
			if o.fits(part) {
				least[set] = min(least[set], 1+least[set&^part])
			}
		}
	}
	return least[len(least)-1]
}

// TestBranch checks on small orders, with and without cuts, that branching finds
// the optimum where it is asked for less than one board more, and proves it where
// it is asked for less than the optimum.
func TestBranch(t *testing.T) {
	cut := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 5))
		o := exhaustive{room: 100}
		for range 7 + r.IntN(4) {
			o.length = append(o.length, 15+r.Int64N(45))
		}
		p := &Problem{Stock: []Stock{{1, Plenty}}, Step: 1, Oracle: func(int) Oracle { return o }}
		for range o.length {
			p.Demand = append(p.Demand, 1)
		}
		optimum := o.fewest()
		for _, more := range []int64{1, 0} {
			meter := work.New(context.Background(), math.MaxInt64)
			task := &task{p: p, node: &node{box: box{[]int{0}, []int{Plenty}}, whole: true}, known: newPool(nil), meter: meter, best: optimum + more, cost: optimum + more}
			if seed%2 == 0 {
				task.tighten(slices.Clone(p.Demand), o)
				cut += min(1, len(task.cuts))
				if task.proved > optimum {
					t.Fatalf("seed %d: cuts prove %d, the optimum is %d", seed, task.proved, optimum)
				}
			}
			task.branch(o, 1000)
			if more == 1 && (task.cost != optimum || task.found == nil) {
				t.Errorf("seed %d: %d boards, the optimum is %d", seed, task.cost, optimum)
			}
			if more == 0 && (!task.exhausted || task.proved != optimum || task.found != nil) {
				t.Errorf("seed %d: the optimum %d is not proved: %d", seed, optimum, task.proved)
			}
		}
	}
	if cut == 0 {
		t.Error("no cut was ever found: the test does not test them")
	}
}

// TestSafe checks that what any prices prove, however wrong, holds: the bound of
// random prices of pieces, cuts and limits never exceeds the optimum.
func TestSafe(t *testing.T) {
	reached := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 8))
		o := exhaustive{room: 100}
		for range 3 + r.IntN(5) {
			o.length = append(o.length, 15+r.Int64N(60))
		}
		p := &Problem{Stock: []Stock{{1 + r.Int64N(5), Plenty}}, Step: 1, Oracle: func(int) Oracle { return o }}
		for range o.length {
			p.Demand = append(p.Demand, 1)
		}
		optimum := o.fewest()
		b := box{[]int{0}, []int{Plenty}}
		if r.IntN(2) == 0 {
			b.hi[0] = int(optimum) + r.IntN(2)
		}
		if r.IntN(2) == 0 {
			b.lo[0] = r.IntN(int(optimum) + 1)
		}
		cuts := []Cut{{Kinds: []int{0, 1, 2}, Points: []int{1, 1, 1}, Of: 2}, {Kinds: []int{0, 1, 2}, Points: []int{2, 1, 1}, Of: 3}}
		pr := newPricing(p, o)
		rel := newRelaxation(p, p.Demand, b, cuts, newPool(nil), pr, work.New(context.Background(), math.MaxInt64))
		for range 5 {
			prices := make([]float64, len(o.length)+4)
			for i := range prices {
				prices[i] = r.Float64() * []float64{0.5, 1, 1000, 1e9}[min(3, r.IntN(40)/12)]
			}
			if !pr.run(rel, prices, work.New(context.Background(), math.MaxInt64)) {
				t.Fatal("no answer")
			}
			got, most := pr.proves(rel), optimum*p.Stock[0].Cost
			if got > most {
				t.Fatalf("seed %d: %d is proved, the optimum is %d", seed, got, most)
			}
			if got == most {
				reached++
			}
		}
	}
	if reached == 0 {
		t.Error("no prices ever prove the optimum: the test is too weak")
	}
}

// TestCuts checks that no plan of whole boards breaks a cut: on random plans, the
// sets of all patterns are no more than all pieces make.
func TestCuts(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 6))
		shape := shapes[r.IntN(len(shapes))]
		c := Cut{Of: shape.of, Points: shape.points}
		left := make([]int, len(shape.points)+3)
		for k := range shape.points {
			c.Kinds = append(c.Kinds, k)
		}
		sets := 0
		for range 1 + r.IntN(6) {
			var e []Entry
			for k := range left {
				if n := r.IntN(3); n > 0 {
					e = append(e, Entry{k, n})
					left[k] += n
				}
			}
			sets += c.Sets(NewPattern(0, e, nil))
		}
		if sets > c.most(left) {
			t.Fatalf("seed %d: %d sets, at most %d should be possible", seed, sets, c.most(left))
		}
	}
}
