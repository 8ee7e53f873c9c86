package drawing

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestSpread: figures keep their order, none are nearer than the pitch, places
// that are far enough apart stay where they are, and no single shift of all of
// them would bring them nearer to their places.
func TestSpread(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, 0))
	for range 500 {
		places := make([]float64, 1+r.IntN(12))
		for i := range places {
			places[i] = r.Float64() * 40
		}
		slices.Sort(places)
		got := spread(places, 3.5)
		shift, free := 0.0, true
		for i := range places {
			shift += got[i] - places[i]
			if i > 0 && got[i]-got[i-1] < 3.5-1e-9 {
				t.Fatalf("seed %d: %v spread to %v: figures %d and %d too near", seed, places, got, i-1, i)
			}
			free = free && (i == 0 || places[i]-places[i-1] >= 3.5)
		}
		if math.Abs(shift) > 1e-6 {
			t.Fatalf("seed %d: %v spread to %v: all moved by %v", seed, places, got, shift)
		}
		if free && !slices.EqualFunc(places, got, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Fatalf("seed %d: %v need not move, got %v", seed, places, got)
		}
	}
}
