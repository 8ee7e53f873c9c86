package boards

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
	"scantling/internal/unit"
)

func free() *work.Meter { return work.New(context.Background(), math.MaxInt64) }

// orderOf returns a model with one board of the given length.
func orderOf(r *rand.Rand, kinds int) *model {
	p := problem.Problem{Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(60 + r.Int64N(60))}, Cost: 1}}}
	for range kinds {
		p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(3 + r.Int64N(40))}, Quantity: 1 + r.IntN(3)})
	}
	return newModel(p)
}

// brute returns the greatest profit by trying all counts.
func brute(m *model, profit []int64, left []int, k int, room int64) int64 {
	if k == len(m.kinds) {
		return 0
	}
	var best int64
	for n := int64(0); n <= int64(left[k]) && n*m.kinds[k].w <= room; n++ {
		best = max(best, n*profit[k]+brute(m, profit, left, k+1, room-n*m.kinds[k].w))
	}
	return best
}

// TestKnapsacks compares the table, the depth first search and the subset sums
// with trying everything.
func TestKnapsacks(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 1))
		m := orderOf(r, 1+r.IntN(6))
		room := m.stock[0].caps[0]
		left, profit, lengths := make([]int, len(m.kinds)), make([]int64, len(m.kinds)), make([]int64, len(m.kinds))
		for k := range left {
			left[k], profit[k], lengths[k] = m.kinds[k].d, r.Int64N(100), m.kinds[k].w
		}
		want := brute(m, profit, left, 0, room)
		var table knapsack
		if !table.run(m, profit, left, room, free()) || table.profit[room] != want || gain(table.at(room), profit) != want {
			t.Errorf("seed %d: table %d, traced %d, want %d", seed, table.profit[room], gain(table.at(room), profit), want)
		}
		var tree branching
		if pieces, v, proved := tree.run(m, profit, left, room, 1<<62, free()); !proved || v != want || gain(pieces, profit) != want {
			t.Errorf("seed %d: search %d, want %d", seed, v, want)
		}
		var sums subset
		if pieces, v, ok := sums.fill(m, left, 0, room, free()); !ok || v != brute(m, lengths, left, 0, room) || gain(pieces, lengths) != v {
			t.Errorf("seed %d: subset sum %d, want %d", seed, v, brute(m, lengths, left, 0, room))
		}
	}
}

// TestPaired compares the search that pays for sets with trying everything.
func TestPaired(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 2))
		m := orderOf(r, 3+r.IntN(4))
		left, value := make([]int, len(m.kinds)), make([]int64, len(m.kinds))
		for k := range left {
			left[k], value[k] = m.kinds[k].d, r.Int64N(100)
		}
		if len(left) < 3 {
			continue
		}
		var cuts []cover.Cut
		for range 1 + r.IntN(4) {
			k := r.Perm(len(left))
			cuts = append(cuts, cover.Cut{Kinds: k[:3], Points: []int{1 + r.IntN(3), 1, 1}, Of: 2 + r.IntN(3), Price: r.Int64N(60)})
		}
		var want int64
		count := make([]int, len(left))
		var try func(k int, room, worth int64)
		try = func(k int, room, worth int64) {
			if k < len(left) {
				for n := int64(0); n <= int64(left[k]) && n*m.kinds[k].w <= room; n++ {
					count[k] = int(n)
					try(k+1, room-n*m.kinds[k].w, worth+n*value[k])
				}
				return
			}
			for _, c := range cuts {
				points := 0
				for i, k := range c.Kinds {
					points += c.Points[i] * count[k]
				}
				worth -= c.Price * int64(points/c.Of)
			}
			want = max(want, worth)
		}
		try(0, m.stock[0].caps[0], 0)
		reply, ok := newOracle(m).Price(cover.Ask{Left: left, Stock: []int{cover.Plenty}, Value: value, Price: []int64{0}, Cuts: cuts}, free())
		if !ok || !reply.Exact || reply.Worth[0] != want {
			t.Fatalf("seed %d: %d, want %d", seed, reply.Worth[0], want)
		}
		if want == 0 {
			continue
		}
		p := reply.Found[0]
		got := gain(p.Use, value)
		for _, c := range cuts {
			got -= c.Price * int64(c.Sets(p))
		}
		if got != want || m.filled(p) > m.stock[0].caps[0] {
			t.Errorf("seed %d: the pattern is worth %d, want %d", seed, got, want)
		}
	}
}

func gain(pieces []cover.Entry, profit []int64) int64 {
	var sum int64
	for _, e := range pieces {
		sum += int64(e.N) * profit[e.Kind]
	}
	return sum
}

// TestTidy checks that tidying keeps the pieces and the boards, and lays the
// rests together.
func TestTidy(t *testing.T) {
	mm := unit.MM
	p := problem.Problem{
		Stock: []problem.Stock{{Size: problem.Size{Length: mm(1000)}, Cost: 1}},
		Parts: []problem.Part{{Size: problem.Size{Length: mm(600)}, Quantity: 2}, {Size: problem.Size{Length: mm(250)}, Quantity: 2}},
	}
	m := newModel(p)
	// 600 + 250 twice leaves 150 twice.
	even := newPattern(0, [][]cover.Entry{{{Kind: 0, N: 1}, {Kind: 1, N: 1}}})
	if got := m.tidy([]cover.Use{{Pattern: even, N: 2}}, free()); len(got) != 1 || got[0].N != 2 {
		t.Errorf("nothing could be gained: %v", got)
	}
	p.Parts[1].Length = mm(190)
	m = newModel(p)
	// 600 + 190 twice leaves 210 twice; 600 + 190 + 190 leaves 20 and 400.
	got := m.tidy([]cover.Use{{Pattern: newPattern(0, [][]cover.Entry{{{Kind: 0, N: 1}, {Kind: 1, N: 1}}}), N: 2}}, free())
	var rests []int64
	pieces := make([]int, 2)
	for _, u := range got {
		rests = append(rests, m.rest(u.Pattern)*int64(m.scale/unit.Millimetre))
		for _, e := range u.Pattern.Use {
			pieces[e.Kind] += e.N * u.N
		}
	}
	if len(rests) != 2 || rests[0] != 20 || rests[1] != 400 || pieces[0] != 2 || pieces[1] != 2 {
		t.Errorf("rests %v, pieces %v", rests, pieces)
	}
}

// TestRepeat checks on random plans that looking for fewer patterns keeps the
// pieces, uses no other boards, never takes more patterns, and leaves what is
// useful, or else the longest rest, alone.
func TestRepeat(t *testing.T) {
	fewer := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 31))
		p := problem.Problem{Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(2400)}, Cost: 7}, {Size: problem.Size{Length: unit.MM(1800)}, Cost: 5}}, Kerf: unit.MM(r.Int64N(4))}
		if seed%2 == 0 {
			p.Useful.Length = unit.MM(300)
		}
		for range 3 + r.IntN(5) {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(200 + r.Int64N(900))}, Quantity: 2 + r.IntN(12)})
		}
		m := newModel(p)
		f := filler{m: m, exact: true, meter: free(), sums: &subset{}}
		var demand []int
		for _, k := range m.kinds {
			demand = append(demand, k.d)
		}
		before, cost, ok := f.complete(demand, []int{cover.Plenty, cover.Plenty}, math.MaxInt64)
		if !ok {
			t.Fatal(seed)
		}
		before = joined(before)
		after := m.repeat(before, work.New(t.Context(), 2_000_000))
		made := make([]int, len(demand))
		var longestBefore, longestAfter int64
		for _, u := range before {
			longestBefore = max(longestBefore, m.rest(u.Pattern))
		}
		for _, u := range after {
			longestAfter = max(longestAfter, m.rest(u.Pattern))
			for _, e := range u.Pattern.Use {
				made[e.Kind] += e.N * u.N
			}
			if m.rest(u.Pattern) < 0 {
				t.Errorf("seed %d: a board is overfull", seed)
			}
		}
		if longestBefore-m.kerf < int64(p.Useful.Length/m.scale) {
			longestBefore = 0 // not useful
		}
		if !slices.Equal(made, demand) || m.cover().Cost(after) > cost || len(after) > len(before) || longestAfter < longestBefore {
			t.Errorf("seed %d: made %v of %v, cost %d of %d, patterns %d of %d, longest rest %d of %d", seed, made, demand,
				m.cover().Cost(after), cost, len(after), len(before), longestAfter, longestBefore)
		}
		if len(after) < len(before) {
			fewer++
		}
	}
	if fewer == 0 {
		t.Error("there were never fewer patterns: the test does not test anything")
	}
}
