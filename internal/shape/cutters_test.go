package shape_test

import (
	"math"
	"testing"

	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// with returns a cut with its slot changed.
func with(c piece.Cut, change func(s *piece.Slot)) piece.Cut {
	s := *c.Slot
	change(&s)
	c.Slot = &s
	return c
}

func radius(r float64) func(s *piece.Slot) { return func(s *piece.Slot) { s.EndRadius = mm(r) } }

func lean(near, far float64) func(s *piece.Slot) {
	return func(s *piece.Slot) { s.LeanNear, s.LeanFar = mm(near), mm(far) }
}

func points(list ...[3]float64) (out []piece.OutlinePoint) {
	for _, v := range list {
		out = append(out, piece.OutlinePoint{Along: mm(v[0]), Across: mm(v[1]), Bulge: v[2]})
	}
	return out
}

// slice takes off beyond the plane through three crossings.
func slice(off piece.Side, from, to [2]float64, at [3]float64) piece.Cut {
	return piece.Cut{Slice: &piece.Slice{
		Off:  off,
		From: [2]piece.Figure{mm(from[0]), mm(from[1])}, To: [2]piece.Figure{mm(to[0]), mm(to[1])},
		At: [3]piece.Figure{mm(at[0]), mm(at[1]), mm(at[2])},
	}}
}

func sunk(c piece.Cut, d, depth float64, flat bool) piece.Cut {
	b := *c.Bore
	b.Sink = &piece.Sink{Diameter: mm(d), Depth: mm(depth), Flat: flat}
	c.Bore = &b
	return c
}

func through(c piece.Cut) piece.Cut {
	b := *c.Bore
	b.Through = true
	c.Bore = &b
	return c
}

func easing(a, b piece.Side, r float64, cove bool, from, to float64) piece.Cut {
	return piece.Cut{Ease: &piece.Ease{Sides: [2]piece.Side{a, b}, Radius: mm(r), Cove: cove, From: mm(from), To: mm(to)}}
}

// moreForms are the cuts of a board 300 × 100 × 20 whose shape is more than a box:
// the wood that each takes, worked out by hand.
var moreForms = []struct {
	name  string
	cut   piece.Cut
	taken float64
	walls []shape.Wall // left in the wood
}{
	// The square section 12 × 8 over the run less four corners (1 - π/4) R².
	{"mortise, round ends", with(slot(piece.FaceHigh, piece.AlongLength, 100, 160, 40, 52, 8, 0), radius(6)),
		8 * (60*12 - (4-math.Pi)*36), []shape.Wall{"bottom", "near", "far", "start", "end"}},
	{"mortise, rounded corners", with(slot(piece.EdgeLow, piece.AlongLength, 100, 160, 4, 16, 8, 0), radius(2)),
		8 * (60*12 - (4-math.Pi)*4), []shape.Wall{"bottom", "near", "far", "start", "end"}},
	{"mortise through, one end round", with(slot(piece.FaceLow, piece.AlongWidth, 0, 60, 140, 150, 20, 0), radius(5)),
		20 * (60*10 - (2-math.Pi/2)*25), []shape.Wall{"near", "far", "end"}},
	{"plunged once", with(slot(piece.FaceHigh, piece.AlongLength, 100, 112, 40, 52, 8, 0), radius(6)),
		8 * math.Pi * 36, []shape.Wall{"bottom", "start", "end"}},
	// A run of half circles between the centres and two quarters of a ball.
	{"channel with ball ends", with(slot(piece.FaceHigh, piece.AlongLength, 25, 275, 45, 54.5, 4.75, 4.75), radius(4.75)),
		math.Pi/2*4.75*4.75*(250-9.5) + 2*math.Pi/3*4.75*4.75*4.75, []shape.Wall{"bottom"}},
	{"channel with a ball end, open", with(slot(piece.FaceLow, piece.AlongWidth, 0, 70, 45, 54.5, 4.75, 4.75), radius(4.75)),
		math.Pi/2*4.75*4.75*(70-4.75) + math.Pi/3*4.75*4.75*4.75, []shape.Wall{"bottom"}},
	// Deeper than its radius: an upright part over it, its ends half circles.
	{"deep channel with ball ends", with(slot(piece.FaceHigh, piece.AlongLength, 25, 125, 44, 56, 10, 6), radius(6)),
		math.Pi/2*36*88 + 2*math.Pi/3*216 + 4*(12*88+math.Pi*36), []shape.Wall{"bottom", "near", "far", "start", "end"}},
	// Less deep than its radius: a cap of a sphere, π d² (3r - d)/3, in two halves.
	{"shallow channel with ball ends", with(slot(piece.FaceHigh, piece.AlongLength, 30, 130, 45, 55, 2, 5), radius(5)),
		(25*math.Acos(0.6)-12)*(100-8) + math.Pi*4*13/3, []shape.Wall{"bottom"}},
	// Corners of 2 under ends of 6: the section (96 - 2 (4 - π)) less the same ring at
	// the ends; the volume taken by a turned cutter is π ∫ρ² dy with
	// ρ = 4 + √(4 - (y-2)²) below: π (16·2 + 2·4·π + 16/3) + π 36 6.
	{"trough with rounded ends", with(slot(piece.FaceHigh, piece.AlongLength, 50, 150, 40, 52, 8, 2), radius(6)),
		(12*8-2*(4-math.Pi))*88 + math.Pi*(32+8*math.Pi+16./3) + math.Pi*36*6, []shape.Wall{"bottom", "near", "far", "start", "end"}},
	// Wider than its cutter: the same cutter of 3, the corners of the ends rounded.
	{"tray with rounded corners", with(slot(piece.FaceHigh, piece.AlongLength, 50, 150, 30, 60, 8, 2), radius(3)),
		(30*8-2*(4-math.Pi))*(100-6) + 24*(6*8-2*(4-math.Pi)) + math.Pi*(1*2+2*1*math.Pi+16./3) + math.Pi*9*6,
		[]shape.Wall{"bottom", "near", "far", "start", "end"}},
	{"tray, corners a ball", with(slot(piece.FaceHigh, piece.AlongLength, 50, 150, 30, 60, 8, 3), radius(3)),
		(30*8-(4-math.Pi)/2*9)*(100-6) + 24*(6*8-(4-math.Pi)/2*9) + 2*math.Pi*27/3 + math.Pi*9*5,
		[]shape.Wall{"bottom", "near", "far", "start", "end"}},
	// A triangle 10 wide and 6 deep.
	{"V through", with(slot(piece.FaceHigh, piece.AlongLength, 0, 300, 40, 50, 6, 0), lean(5, 5)), 300 * 30, []shape.Wall{"near", "far"}},
	{"V stopped, flat ends", with(slot(piece.EdgeHigh, piece.AlongLength, 20, 100, 5, 15, 6, 0), lean(5, 5)), 80 * 30, []shape.Wall{"near", "far", "start", "end"}},
	// Two half cones π 25 · 6 / 3 at the ends.
	{"V stopped, as its cutter leaves it", with(with(slot(piece.FaceHigh, piece.AlongLength, 20, 100, 40, 50, 6, 0), lean(5, 5)), radius(5)),
		70*30 + math.Pi*50, []shape.Wall{"near", "far", "start", "end"}},
	{"V with a flat, one wall upright", with(slot(piece.FaceHigh, piece.AlongWidth, 0, 100, 40, 50, 6, 0), lean(0, 4)), 100 * 6 * 8, []shape.Wall{"near", "far", "bottom"}},
	// Undercut by 2 on either side: 12 wide at the mouth, 16 at the foot.
	{"sliding dovetail housing", with(slot(piece.FaceHigh, piece.AlongWidth, 0, 100, 140, 152, 7, 0), lean(-2, -2)), 100 * 7 * 14, []shape.Wall{"near", "far", "bottom"}},
	{"half dovetail, stopped", with(slot(piece.FaceLow, piece.AlongWidth, 0, 80, 140, 152, 7, 0), lean(0, -2)), 80 * 7 * 13, []shape.Wall{"near", "far", "bottom", "end"}},
	{"undercut, through the thickness", with(slot(piece.FaceLow, piece.AlongWidth, 0, 100, 140, 152, 20, 0), lean(-2, -2)), 100 * 20 * 14, []shape.Wall{"near", "far"}},
	// Its cutter's frustum, π h (R² + Rr + r²)/3, at the closed end; 80 reaches to the foot.
	{"dovetail housing, stopped by its cutter", with(with(slot(piece.FaceLow, piece.AlongWidth, 0, 80, 140, 152, 7, 0), lean(-2, -2)), radius(6)),
		(80-8)*7*14 + math.Pi*7*(64+48+36)/6, []shape.Wall{"near", "far", "bottom", "end"}},
	// A frustum 4 deep on a hole of 4.
	{"countersunk hole", sunk(through(bore(piece.FaceHigh, 100, 50, 4, 0)), 10, 3, false),
		math.Pi*4*17 + math.Pi*3*(25+10+4)/3, []shape.Wall{"round", "sunk"}},
	{"countersunk, blind, in an edge", sunk(bore(piece.EdgeHigh, 100, 10, 4, 30), 8, 2, false),
		math.Pi*4*28 + math.Pi*2*(16+8+4)/3, []shape.Wall{"round", "sunk", "bottom"}},
	{"counterbored for a plug", sunk(through(bore(piece.FaceLow, 100, 50, 5, 0)), 12, 8, true),
		math.Pi*6.25*12 + math.Pi*36*8, []shape.Wall{"round", "sunk"}},
	// A taper off the edge from 100 at 60 to 80 at 300: a triangle 240 × 20.
	{"taper", slice(piece.EdgeHigh, [2]float64{60, 0}, [2]float64{300, 20}, [3]float64{100, 80, 100}), 20 * 240 * 20 / 2, []shape.Wall{"slope"}},
	{"bevel of an edge", slice(piece.EdgeLow, [2]float64{0, 0}, [2]float64{300, 20}, [3]float64{0, 0, 12}), 300 * 20 * 12 / 2, []shape.Wall{"slope"}},
	{"mitre", slice(piece.EndHigh, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{200, 300, 200}), 20 * 100 * 100 / 2, []shape.Wall{"slope"}},
	// The end at two angles: under a plane the mean of its heights at the corners.
	{"compound angle", slice(piece.EndLow, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{5, 30, 9}), 100 * 20 * (30. + 9) / 2, []shape.Wall{"slope"}},
	// ∫∫ of what 400 - 2w - 5t falls short of 300: (200³ - 100³)/60.
	{"corner sawn off", slice(piece.EndHigh, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{400, 200, 300}), 7e6 / 60, []shape.Wall{"slope"}},
	{"slice beside the part", slice(piece.FaceHigh, [2]float64{0, 0}, [2]float64{300, 100}, [3]float64{20, 20, 20}), 0, nil},
	{"pocket of any shape", piece.Cut{Pocket: &piece.Pocket{Open: piece.FaceHigh, Depth: mm(6),
		Outline: points([3]float64{50, 20, 0}, [3]float64{90, 20, 1}, [3]float64{90, 60, 0}, [3]float64{50, 60, 0})}},
		6 * (1600 + math.Pi*200), []shape.Wall{"bottom", "flank", "round"}},
	// From the edge the axes are length and thickness.
	{"tail socket", piece.Cut{Pocket: &piece.Pocket{Open: piece.EndHigh, Depth: mm(18), Through: false,
		Outline: points([3]float64{20, -1, 0}, [3]float64{40, -1, 0}, [3]float64{37, 21, 0}, [3]float64{23, 21, 0})}},
		18 * 20 * (20 - 3./22*1*2 + 14 + 3./22*1*2) / 2, []shape.Wall{"bottom", "flank"}},
	{"curved outline out of an edge", piece.Cut{Pocket: &piece.Pocket{Open: piece.FaceLow, Through: true,
		Outline: points([3]float64{118, 100, 1. / 2}, [3]float64{182, 100, 0}, [3]float64{182, 110, 0}, [3]float64{118, 110, 0})}},
		20 * 1600 * (4*math.Atan(0.5) - 0.96) / 2, []shape.Wall{"round"}},
	// A quarter circle of 5 along 300, and along 100 to 200 with flat ends.
	{"cove", easing(piece.EdgeHigh, piece.FaceHigh, 5, true, 0, 0), 300 * math.Pi * 25 / 4, []shape.Wall{"round"}},
	{"stopped cove", easing(piece.FaceLow, piece.EdgeHigh, 5, true, 100, 200), 100 * math.Pi * 25 / 4, []shape.Wall{"round", "start", "end"}},
	{"stopped round", easing(piece.EdgeLow, piece.FaceHigh, 3, false, 40, 300), 260 * 9 * (1 - math.Pi/4), []shape.Wall{"round", "start"}},
}

// TestMoreForms holds every cutter against its closed form, at the facets of the
// screen and of drawings, to 1e-6 of the wood that is taken.
func TestMoreForms(t *testing.T) {
	for _, c := range moreForms {
		for _, facets := range []int{shape.ScreenFacets, shape.DrawingFacets} {
			p := piece.Piece{Parts: []piece.Part{board("b", 300, 100, 20)}}
			c.cut.Part, c.cut.Address = "b", "j.cut"
			s, _ := shape.New(&p, []piece.Cut{c.cut}, facets).Of("b")
			if ok, why := s.Verified(); !ok {
				t.Errorf("%s: %s", c.name, why)
				continue
			}
			if got := 600000 - s.Solid.Volume(); math.Abs(got-c.taken) > 1e-6*max(c.taken, 1) {
				t.Errorf("%s, %d facets: %.6f mm³ taken, want %.6f (%.1e)", c.name, facets, got, c.taken, got/c.taken-1)
			}
			seen := map[shape.Wall]bool{}
			for _, f := range s.Solid.Faces() {
				if o := s.Origin(f.Tag); o.Cut != nil {
					seen[o.Wall] = true
				} else if o.Side == "" {
					t.Errorf("%s: a face with tag %d comes from nowhere", c.name, f.Tag)
				}
			}
			for _, w := range c.walls {
				if !seen[w] {
					t.Errorf("%s: no face of wall %s", c.name, w)
				}
				delete(seen, w)
			}
			if len(seen) > 0 {
				t.Errorf("%s: walls %v that it should not have", c.name, seen)
			}
		}
	}
}

// TestTurnedLeg: a leg with a square-ended taper, a bead, a cove and a ball foot:
// cylinders, cones and bodies of revolution by Pappus' rule.
func TestTurnedLeg(t *testing.T) {
	part := board("leg", 400, 50, 50)
	part.Form = piece.Round
	at := func(along, r, bulge float64) piece.ProfilePoint {
		return piece.ProfilePoint{Along: mm(along), Radius: mm(r), Bulge: bulge}
	}
	half := 1.0 // a half circle
	part.Profile = []piece.ProfilePoint{
		at(0, 25, 0), at(100, 25, 0), at(100, 15, half), at(120, 15, 0), at(140, 15, -half), at(160, 15, 0), at(360, 10, 0), at(380, 20, 0), at(400, 20, 0),
	}
	// A half disc of radius 10 on (or in) a circle of 15: π 100/2 · 2π (15 ± 40/3π).
	lump := func(sign float64) float64 { return math.Pi * 50 * 2 * math.Pi * (15 + sign*40/(3*math.Pi)) }
	cone := func(a, b, h float64) float64 { return math.Pi * h * (a*a + a*b + b*b) / 3 }
	want := math.Pi*625*100 + math.Pi*225*20 + lump(1) + math.Pi*225*20 + math.Pi*225*20 - lump(-1) + cone(15, 10, 200) + cone(10, 20, 20) + math.Pi*400*20
	for _, facets := range []int{shape.ScreenFacets, shape.DrawingFacets} {
		p := piece.Piece{Parts: []piece.Part{part}}
		s, _ := shape.New(&p, nil, facets).Of("leg")
		if ok, why := s.Verified(); !ok {
			t.Fatal(why)
		}
		if got := s.Solid.Volume(); math.Abs(got-want) > 1e-6*want {
			t.Errorf("%d facets: %v mm³, want %v (%.1e)", facets, got, want, got/want-1)
		}
		seen := map[int]bool{}
		for _, f := range s.Solid.Faces() {
			o := s.Origin(f.Tag)
			if o.Segment == 0 && o.Side != piece.EndLow && o.Side != piece.EndHigh {
				t.Errorf("face from %+v", o)
			}
			seen[o.Segment] = true
		}
		if len(seen) != 9 {
			t.Errorf("stretches seen: %v", seen)
		}
	}
}

// TestHoles: an outline with a round and a square hole.
func TestHoles(t *testing.T) {
	part := outline(200, 80, 20, [3]float64{0, 0, 0}, [3]float64{200, 0, 0}, [3]float64{200, 80, 0}, [3]float64{0, 80, 0})
	part.Holes = [][]piece.OutlinePoint{
		points([3]float64{60, 40, -1}, [3]float64{40, 40, -1}),
		points([3]float64{100, 20, 0}, [3]float64{100, 60, 0}, [3]float64{150, 60, 0}, [3]float64{150, 20, 0}),
	}
	p := piece.Piece{Parts: []piece.Part{part}}
	s, _ := shape.New(&p, nil, shape.DrawingFacets).Of("o")
	if ok, why := s.Verified(); !ok {
		t.Fatal(why)
	}
	want := 20 * (16000 - math.Pi*100 - 2000)
	if got := s.Solid.Volume(); math.Abs(got-want) > 1e-6*want {
		t.Errorf("%v mm³, want %v", got, want)
	}
	if in := s.Placed().Intervals(vec.V3{X: -5, Y: 40, Z: 10}, vec.V3{X: 1}); len(in) != 3 || math.Abs(in[1].Enter-65) > 1e-9 || math.Abs(in[1].Leave-105) > 1e-9 {
		t.Errorf("along the middle: %+v", in)
	}
}
