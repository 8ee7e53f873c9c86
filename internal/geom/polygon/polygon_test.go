package polygon

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12f, want %.12f ± %g", what, got, want, tol)
	}
}

// Areas from the formulas of the shapes; flattened area converges to them from
// inside for convex shapes, as fast as the square of the facet.
func TestAreas(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Profile
		want float64
	}{
		{"rectangle", Rect(P2{1, 2}, P2{5, 9}), 28},
		{"circle", Circle(P2{3, 4}, 5), math.Pi * 25},
		{"stadium", Stadium(P2{0, 0}, P2{6, 8}, 2), 40 + math.Pi*4},
		{"half round", RoundBottom(9.5, 4.75, 4.75), math.Pi * 4.75 * 4.75 / 2},
		{"round bottom with walls", RoundBottom(8, 10, 3), 8*10 - (2-math.Pi/2)*9},
		{"square bottom", RoundBottom(8, 10, 0), 80},
		{"shallow: the segment r² acos((r-d)/r) - (r-d)√(2rd-d²)", RoundBottom(8, 1, 4), 16*math.Acos(3./4) - 3*math.Sqrt(7)},
		{"ring", Profile{Circle(P2{}, 5).Outer, []Loop{Circle(P2{1, 0}, 3).Outer}}, math.Pi * 16},
	} {
		if err := c.p.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		near(t, c.name, c.p.Area(), c.want, 1e-9)
		near(t, c.name+" reversed", Profile{c.p.Outer.Reversed(), c.p.Holes}.Area(), c.want, 1e-9)
		near(t, c.name+" mirrored", c.p.Mirrored().Area(), c.want, 1e-9)
		var flat float64
		for _, f := range c.p.Flatten(256) {
			flat += f.Area()
		}
		near(t, c.name+" flattened", flat, c.want, c.want*1e-4)
	}
}

func TestCentroids(t *testing.T) {
	c := RoundBottom(8, 4, 4).Centroid() // half circle: 4r/3π below the diameter
	near(t, "half circle x", c.X, 0, 1e-12)
	near(t, "half circle y", c.Y, -16/(3*math.Pi), 1e-12)
	c = Profile{Circle(P2{}, 5).Outer, []Loop{Circle(P2{1, 0}, 3).Outer}}.Centroid()
	near(t, "ring", c.X, -9./16, 1e-12)
}

// The mouth of a slot that is shallower than its corner radius is a chord.
func TestMouthIsTheChord(t *testing.T) {
	p := RoundBottom(8, 1, 4)
	lo, hi := p.Bounds()
	near(t, "half mouth", hi.X, math.Sqrt(7), 1e-12)
	near(t, "depth", lo.Y, -1, 1e-12)
	// Two passes side by side: flat in the middle.
	lo, hi = RoundBottom(12, 1, 4).Bounds()
	near(t, "wider half mouth", hi.X, 2+math.Sqrt(7), 1e-12)
	near(t, "wider depth", lo.Y, -1, 1e-12)
	if err := RoundBottom(8, 5, 4.1).Check(); err == nil {
		t.Error("a radius over half the width passes")
	}
}

// A rod and the channel it lies in break into facets at the same points.
func TestMatingFacets(t *testing.T) {
	rod := Circle(P2{0, 0}, 4.75).Flatten(8)[0]
	for _, depth := range []float64{4.75, 3, 1.2} {
		slot := RoundBottom(9.5, depth, 4.75).Moved(P2{0, depth - 4.75}).Flatten(8)[0]
		for _, q := range slot.Points {
			if math.Abs(q.Y-(depth-4.75)) < 1e-9 {
				continue // the mouth
			}
			best := math.Inf(1)
			for _, r := range rod.Points {
				best = min(best, r.Sub(q).Norm())
			}
			if best > 1e-9 {
				t.Errorf("depth %g: the channel's vertex %v misses the rod's by %g", depth, q, best)
			}
		}
	}
}

func TestCheckFinds(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for name, p := range map[string]Profile{
		"nothing":       {},
		"bow tie":       Polygon(P2{0, 0}, P2{4, 4}, P2{4, 0}, P2{0, 4}),
		"no area":       Polygon(P2{0, 0}, P2{4, 4}, P2{8, 8}),
		"not a number":  Polygon(P2{0, 0}, P2{4, nan}, P2{4, 0}),
		"infinite":      Polygon(P2{0, 0}, P2{4, inf}, P2{4, 0}),
		"short segment": Polygon(P2{0, 0}, P2{0, 1e-8}, P2{4, 0}, P2{4, 4}),
		"hole outside":  {Circle(P2{}, 5).Outer, []Loop{Circle(P2{20, 0}, 3).Outer}},
		"hole across":   {Circle(P2{}, 5).Outer, []Loop{Circle(P2{5, 0}, 3).Outer}},
		"no radius":     Circle(P2{}, 0),
		"no width":      Rect(P2{1, 1}, P2{1, 5}),
		"two straights": {Outer: Loop{{P2{0, 0}, 0}, {P2{1, 0}, 0}}},
	} {
		if p.Check() == nil {
			t.Errorf("%s passes", name)
		}
	}
}

// Contains and Crossings beside distances worked out directly.
func TestInsideStadium(t *testing.T) {
	p := Stadium(P2{-3, 1}, P2{5, 4}, 2)
	r := rand.New(rand.NewPCG(1, 1))
	for range 5000 {
		q := P2{r.Float64()*16 - 8, r.Float64()*12 - 4}
		d := P2{5, 4}.Sub(P2{-3, 1})
		s := min(max(q.Sub(P2{-3, 1}).Dot(d)/d.Dot(d), 0), 1)
		away := q.Sub(P2{-3, 1}.Add(d.Mul(s))).Norm()
		if math.Abs(away-2) > 1e-9 && p.Contains(q) != (away < 2) {
			t.Errorf("%v at %g from the middle line: inside %v", q, away, p.Contains(q))
		}
	}
	// On grid points, where lines pass through vertices, the count stays even.
	for x := -8.0; x <= 8; x++ {
		for _, d := range []P2{{0, 1}, {1, 0}, {1, 1}, {8, 3}} {
			if n := len(p.Crossings(P2{x, 1}, d)); n%2 != 0 {
				t.Errorf("line from (%g, 1) along %v: %d crossings", x, d, n)
			}
		}
	}
}

// FuzzProfile feeds outlines from bytes: nothing may panic, and what passes
// Check has an area that flattening approaches.
func FuzzProfile(f *testing.F) {
	f.Add([]byte{0, 0, 0, 40, 0, 10, 40, 40, 0, 0, 40, 200})
	f.Add([]byte{10, 10, 128, 20, 10, 128})
	f.Fuzz(func(t *testing.T, raw []byte) {
		var l Loop
		for i := 0; i+2 < len(raw) && i < 90; i += 3 {
			l = append(l, Vertex{P2{float64(raw[i]), float64(raw[i+1])}, float64(int8(raw[i+2])) / 64})
		}
		p := Profile{Outer: l}
		if p.Check() != nil {
			return
		}
		a, flat := p.Area(), p.Flatten(128)[0].Area()
		if a <= 0 || flat <= 0 {
			t.Fatalf("areas %g and %g of %v", a, flat, l)
		}
		p.Contains(P2{20, 20})
		p.Bounds()
		p.Centroid()
	})
}

// Facets follow the radius, and a finer division keeps the angles of a coarser.
func TestFacetsFollowTheRadius(t *testing.T) {
	for _, c := range []struct {
		radius    float64
		perHalf   int
		wantAtMax float64
	}{{4.75, 8, 0.1}, {12.7, 16, 0.05}, {500, 16, 0.05}, {3000, 8, 0.1}} {
		n := Facets(c.radius, c.perHalf)
		if gap := c.radius * (1 - math.Cos(math.Pi/float64(2*n))); gap > c.wantAtMax || n%c.perHalf != 0 {
			t.Errorf("radius %g: %d facets stand off by %g", c.radius, n, gap)
		}
	}
	if n := Facets(4.75, 8); n != 8 {
		t.Errorf("a small radius gets %d facets, not 8", n)
	}
}
