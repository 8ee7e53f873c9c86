package joinery_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/shape"
)

// TestAgainstSolids holds the numbers of every joint's formula against the
// finished solids: wood left, no interference, area in contact.
func TestAgainstSolids(t *testing.T) {
	for _, c := range pairs {
		t.Run(c.name, func(t *testing.T) {
			b := newBuilder(t)
			c.build(b)
			cuts, low := b.lower()
			checkSolids(t, b, cuts, low[0])
		})
	}
}

func checkSolids(t *testing.T, b *builder, cuts []piece.Cut, low joinery.Lowered) {
	t.Helper()
	shapes := shape.New(&b.Piece, cuts, 8)
	sa, _ := shapes.Of(low.A)
	sb, _ := shapes.Of(low.B)
	for _, s := range []*shape.Shape{sa, sb} {
		if ok, why := s.Verified(); !ok {
			t.Fatalf("%s: %s", s.Part.Address, why)
		}
	}
	holes := 0.0
	for _, c := range cuts {
		if c.Bore != nil && c.Part == low.A {
			holes += math.Pi * math.Pow(c.Bore.Diameter.Nm.Millimetres()/2, 2)
		}
	}
	body := func(p *piece.Part) float64 {
		return p.Length.Nm.Millimetres() * p.Width.Nm.Millimetres() * p.Thickness.Nm.Millimetres()
	}
	if holes == 0 {
		whole := body(sa.Part) + body(sb.Part) - mm3(low.Overlap)
		if got := sa.Solid.Volume() + sb.Solid.Volume() + mm3(low.Neither); math.Abs(got-whole) > 1e-6*whole {
			t.Errorf("|A'| + |B'| + neither = %.6f, |A ∪ B| = %.6f mm³", got, whole)
		}
		if got, want := sa.Solid.Volume(), body(sa.Part)-mm3(low.KeptB); math.Abs(got-want) > 1e-6*want {
			t.Errorf("A' has %.6f mm³, by the joint %.6f", got, want)
		}
	}
	if o := solid.Interference(sa.Placed(), sb.Placed()); o.Status != solid.Verified || o.Volume > 1e-6 {
		t.Errorf("interference: %+v", o)
	}
	touch := solid.Contact(sa.Placed(), sb.Placed())
	// Dowel holes are counted by the solids and not by the joint; 8 facets to the
	// half circle leave 2.6 % of them.
	slack := 1e-4 + 0.03*holes
	if t := b.Piece.Joints[0].Tenon; t != nil && t.Round {
		entry, _ := low.Entry.Axis()
		deep := low.Region[entry].Size().Millimetres()
		slack += 3e-3 * math.Pi * t.Thickness.Nm.Millimetres() * deep // half circles as 8 facets
	}
	if want := mm2(low.Contact) - holes; touch.Status != solid.Verified || math.Abs(touch.Area-want) > slack {
		t.Errorf("the solids touch over %.6f mm², by the joint %.6f", touch.Area, want)
	}
}

// randomPair makes two boards that meet in a joint of some kind, all sizes
// random tenths of a millimetre.
func randomPair(b *builder, r *rand.Rand) {
	between := func(lo, hi int64) int64 { return lo + r.Int64N(hi-lo+1) }
	w, tb, ta := between(200, 900), between(90, 250), between(90, 250)
	height, at := between(1500, 4000), int64(0)
	change := func(*piece.Joint) {}
	kind := []piece.JointKind{piece.HousingJoint, piece.GrooveJoint, piece.RebateJoint, piece.BoxJoint, piece.HalvingJoint}[r.IntN(5)]
	switch kind {
	case piece.BoxJoint:
		// A right, B back, fingers up.
		b.Part("a", frontGrain, 0, between(800, 3000), 0, ta, 0, w)
		b.Part("b", sideGrain, 0, tb, 0, between(800, 3000), 0, w)
		b.Joint("j", kind, "a", "b", 0, func(j *piece.Joint) {
			j.Finger = b.Fig("f", between(30, 200))
			j.First = []string{"a", "b"}[r.IntN(2)]
		})
		return
	case piece.HalvingJoint:
		x, y := between(1, 500), between(1, 500)
		b.Part("a", grainRight, 0, x+tb+between(0, 500), y, y+ta, 0, w)
		b.Part("b", grainBack, x, x+tb, 0, y+ta+between(0, 500), 0, w)
		b.Joint("j", kind, "a", "b", between(1, w-1), nil)
		return
	case piece.RebateJoint:
		at = []int64{0, height - ta}[r.IntN(2)]
	default:
		at = between(1, height-ta-1)
	}
	depth := between(1, tb-1)
	front, back := between(0, 60), w-between(0, 60)
	if r.IntN(2) == 0 {
		b.Part("b", grainUp, 0, tb, 0, w, 0, height)
		b.Part("a", grainRight, tb-depth, 3000, front, back, at, at+ta)
	} else { // the other hand
		b.Part("b", grainUpR, 3000-tb, 3000, 0, w, 0, height)
		b.Part("a", grainRight, 0, 3000-tb+depth, front, back, at, at+ta)
	}
	if kind != piece.RebateJoint && r.IntN(2) == 0 {
		low, high := between(0, 90), between(0, 40)
		change = func(j *piece.Joint) { j.StopLow, j.StopHigh = b.Fig("stop", low), b.Fig("stop", high) }
	} else if r.IntN(2) == 0 {
		across, deep := between(0, 8), between(0, 8)
		change = func(j *piece.Joint) { j.ClearAcross, j.ClearDeep = b.Fig("across", across), b.Fig("deep", deep) }
	}
	b.Joint("j", kind, "a", "b", depth, change)
}

// TestLaws holds random pairs of boards against the laws of a joint: the exact
// count of cells, and every tenth pair against the solids.
func TestLaws(t *testing.T) {
	r := seeded(t, 20261125)
	for n := range 400 {
		b := newBuilder(t)
		randomPair(b, r)
		cuts, low := b.lower()
		if len(low) != 1 {
			t.Fatalf("pair %d: not lowered", n)
		}
		checkPair(t, b, cuts, low[0])
		if n%10 == 0 {
			checkSolids(t, b, cuts, low[0])
		}
		if t.Failed() {
			t.Fatalf("pair %d: %+v\n%+v\n%+v", n, b.Piece.Parts, b.Piece.Joints, trenches(cuts))
		}
	}
}

// TestOrderOfJointsDoesNotMatter: the wood taken from each part is the same with
// the joints in any order.
func TestOrderOfJointsDoesNotMatter(t *testing.T) {
	r := seeded(t, 7)
	contents := func(b *builder) map[address.Address]shape.Content {
		cuts, _ := b.lower()
		s := shape.New(&b.Piece, cuts, 8)
		out := map[address.Address]shape.Content{}
		for i := range b.Piece.Parts {
			p := &b.Piece.Parts[i]
			out[p.Address] = shape.ContentOf(p, s.CutsOf(p.Address))
		}
		return out
	}
	for range 20 {
		b := drawer(t, 80, 35, 40)
		want := contents(b)
		r.Shuffle(len(b.Piece.Joints), func(i, j int) { b.Piece.Joints[i], b.Piece.Joints[j] = b.Piece.Joints[j], b.Piece.Joints[i] })
		for a, c := range contents(b) {
			if c != want[a] {
				t.Errorf("%s:\n%s\n%s", a, c, want[a])
			}
		}
	}
}

// TestDrawerSolids: the whole drawer as solids has no interference, and its
// corners keep the glue area of their formulas.
func TestDrawerSolids(t *testing.T) {
	b := drawer(t, 80, 50, 40)
	cuts, _ := b.lower()
	shapes := shape.New(&b.Piece, cuts, 8)
	for i, a := range shapes.All() {
		if ok, why := a.Verified(); !ok {
			t.Errorf("%s: %s", a.Part.Address, why)
		}
		for _, c := range shapes.All()[:i] {
			if o := solid.Interference(a.Placed(), c.Placed()); o.Volume > 1e-6 {
				t.Errorf("%s and %s share %v mm³", a.Part.Address, c.Part.Address, o.Volume)
			}
		}
	}
	left, _ := shapes.Of("left")
	right, _ := shapes.Of("right")
	if _, same := solid.Same(left.Solid.Mirrored(), right.Solid); !same {
		t.Error("the right side is not the left side's mirror image")
	}
}

func BenchmarkLower(b *testing.B) {
	for _, size := range [][2]int64{{10, 28}, {100, 29}} {
		w := trial.Rack(size[0], size[1])
		b.Run(fmt.Sprint(len(w.Piece.Parts), " parts ", len(w.Piece.Joints), " joints"), func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				w := trial.Rack(size[0], size[1])
				b.StartTimer()
				cuts, _, faults := joinery.Lower(&w.Piece, w.Ledger)
				if len(faults) > 0 || len(cuts) == 0 {
					b.Fatal(faults, len(cuts))
				}
			}
		})
	}
}
