package cover

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestMemory compares what is remembered with a full sort of all that was noted.
func TestMemory(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 7))
		const kinds = 4
		y := NewMemory(kinds)
		type noted struct {
			p     *Pattern
			merit float64
		}
		var all []noted
		seen := map[string]bool{}
		for range 400 {
			var entries []Entry
			for k := range kinds {
				if n := r.IntN(6); n > 0 {
					entries = append(entries, Entry{k, n})
				}
			}
			p := NewPattern(0, entries, nil)
			merit := 0.0
			for _, e := range p.Use {
				merit += float64(e.N * (3*e.Kind + 2))
			}
			y.Note(p, merit)
			y.Note(p, merit) // a second time changes nothing
			if key := p.key(); !seen[key] {
				seen[key] = true
				all = append(all, noted{p, merit})
			}
		}
		slices.SortStableFunc(all, func(a, b noted) int { return cmp.Compare(b.merit, a.merit) })
		got := y.Patterns()
		for k := range kinds {
			var want []float64
			for _, n := range all {
				if n.p.has(k) && len(want) < rememberedOfKind {
					want = append(want, n.merit)
				}
			}
			var have []float64
			for _, q := range y.byKind[k] {
				have = append(have, q.merit)
				if !q.p.has(k) || !slices.Contains(got, q.p) {
					t.Errorf("seed %d: %v is remembered for kind %d", seed, q.p.Use, k)
				}
			}
			if !slices.Equal(want, have) {
				t.Errorf("seed %d, kind %d: merits %v, want %v", seed, k, have, want)
			}
		}
	}
}
