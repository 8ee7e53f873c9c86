package shape_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// outline returns a part of an outline in the plane of length and width: corners
// along, across, bulge.
func outline(l, w, t float64, points ...[3]float64) piece.Part {
	p := board("o", l, w, t)
	p.Form = piece.Outline
	for _, v := range points {
		p.Outline = append(p.Outline, piece.OutlinePoint{Along: mm(v[0]), Across: mm(v[1]), Bulge: v[2]})
	}
	return p
}

// TestOutline: a board with one round end, and the origins of its faces.
func TestOutline(t *testing.T) {
	// 200 × 80, the far end a half circle of 40: 160·80 + π·40²/2, 20 thick.
	part := outline(200, 80, 20, [3]float64{0, 0, 0}, [3]float64{160, 0, 1}, [3]float64{160, 80, 0}, [3]float64{0, 80, 0})
	p := piece.Piece{Parts: []piece.Part{part}}
	s, _ := shape.New(&p, nil, shape.DrawingFacets).Of("o")
	if ok, why := s.Verified(); !ok {
		t.Fatal(why)
	}
	want := 20 * (160*80 + math.Pi*800)
	if got := s.Solid.Volume(); math.Abs(got-want) > 1e-6*want {
		t.Errorf("%v mm³, want %v", got, want)
	}
	seen := map[int]bool{}
	for _, f := range s.Solid.Faces() {
		o := s.Origin(f.Tag)
		seen[o.Segment] = true
		if f.Round != (o.Segment == 2) {
			t.Errorf("segment %d: round is %v", o.Segment, f.Round)
		}
		if o.Segment == 0 && o.Side != piece.FaceLow && o.Side != piece.FaceHigh {
			t.Errorf("face from %+v", o)
		}
	}
	if len(seen) != 5 {
		t.Errorf("segments seen: %v", seen)
	}
}

// TestRound: a dowel 8 thick and 50 long, and a flat one, which has no shape.
func TestRound(t *testing.T) {
	part := board("r", 50, 8, 8)
	part.Form = piece.Round
	p := piece.Piece{Parts: []piece.Part{part}}
	s, _ := shape.New(&p, nil, shape.DrawingFacets).Of("r")
	if ok, why := s.Verified(); !ok {
		t.Fatal(why)
	}
	if want := math.Pi * 16 * 50; math.Abs(s.Solid.Volume()-want) > 1e-6*want {
		t.Errorf("%v mm³, want %v", s.Solid.Volume(), want)
	}
	if in := s.Placed().Intervals(vec.V3{X: -5, Y: 4, Z: 4}, vec.V3{X: 1}); len(in) != 1 || math.Abs(in[0].Leave-in[0].Enter-50) > 1e-9 {
		t.Errorf("along the axis: %+v", in)
	}
	p.Parts[0].Width = mm(9)
	s, _ = shape.New(&p, nil, shape.DrawingFacets).Of("r")
	if ok, _ := s.Verified(); ok {
		t.Error("a round part of two thicknesses is verified")
	}
}

// TestOutlineContent: an outline is the same wherever its list of corners begins
// and turned round, and another when mirrored, unless it is its own mirror image.
func TestOutlineContent(t *testing.T) {
	a := outline(100, 60, 20, [3]float64{0, 0, 0}, [3]float64{100, 0, 0.5}, [3]float64{70, 60, 0}, [3]float64{0, 60, 0})
	rolled := a
	rolled.Outline = append(append([]piece.OutlinePoint{}, a.Outline[2:]...), a.Outline[:2]...)
	if shape.ContentOf(&a, nil) != shape.ContentOf(&rolled, nil) {
		t.Error("where the list of corners begins makes a difference")
	}
	// Turned end for end about the thickness.
	turned := outline(100, 60, 20, [3]float64{100, 60, 0}, [3]float64{0, 60, 0.5}, [3]float64{30, 0, 0}, [3]float64{100, 0, 0})
	if shape.ContentOf(&a, nil) != shape.ContentOf(&turned, nil) {
		t.Errorf("turned round:\n%s\n%s", shape.ContentOf(&a, nil), shape.ContentOf(&turned, nil))
	}
	// An outline without cuts is its own mirror image turned over; with a hole in
	// one face it is not.
	if shape.ContentOf(&a, nil) != shape.MirroredContentOf(&a, nil) {
		t.Error("a plain outline has a hand")
	}
	hole := bore(piece.FaceHigh, 20, 15, 5, 10)
	if cuts := []*piece.Cut{&hole}; shape.ContentOf(&a, cuts) == shape.MirroredContentOf(&a, cuts) {
		t.Error("an outline with a hole in one face has no hand")
	}
}

// TestBoxes: boxes of random boards with square slots make up the solid exactly;
// curved cuts are left standing, or left out with the box around them.
func TestBoxes(t *testing.T) {
	const seed = 17
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	sides := []piece.Side{piece.FaceLow, piece.FaceHigh, piece.EdgeLow, piece.EdgeHigh}
	sum := func(list []shape.Box) float64 {
		total := 0.0
		for i, b := range list {
			v := 1.0
			for a := range 3 {
				v *= (b.Hi[a] - b.Lo[a]).Millimetres()
			}
			total += v
			for _, c := range list[:i] {
				if b.Overlaps(c) {
					t.Errorf("boxes overlap: %v %v", b, c)
				}
			}
		}
		return total
	}
	for range 50 {
		p := piece.Piece{Parts: []piece.Part{board("p", 60, 40, 20)}}
		for range 1 + r.IntN(4) {
			x, y := float64(r.IntN(11)*5), float64(r.IntN(3)*5)
			c := slot(sides[r.IntN(4)], piece.AlongLength, x, x+float64(1+r.IntN(3))*5, y, y+5, float64(1+r.IntN(3))*3, 0)
			c.Part = "p"
			p.Cuts = append(p.Cuts, c)
		}
		shapes := shape.New(&p, nil, 8)
		s, _ := shapes.Of("p")
		if ok, why := s.Verified(); !ok {
			t.Fatal(why)
		}
		list, ok := shape.Boxes(s.Part, s.Cuts, false)
		if got := sum(list); !ok || math.Abs(got-s.Solid.Volume()) > 1e-6 {
			t.Errorf("boxes hold %v, the solid %v", got, s.Solid.Volume())
		}
	}
	p := board("p", 60, 40, 20)
	hole := bore(piece.FaceHigh, 30, 20, 10, 5)
	round := slot(piece.FaceHigh, piece.AlongLength, 0, 60, 2, 8, 3, 3)
	cuts := []*piece.Cut{&hole, &round}
	if list, _ := shape.Boxes(&p, cuts, false); sum(list) != 60*40*20 {
		t.Error("a curved cut is taken away where it must not be")
	}
	if list, _ := shape.Boxes(&p, cuts, true); sum(list) != 60*40*20-10*10*5-60*6*3 {
		t.Errorf("%v left", sum(list))
	}
	many := []*piece.Cut{}
	for i := range 58 {
		for k := range 38 {
			c := slot(piece.FaceHigh, piece.AlongLength, float64(i), float64(i)+0.5, float64(k), float64(k)+0.5, 5+float64((i*k)%7), 0)
			many = append(many, &c)
		}
	}
	if list, ok := shape.Boxes(&p, many, false); ok || len(list) != 1 {
		t.Errorf("%d boxes for %d cuts, %v", len(list), len(many), ok)
	}
}

// TestAround: what a cut takes lies in the box around it, for every form of cut.
func TestAround(t *testing.T) {
	for _, c := range moreForms {
		part := board("b", 300, 100, 20)
		p := piece.Piece{Parts: []piece.Part{part}}
		c.cut.Part = "b"
		taken := joinery.Around(&part, &c.cut)
		if c.taken == 0 {
			if len(taken) != 0 {
				t.Errorf("%s: takes nothing, and has a box", c.name)
			}
			continue
		}
		if len(taken) != 1 {
			t.Errorf("%s: %d boxes", c.name, len(taken))
			continue
		}
		// The part less the box around is a part less still: with a pocket in the
		// shape of the box the cut takes nothing more.
		b := taken[0]
		box := piece.Cut{Part: "b", Slot: &piece.Slot{
			Open: piece.FaceLow, Run: piece.AlongLength, From: b[0].Low, To: b[0].High, Near: b[1].Low, Far: b[1].High, Depth: b[2].High,
		}}
		if b[2].Low.Nm > 0 {
			box.Slot.Open, box.Slot.Depth.Nm = piece.FaceHigh, part.Thickness.Nm-b[2].Low.Nm
		}
		volume := func(cuts ...piece.Cut) float64 {
			s, _ := shape.New(&p, cuts, shape.DrawingFacets).Of("b")
			if ok, why := s.Verified(); !ok {
				t.Fatal(c.name, why)
			}
			return s.Solid.Volume()
		}
		if a, ab := volume(box), volume(box, c.cut); math.Abs(a-ab) > 1e-3 {
			t.Errorf("%s: the cut takes %v more than the box around it", c.name, a-ab)
		}
	}
}

// TestTiltedBoxes: a tilted part is the box around it as it stands.
func TestTiltedBoxes(t *testing.T) {
	part := board("b", 300, 100, 20)
	part.Tilt = &piece.Tilt{About: piece.Back, Degrees: 30}
	list, ok := shape.Boxes(&part, nil, false)
	if !ok || len(list) != 1 {
		t.Fatalf("%d boxes", len(list))
	}
	p := piece.Piece{Parts: []piece.Part{part}}
	s, _ := shape.New(&p, nil, 8).Of("b")
	lo, hi := s.Placed().Bounds()
	for a := range 3 {
		if math.Abs(list[0].Lo[a].Millimetres()-lo.At(a)) > 1e-5 || math.Abs(list[0].Hi[a].Millimetres()-hi.At(a)) > 1e-5 {
			t.Errorf("axis %d: box %v to %v, solid %v to %v", a, list[0].Lo[a], list[0].Hi[a], lo.At(a), hi.At(a))
		}
	}
}
