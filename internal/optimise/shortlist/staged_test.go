package shortlist

import (
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// stagedOptimum returns the optimum under rules by trying all ways to part the
// pieces into strips, and those into columns.
func stagedOptimum(q Question, rules ceiling.Rules) int64 {
	var kinds []int
	for k, n := range q.Left {
		for range n {
			kinds = append(kinds, k)
		}
	}
	type box struct{ x, y int64 }
	sets := 1 << len(kinds)
	columns, rows := make([][]box, sets), make([][]box, sets)
	least := make([]int64, sets) // the least height of strips that hold a set
	lie := func(i int) (out []box) {
		for _, l := range q.Pieces {
			if l.Kind == kinds[i] {
				out = append(out, box{l.X, l.Y})
			}
		}
		return out
	}
	best := int64(0)
	for set := 1; set < sets; set++ {
		first := bits.TrailingZeros(uint(set))
		rest := set &^ (1 << first)
		for _, b := range lie(first) {
			if rest == 0 {
				columns[set] = append(columns[set], b)
			} else if !rules.Two {
				for _, c := range columns[rest] {
					if !rules.Exact || b.x == c.x {
						columns[set] = append(columns[set], box{max(b.x, c.x), b.y + c.y})
					}
				}
			}
		}
		rows[set] = slices.Clone(columns[set])
		least[set] = 1 << 30
		for a := set; a > 0; a = (a - 1) & set {
			if a>>first&1 == 0 {
				continue
			}
			if a != set {
				for _, c := range columns[a] {
					for _, r := range rows[set&^a] {
						if !rules.Two || !rules.Exact || c.y == r.y {
							rows[set] = append(rows[set], box{c.x + r.x, max(c.y, r.y)})
						}
					}
				}
			}
		}
		slices.SortFunc(rows[set], func(a, b box) int { return int(a.x*1000 + a.y - b.x*1000 - b.y) })
		rows[set] = slices.Compact(rows[set])
		for a := set; a > 0; a = (a - 1) & set {
			if a>>first&1 == 0 {
				continue
			}
			for _, r := range rows[a] {
				if r.x <= q.X {
					least[set] = min(least[set], r.y+least[set&^a])
				}
			}
		}
		worth := int64(0)
		for i, k := range kinds {
			worth += q.Value[k] * int64(set>>i&1)
		}
		if least[set] <= q.Y {
			best = max(best, worth)
		}
	}
	return best
}

// TestStagesAgainstExhaustion: with long lists nothing is left out under any
// rules; with short ones the strips are sound and no better than the best.
func TestStagesAgainstExhaustion(t *testing.T) {
	for seed := range uint64(120) {
		q := small(rand.New(rand.NewPCG(seed, 3)))
		slices.SortStableFunc(q.Pieces, func(a, b ceiling.Piece) int { return int(b.X - a.X) })
		for _, rules := range []ceiling.Rules{{}, {Two: true}, {Exact: true}, {Two: true, Exact: true}} {
			want := stagedOptimum(q, rules)
			for _, length := range []int{1, 3, 1 << 12} {
				a, ok := SearchStages(q, rules, length, free())
				if !ok {
					t.Fatalf("seed %d: not through", seed)
				}
				if a.Value > want || a.Complete && a.Value != want {
					t.Errorf("seed %d, %+v, length %d: %d (complete: %v), the best is %d", seed, rules, length, a.Value, a.Complete, want)
				}
				if length > 1000 && !a.Complete {
					t.Errorf("seed %d: lists of %d were full", seed, length)
				}
				checkStrips(t, q, rules, a)
			}
		}
	}
}

// checkStrips adds up the sizes of strips and what they are worth.
func checkStrips(t *testing.T, q Question, rules ceiling.Rules, a Answer) {
	t.Helper()
	worth, high := int64(0), int64(0)
	used := make([]int, len(q.Left))
	for _, s := range a.Strips {
		wide, tall := int64(0), int64(0)
		for _, c := range s {
			top := int64(0)
			for _, l := range c {
				if l.X > c[0].X || rules.Exact && l.X != c[0].X {
					t.Errorf("a piece %d wide on one of %d", l.X, c[0].X)
				}
				top += l.Y
				used[l.Kind]++
				worth += q.Value[l.Kind]
			}
			if rules.Two && len(c) > 1 || rules.Two && rules.Exact && tall > 0 && top != tall {
				t.Errorf("two stages do not make %v", c)
			}
			wide, tall = wide+c[0].X, max(tall, top)
		}
		if high += tall; wide > q.X {
			t.Errorf("a strip of %d on a sheet of %d", wide, q.X)
		}
	}
	if high > q.Y || worth != a.Value {
		t.Errorf("strips %d high on %d, worth %d, said to be %d", high, q.Y, worth, a.Value)
	}
	for k, n := range used {
		if n > q.Left[k] {
			t.Errorf("%d of kind %d, %d wanted", n, k, q.Left[k])
		}
	}
}

// TestStagesEnd: little work is obeyed, and what it found is sound.
func TestStagesEnd(t *testing.T) {
	for seed := range uint64(20) {
		q := small(rand.New(rand.NewPCG(seed, 4)))
		slices.SortStableFunc(q.Pieces, func(a, b ceiling.Piece) int { return int(b.X - a.X) })
		for _, units := range []int64{1, 1000, 8000} {
			m := work.New(t.Context(), units)
			a, ok := SearchStages(q, ceiling.Rules{}, 8, m)
			if m.Used() > units || ok && m.Ended() || !ok && a.Complete {
				t.Errorf("seed %d: %d units of %d", seed, m.Used(), units)
			}
			checkStrips(t, q, ceiling.Rules{}, a)
		}
	}
}
