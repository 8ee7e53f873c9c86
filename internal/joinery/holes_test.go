package joinery_test

import (
	"math"
	"testing"

	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// airAlong returns how far a line runs free from its start, through the finished
// solids of the whole piece, in millimetres.
func airAlong(t *testing.T, b *builder, cuts []piece.Cut, from, way vec.V3) float64 {
	t.Helper()
	least := math.Inf(1)
	for _, s := range shape.New(&b.Piece, cuts, 16).All() {
		if ok, why := s.Verified(); !ok {
			t.Fatalf("%s: %s", s.Part.Address, why)
		}
		for _, i := range s.Placed().Intervals(from, way) {
			if i.Leave > 1e-9 {
				least = min(least, max(i.Enter, 0))
			}
		}
	}
	return least
}

// holes counts the holes of each part.
func holes(cuts []piece.Cut) map[string]int {
	out := map[string]int{}
	for _, c := range cuts {
		if c.Bore != nil {
			out[string(c.Part)]++
		}
	}
	return out
}

// TestDowelHolesMeet: from the bottom of the hole in the rail to the bottom of
// the hole in the leg is one free run of 25 + 20, at 15 from either edge.
func TestDowelHolesMeet(t *testing.T) {
	b := newBuilder(t)
	b.Part("rail", frontGrain, 400, 3000, 100, 300, 4000, 4600)
	b.Part("leg", upright, 0, 400, 0, 400, 0, 5000)
	b.Joint("j", piece.DowelJoint, "rail", "leg", 0, func(j *piece.Joint) {
		j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 80), Count: 3, Margin: b.Fig("m", 150), InA: b.Fig("a", 250), InB: b.Fig("b", 200)}
	})
	cuts, _ := b.lower()
	if n := holes(cuts); n["rail"] != 3 || n["leg"] != 3 {
		t.Fatalf("holes: %v", n)
	}
	for _, z := range []float64{415, 430, 445} {
		if free := airAlong(t, b, cuts, vec.V3{X: 20.0001, Y: 20, Z: z}, vec.V3{X: 1}); math.Abs(free-(65-20.0001)) > 1e-9 {
			t.Errorf("at %v: %v free", z, free)
		}
		if free := airAlong(t, b, cuts, vec.V3{X: 64.9999, Y: 20, Z: z}, vec.V3{X: -1}); math.Abs(free-(64.9999-20)) > 1e-9 {
			t.Errorf("back at %v: %v free", z, free)
		}
	}
}

// TestPilotHoles: through the first part and on into the second, from the side
// that each joint is fastened from, so deep as is asked from the surface.
func TestPilotHoles(t *testing.T) {
	fasten := func(b *builder) func(*piece.Joint) {
		return func(j *piece.Joint) {
			j.Fasteners = &piece.Fasteners{Kind: "screw", Count: 2, Margin: b.Fig("m", 250), Pilot: b.Fig("p", 20), Depth: b.Fig("d", 300)}
		}
	}
	cases := []struct {
		name  string
		build func(b *builder)
		// from is outside at a hole and way inwards; 30 are free from the surface,
		// which lies 1 in.
		from, way vec.V3
	}{
		{"a stop screwed on", func(b *builder) {
			b.Part("stop", grainRight, 500, 1500, 150, 290, 140, 190)
			b.Part("board", grainRight, 0, 2000, 0, 2000, -400, 140)
			b.Joint("j", piece.ButtJoint, "stop", "board", 0, fasten(b))
		}, vec.V3{X: 75, Y: 22, Z: 20}, vec.V3{Z: -1}},
		{"a shelf screwed through the side", func(b *builder) {
			b.Part("shelf", grainRight, 180, 3000, 0, 2000, 4000, 4150)
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
			b.Joint("j", piece.ButtJoint, "shelf", "side", 0, fasten(b))
		}, vec.V3{X: -1, Y: 25, Z: 407.5}, vec.V3{X: 1}},
		{"a housing screwed through the side", func(b *builder) {
			b.Part("shelf", grainRight, 130, 3000, 0, 2000, 4000, 4150)
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
			b.Joint("j", piece.HousingJoint, "shelf", "side", 50, fasten(b))
		}, vec.V3{X: -1, Y: 25, Z: 407.5}, vec.V3{X: 1}},
		{"a back screwed into its rebate", func(b *builder) {
			b.Part("back", upright, 70, 3000, 1940, 2000, 0, 4000)
			b.Part("side", grainUp, 0, 140, 0, 2000, 0, 4000)
			b.Joint("j", piece.RebateJoint, "back", "side", 70, fasten(b))
		}, vec.V3{X: 10.5, Y: 201, Z: 25}, vec.V3{Y: -1}},
		{"a halving", func(b *builder) {
			b.Part("rail", grainRight, 0, 3000, 1000, 2000, 0, 400)
			b.Part("stile", grainBack, 1000, 2000, 0, 3000, 0, 400)
			b.Joint("j", piece.HalvingJoint, "rail", "stile", 0, fasten(b))
		}, vec.V3{X: 125, Y: 150, Z: 41}, vec.V3{Z: -1}},
	}
	for _, c := range cases {
		b := newBuilder(t)
		c.build(b)
		cuts, _ := b.lower()
		for name, n := range holes(cuts) {
			if n != 2 {
				t.Errorf("%s: %d holes in %s", c.name, n, name)
			}
		}
		if free := airAlong(t, b, cuts, c.from, c.way); math.Abs(free-31) > 1e-9 {
			t.Errorf("%s: %v free from outside, want 31", c.name, free)
		}
	}
}

// TestScrewHoles: a clearance hole with its countersink through the first part, the
// pilot in the second, by their volumes worked out by hand.
func TestScrewHoles(t *testing.T) {
	cases := []struct {
		name string
		flat bool
		// taken of the upper board: two holes of 4.5 through 14 and what the mouths take
		// beyond them.
		taken float64
	}{
		// A cone from 9 to 4.5 over 2.25: π/3 h (R² + R r - 2 r²) beyond the hole.
		{"countersunk", false, 2 * (math.Pi*2.25*2.25*14 + math.Pi/3*2.25*(4.5*4.5+4.5*2.25-2*2.25*2.25))},
		// A flat-bottomed hole of 9, 2.25 deep.
		{"for a plug", true, 2 * (math.Pi*2.25*2.25*14 + math.Pi*2.25*(4.5*4.5-2.25*2.25))},
	}
	for _, c := range cases {
		b := newBuilder(t)
		b.Part("upper", grainRight, 0, 2000, 0, 300, 200, 340)
		b.Part("lower", grainRight, 0, 2000, 0, 300, 0, 200)
		b.Joint("j", piece.ButtJoint, "upper", "lower", 0, func(j *piece.Joint) {
			j.Fasteners = &piece.Fasteners{
				Kind: "screw 4 x 30", Count: 2, Margin: b.Fig("m", 300), Pilot: b.Fig("p", 20), Depth: b.Fig("d", 300), Clearance: b.Fig("c", 45),
				Sink: &piece.Sink{Diameter: b.Fig("s", 90), Depth: piece.Figure{Nm: 2250000}, Flat: c.flat},
			}
		})
		cuts, _ := b.lower()
		shapes := shape.New(&b.Piece, cuts, 16)
		upper, _ := shapes.Of("upper")
		lower, _ := shapes.Of("lower")
		for _, x := range []struct {
			s    *shape.Shape
			want float64
		}{{upper, 200*30*14 - c.taken}, {lower, 200*30*20 - 2*math.Pi*16}} {
			if v := x.s.Solid.Volume(); math.Abs(v-x.want) > 1e-6*x.want {
				t.Errorf("%s: %s has %v mm³, by hand %v", c.name, x.s.Part.Address, v, x.want)
			}
		}
	}
}

// TestPegs: two pegs of 8 go right through the leg's 45 and the tenon's 7, in line.
func TestPegs(t *testing.T) {
	build := func(margin int64) *builder {
		b := newBuilder(t)
		tenoned(b, 200, 300, func(j *piece.Joint) {
			j.Tenon = b.tenon(65, 70, 80, 100)
			j.Fasteners = &piece.Fasteners{Kind: "peg 8", Count: 2, Margin: b.Fig("m", margin), Pilot: b.Fig("p", 80)}
		})
		return b
	}
	b := build(250)
	cuts, _ := b.lower()
	if n := holes(cuts); n["rail"] != 2 || n["leg"] != 2 {
		t.Fatalf("holes: %v", n)
	}
	// The rail's edges are at 300 and 380, its tenon from 15 to 45 into the leg.
	for _, z := range []float64{300 + 25, 380 - 25} {
		if free := airAlong(t, b, cuts, vec.V3{X: 30, Y: -1, Z: z}, vec.V3{Y: 1}); !math.IsInf(free, 1) {
			t.Errorf("at %v: wood after %v", z, free)
		}
	}
	b = build(120)
	if _, _, faults := joinery.Lower(&b.Piece, b.Ledger); len(faults) != 1 || faults[0].Text.Key != "joint.peg-beside-tenon" {
		t.Errorf("%+v", faults)
	}
}

// TestHolesThatMeet: dowels of two rails at right angles run into each other in the
// leg at one height, and not at another.
func TestHolesThatMeet(t *testing.T) {
	for up, meets := range map[int64]bool{0: true, 90: false} {
		b := newBuilder(t)
		b.Part("leg", upright, 0, 400, 0, 400, 0, 5000)
		b.Part("rail", frontGrain, 400, 3000, 100, 300, 4000, 4600)
		b.Part("side", sideGrain, 100, 300, 400, 3000, 4000+up, 4600+up)
		for _, name := range []string{"rail", "side"} {
			b.Joint("j."+name, piece.DowelJoint, name, "leg", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 80), Count: 2, Margin: b.Fig("m", 150), InA: b.Fig("a", 250), InB: b.Fig("b", 250)}
			})
		}
		_, low, faults := joinery.Lower(&b.Piece, b.Ledger)
		if told := len(faults) == 1 && faults[0].Text.Key == "joint.holes-meet"; told != meets || len(low) != 2 {
			t.Errorf("%d up: %+v", up, faults)
		}
	}
}
