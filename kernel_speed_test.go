package scantling_test

import (
	"os"
	"testing"
	"time"

	"scantling"
	"scantling/internal/build"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/shape"
)

// TestKernelSpeed logs how long the demonstration piece takes: make bench-kernel.
// It asserts nothing.
func TestKernelSpeed(t *testing.T) {
	if os.Getenv("BENCH") == "" {
		t.Skip("left out: times of the demonstration piece (make bench-kernel)")
	}
	src, err := scantling.Load(exampleWorld(t, "needle-chest"), demo, scantling.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := build.Run(src)
	if err != nil {
		t.Fatal(err)
	}
	best := func(f func()) float64 {
		least := 1e9
		for range 20 {
			start := time.Now()
			f()
			least = min(least, float64(time.Since(start).Nanoseconds())/1e6)
		}
		return least
	}
	p := r.Plan.Piece // all cuts among its own
	for _, facets := range []int{shape.ScreenFacets, shape.DrawingFacets} {
		solve := func(c *solid.Cache, workers int) []*shape.Shape {
			return shape.NewIn(c, p, nil, facets).Solve(workers)
		}
		var placed []solid.Placed
		kinds := map[*solid.Solid]bool{}
		for _, s := range solve(new(solid.Cache), 1) {
			if ok, why := s.Verified(); !ok {
				t.Errorf("%s: %s", s.Part.Address, why)
			}
			placed = append(placed, s.Placed())
			kinds[s.Solid] = true
		}
		t.Logf("%d facets: %d parts, %d different", facets, len(placed), len(kinds))
		t.Logf("  solved anew, 1 worker   %8.2f ms", best(func() { solve(new(solid.Cache), 1) }))
		t.Logf("  solved anew, 2 workers  %8.2f ms", best(func() { solve(new(solid.Cache), 2) }))
		// One part moved by a nanometre at a time: all others come from the cache.
		cache := new(solid.Cache)
		solve(cache, 1)
		t.Logf("  one part edited         %8.2f ms", best(func() {
			p.Parts[0].Length.Nm++
			solve(cache, 1)
		}))
		view := hidden.View{Sight: vec.V3{X: -1, Y: 1, Z: -1}, Up: vec.V3{Z: 1}}
		strokes := 0
		t.Logf("  isometric, hidden lines removed %8.2f ms", best(func() { strokes = len(hidden.Draw(placed, view).Strokes) }))
		t.Logf("  strokes %d", strokes)
	}
}
