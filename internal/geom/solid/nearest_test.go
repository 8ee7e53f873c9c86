package solid_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

func brick(lo, hi vec.V3) solid.Placed {
	return solid.Placed{Solid: solid.Build([]solid.Primitive{solid.Block(vec.World, lo, hi, 1)}, nil, solid.Options{}), Frame: vec.World}
}

// TestDistancesOfMany: of many random bricks every pair within the distance is
// found, with the distance of two boxes by Pythagoras, and the nearest two that do
// not touch are the least of all pairs.
func TestDistancesOfMany(t *testing.T) {
	const seed, within = 77, 40.0
	random := rand.New(rand.NewPCG(seed, 3))
	var all []solid.Placed
	var lo, hi []vec.V3
	for range 60 {
		a := vec.V3{X: float64(random.IntN(500)), Y: float64(random.IntN(500)), Z: float64(random.IntN(500))}
		b := a.Add(vec.V3{X: float64(10 + random.IntN(60)), Y: float64(10 + random.IntN(60)), Z: float64(10 + random.IntN(60))})
		lo, hi, all = append(lo, a), append(hi, b), append(all, brick(a, b))
	}
	want, least := map[[2]int]float64{}, math.Inf(1)
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			sum := 0.0
			for k := range 3 {
				d := max(lo[i].At(k)-hi[j].At(k), lo[j].At(k)-hi[i].At(k), 0)
				sum += d * d
			}
			d := math.Sqrt(sum)
			if d <= within {
				want[[2]int{i, j}] = d
			}
			if d > 0 {
				least = min(least, d)
			}
		}
	}
	got := solid.Distances(all, within)
	if len(got) != len(want) || len(got) < 10 {
		t.Fatalf("seed %d: %d pairs, want %d", seed, len(got), len(want))
	}
	for _, g := range got {
		if d, ok := want[[2]int{g.I, g.J}]; !ok || g.Status != solid.Verified || math.Abs(g.Distance-d) > 1e-6 {
			t.Errorf("seed %d: %+v, want %g", seed, g, d)
		}
	}
	if n, ok := solid.Nearest(all); !ok || math.Abs(n.Distance-least) > 1e-6 {
		t.Errorf("seed %d: nearest %+v, want %g", seed, n, least)
	}
	// Two that touch, and one 7 mm off: the touch is no distance.
	at := func(x float64) solid.Placed { return brick(vec.V3{X: x}, vec.V3{X: x + 10, Y: 10, Z: 10}) }
	if n, ok := solid.Nearest([]solid.Placed{at(0), at(10), at(27)}); !ok || n.I != 1 || n.J != 2 || math.Abs(n.Distance-7) > 1e-9 {
		t.Errorf("%+v %v", n, ok)
	}
	if _, ok := solid.Nearest(all[:1]); ok {
		t.Error("one brick is near itself")
	}
}
