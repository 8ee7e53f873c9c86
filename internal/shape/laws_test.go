package shape_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// seeded calls law with n random parts, ten times as many in the long tier.
func seeded(t *testing.T, first uint64, n int, law func(t *testing.T, seed uint64, part piece.Part, cuts []piece.Cut)) {
	t.Helper()
	if os.Getenv("LONG") != "" {
		n *= 10
	}
	t.Logf("seeds %d to %d", first, first+uint64(n)-1)
	for seed := first; seed < first+uint64(n); seed++ {
		part, cuts := randomPart(seed)
		law(t, seed, part, cuts)
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.6f, want %.6f ± %g", what, got, want, tol)
	}
}

// What is left and what the cutters share with the body add up to the body: to
// 0.05 mm³, as two solids touch to within half a micrometre.
func TestCutAndRestAddUp(t *testing.T) {
	seeded(t, 60_000, 60, func(t *testing.T, seed uint64, part piece.Part, cuts []piece.Cut) {
		rest := solidAsIs(part, cuts, 8)
		opt := solid.Options{Facets: 8}
		whole := solid.Build(rest.Bodies(), nil, opt)
		cutters := solid.Build(rest.Cutters(), nil, opt)
		if st, why := cutters.Status(); st != solid.Verified {
			t.Errorf("seed %d: the cutters are %v: %s", seed, st, why)
			return
		}
		taken := solid.Interference(solid.Placed{Solid: whole, Frame: vec.World}, solid.Placed{Solid: cutters, Frame: vec.World})
		if taken.Status != solid.Verified {
			t.Errorf("seed %d: %s", seed, taken.Reason)
			return
		}
		near(t, fmt.Sprintf("seed %d", seed), within(rest)+taken.Volume+taken.Facets, within(whole), 0.05)
	})
}

// A part lies inside its blank, and the mesh inside the boxes that hold its wood.
func TestPartsLieInTheirBlanks(t *testing.T) {
	seeded(t, 61_000, 60, func(t *testing.T, seed uint64, part piece.Part, cuts []piece.Cut) {
		s := solidAsIs(part, cuts, 8)
		if s.Empty() {
			return
		}
		lo, hi := s.Bounds()
		for a, size := range part.Sizes() {
			if lo.At(a) < -1e-6 || hi.At(a) > size.Nm.Millimetres()+1e-6 {
				t.Errorf("seed %d: from %v to %v along %d", seed, lo, hi, a)
			}
		}
		var list []*piece.Cut
		for i := range cuts {
			list = append(list, &cuts[i])
		}
		boxes, ok := shape.Boxes(&part, list, false)
		if !ok {
			t.Errorf("seed %d: too many boxes", seed)
		}
		for _, v := range s.Mesh().Verts {
			if !slices.ContainsFunc(boxes, func(b shape.Box) bool {
				for a := range 3 {
					if v.At(a) < b.Lo[a].Millimetres()-1e-3 || v.At(a) > b.Hi[a].Millimetres()+1e-3 {
						return false
					}
				}
				return true
			}) {
				t.Errorf("seed %d: wood at %v lies in none of the boxes", seed, v)
				break
			}
		}
	})
}

// Cuts commute; those that do not touch take as much together as one by one.
func TestCutsThatDoNotTouch(t *testing.T) {
	apart := 0
	seeded(t, 62_000, 60, func(t *testing.T, seed uint64, part piece.Part, cuts []piece.Cut) {
		s := solidAsIs(part, cuts, 8)
		back := slices.Clone(cuts)
		slices.Reverse(back)
		near(t, fmt.Sprintf("seed %d, backwards", seed), solidAsIs(part, back, 8).Volume(), s.Volume(), 2e-3)
		// The first cut that stands clear of the first of all.
		whole := solidAsIs(part, nil, 8).Volume()
		for i := 1; i < len(cuts); i++ {
			a, b := joinery.Around(&part, &cuts[0]), joinery.Around(&part, &cuts[i])
			if len(a) == 0 || len(b) == 0 || meet(a[0], b[0]) {
				continue
			}
			apart++
			one, other := solidAsIs(part, cuts[:1], 8).Volume(), solidAsIs(part, cuts[i:i+1], 8).Volume()
			both := solidAsIs(part, []piece.Cut{cuts[0], cuts[i]}, 8).Volume()
			near(t, fmt.Sprintf("seed %d, cut %d", seed, i), whole-both, whole-one+whole-other, 2e-3)
			break
		}
	})
	if apart < 10 {
		t.Errorf("only %d pairs stand clear", apart)
	}
}

func meet(a, b [3]piece.Extent) bool {
	for i := range a {
		if a[i].Low.Nm >= b[i].High.Nm || b[i].Low.Nm >= a[i].High.Nm {
			return false
		}
	}
	return true
}

// Mirror and pose keep volume, area and moments: bodies of every kind, in the
// frame of a tilted part.
func TestMirrorAndTiltKeepMeasures(t *testing.T) {
	seeded(t, 63_000, 40, func(t *testing.T, seed uint64, part piece.Part, cuts []piece.Cut) {
		r := rand.New(rand.NewPCG(seed, 1))
		s := solidAsIs(part, cuts, 8)
		part.Tilt = &piece.Tilt{
			About: piece.Axis(r.IntN(3)), Through: [3]piece.Figure{mm(r.Float64() * 900), mm(0), mm(500)}, Degrees: r.Float64() * 90,
			Then: &piece.Tilt{About: piece.Axis(r.IntN(3)), Degrees: -r.Float64() * 30},
		}
		pose := part.Placed()
		opt := solid.Options{Facets: 8}
		posed := solid.Build(moved(s.Bodies(), pose), moved(s.Cutters(), pose), opt)
		for what, o := range map[string]*solid.Solid{"mirrored": s.Mirrored(), "tilted": posed} {
			if st, why := o.Status(); st != solid.Verified {
				t.Errorf("seed %d, %s: %s", seed, what, why)
				continue
			}
			near(t, fmt.Sprintf("seed %d, %s: volume", seed, what), o.Volume(), s.Volume(), 2e-3)
			near(t, fmt.Sprintf("seed %d, %s: area", seed, what), o.Area(), s.Area(), 1e-2)
		}
		if d := posed.Centroid().Sub(pose.ToWorld(s.Centroid())).Norm(); d > 1e-5 {
			t.Errorf("seed %d: the centroid moved by %g", seed, d)
		}
	})
}

func moved(list []solid.Primitive, f vec.Frame) []solid.Primitive {
	var out []solid.Primitive
	for _, q := range list {
		switch p := q.(type) {
		case solid.Prism:
			p.Frame = p.Frame.Then(f)
			out = append(out, p)
		case solid.Turned:
			p.Frame = p.Frame.Then(f)
			out = append(out, p)
		}
	}
	return out
}

// Touching parts whose poses are worked out apart: tilted by one angle and by two
// that make it up. They neither interfere nor part, and the area where they touch
// is the joint's own.
func TestTiltedPartsTouch(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 8))
		// A shelf 300 × 200 × 18 in a housing 6 deep of an upright side.
		side, shelf := board("side", 400, 200, 20), board("shelf", 306, 200, 18)
		side.Frame = piece.Frame{Length: piece.ToUp, Width: piece.ToBack, Thickness: piece.ToLeft}
		side.Extent = [3]piece.Extent{{Low: mm(0), High: mm(20)}, {High: mm(200)}, {High: mm(400)}}
		shelf.Extent = [3]piece.Extent{{Low: mm(14), High: mm(320)}, {High: mm(200)}, {Low: mm(100), High: mm(118)}}
		housing := slot(piece.FaceLow, piece.AlongWidth, 0, 200, 100, 118, 6, 0)
		housing.Part = "side"
		about := piece.Axis(r.IntN(3))
		through := [3]piece.Figure{mm(r.Float64() * 500), mm(r.Float64() * 500), mm(0)}
		a, b := r.Float64()*60-30, r.Float64()*30
		second := &piece.Tilt{About: piece.Axis(r.IntN(3)), Degrees: r.Float64() * 40}
		side.Tilt = &piece.Tilt{About: about, Through: through, Degrees: a + b, Then: second}
		shelf.Tilt = &piece.Tilt{About: about, Through: through, Degrees: a, Then: &piece.Tilt{About: about, Through: through, Degrees: b, Then: second}}
		p := piece.Piece{Parts: []piece.Part{side, shelf}, Cuts: []piece.Cut{housing}}
		shapes := shape.New(&p, nil, 8)
		x, y := shapes.At(0).Placed(), shapes.At(1).Placed()
		if o := solid.Interference(x, y); o.Status != solid.Verified || o.Volume != 0 {
			t.Errorf("seed %d: %+v", seed, o)
		}
		near(t, fmt.Sprintf("seed %d: contact", seed), solid.Contact(x, y).Area, 200*18+2*6*200, 1e-3)
	}
}

// TestCompoundMitre: the sides of a hopper, leaning out by an angle and mitred at
// its corners, meet over the whole of both slopes and share no wood.
func TestCompoundMitre(t *testing.T) {
	// A side as drawn upright: 300 long at the foot, 100 high, 20 thick, its length to
	// the right, its width up, its thickness to the front; the outer face is the front.
	// Leaning out by s, a point at height w along it and depth d behind the outer face
	// lies w sin s - d cos s before the foot of that face. The mitre is the plane
	// in which that equals what it is beyond the end of the foot.
	const s = 20.0
	sin, cos := math.Sincos(s * math.Pi / 180)
	side := board("front", 400, 100, 20)
	side.Frame = piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}
	side.Extent = [3]piece.Extent{{Low: mm(0), High: mm(400)}, {Low: mm(0), High: mm(20)}, {Low: mm(0), High: mm(100)}}
	side.Tilt = &piece.Tilt{About: piece.Right, Degrees: s}
	// Length at the end: 350 at the foot of the outer face, which is thickness 20.
	end := func(w, d float64) float64 { return 350 + w*sin - d*cos }
	cut := slice(piece.EndHigh, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{end(0, 20), end(100, 20), end(0, 0)})
	cut.Part = "front"
	p := piece.Piece{Parts: []piece.Part{side}, Cuts: []piece.Cut{cut}}
	sh := shape.New(&p, nil, 8).At(0)
	if ok, why := sh.Verified(); !ok {
		t.Fatal(why)
	}
	// Volume: the mean of the lengths over the section, in closed form.
	near(t, "volume", sh.Solid.Volume(), 100*20*(end(50, 10)), 1e-6*100*20*400)
	// The slope is the section 100 × 20 divided by the cosine of its lean: in length
	// = 350 + w sin s - d cos s the lean's tangent is √(sin² s + cos² s) = 1.
	var slope float64
	for _, f := range sh.Solid.Faces() {
		if o := sh.Origin(f.Tag); o.Wall == shape.Slope {
			slope += areaOf(f)
		}
	}
	near(t, "slope", slope, 100*20*math.Sqrt2, 1e-6*2000)
	// The neighbour is the mirror image across the diagonal: its slope falls on this one.
	twin := solid.Placed{Solid: sh.Solid.Mirrored(), Frame: vec.World}
	f := sh.Frame
	outer := f.ToWorld(vec.V3{X: 350, Y: 0, Z: 20}) // the corner's foot
	// Mirrored across the upright plane on the diagonal through the corner; its solid
	// is mirrored in its own X, so U is turned over.
	diagonal := func(v vec.V3) vec.V3 { return vec.V3{X: -v.Y, Y: -v.X, Z: v.Z} }
	twin.Frame = vec.Frame{
		Origin: diagonal(f.Origin.Sub(outer)).Add(outer), U: diagonal(f.U).Mul(-1), V: diagonal(f.V), W: diagonal(f.W),
	}
	if o := solid.Interference(sh.Placed(), twin); o.Status != solid.Verified || o.Volume != 0 {
		t.Errorf("the sides share wood: %+v", o)
	}
	near(t, "glue area", solid.Contact(sh.Placed(), twin).Area, slope, 1e-3)
}

func areaOf(f solid.Face) float64 {
	var sum vec.V3
	for _, l := range f.Loops {
		for i, v := range l {
			sum = sum.Add(v.Sub(l[0]).Cross(l[(i+1)%len(l)].Sub(l[0])))
		}
	}
	return sum.Dot(f.Normal) / 2
}
