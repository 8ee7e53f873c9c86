package joinery_test

import (
	"fmt"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// drawer builds the drawer of the recipe: front 14 rebated over the sides by
// lap, back 10 let back into the sides, a ply bottom in grooves all round.
func drawer(t *testing.T, lap, back, groove int64) *builder {
	b := newBuilder(t)
	b.part("front", frontGrain, 0, 2000, 0, 140, 0, 600)
	b.part("left", sideGrain, 0, 100, 140-lap, 3800, 0, 600)
	b.part("right", piece.Frame{Length: piece.ToBack, Width: piece.ToDown, Thickness: piece.ToLeft}, 1900, 2000, 140-lap, 3800, 0, 600)
	b.part("back", frontGrain, 100-back, 1900+back, 3700, 3800, 0, 600)
	b.part("bottom", grainBack, 100-groove, 1900+groove, 140-groove, 3700+groove, 80, 118)
	for _, s := range []string{"left", "right"} {
		b.joint("front."+s, piece.RebateJoint, s, "front", lap, nil)
		b.joint("back."+s, piece.RebateJoint, "back", s, back, nil)
	}
	for _, s := range []string{"front", "left", "right", "back"} {
		b.joint("bottom."+s, piece.GrooveJoint, "bottom", s, groove, func(j *piece.Joint) {
			j.ClearAcross, j.ClearDeep = b.fig("across", 2), b.fig("deep", 5)
			j.Over = []address.Address{"front.left", "front.right", "back.left", "back.right"}
		})
	}
	return b
}

// trenches lists cuts as "part kind run-from..to open ends near..far depth".
func trenches(cuts []piece.Cut) []string {
	var out []string
	for _, c := range cuts {
		if c.Slot == nil {
			continue
		}
		s := c.Slot
		ends := ""
		if s.StartOpen {
			ends += "<"
		}
		if s.EndOpen {
			ends += ">"
		}
		out = append(out, fmt.Sprintf("%s %s from %s: %v..%v%s across %v..%v deep %v", c.Part, c.Kind, s.Open,
			mm(s.From), mm(s.To), ends, mm(s.Near), mm(s.Far), mm(s.Depth)))
	}
	return out
}

func mm(f piece.Figure) float64 { return f.Nm.Millimetres() }

// TestDrawerGroovesRunOut: where the rebates are as deep as the grooves or
// deeper, every groove runs through; nothing shows.
func TestDrawerGroovesRunOut(t *testing.T) {
	cuts, _ := drawer(t, 80, 50, 40).lower()
	for _, c := range cuts {
		if c.Kind == piece.Groove && !(c.Slot.StartOpen && c.Slot.EndOpen) {
			t.Errorf("%s is stopped: %+v", c.Address, *c.Slot)
		}
	}
	if !slices.Contains(trenches(cuts), "left groove from face 2: 0..374<> across 8..12 deep 4.5") {
		t.Errorf("the left side's groove is not among %q", trenches(cuts))
	}
}

// TestDrawerGroovesStopWhereTheyWouldShow: a groove deeper than the back's rebate
// would open a hole in the side's end behind.
func TestDrawerGroovesStopWhereTheyWouldShow(t *testing.T) {
	cuts, _ := drawer(t, 80, 35, 40).lower()
	for _, c := range cuts {
		if c.Part != "left" || c.Kind != piece.Groove {
			continue
		}
		// The bottom ends 4 inside the back, 0.5 of room behind it.
		if s := c.Slot; !s.StartOpen || s.EndOpen || mm(s.To) != 374-10+4.5 {
			t.Errorf("the side's groove: %+v", *s)
		}
	}
}

// TestDrawerIsWhole counts the whole drawer cell by cell: no two parts share
// wood, and the volumes add up.
func TestDrawerIsWhole(t *testing.T) {
	for _, figures := range [][3]int64{{80, 50, 40}, {80, 35, 40}, {60, 33, 47}} {
		b := drawer(t, figures[0], figures[1], figures[2])
		cuts, _ := b.lower()
		b.voxels([]string{"front", "left", "right", "back", "bottom"}, cuts, func(lo, hi [3]unit.Length, wood, body []bool) {
			n := 0
			for _, w := range wood {
				if w {
					n++
				}
			}
			if n > 1 {
				t.Fatalf("%v: %d parts have wood at %v", figures, n, lo)
			}
		})
	}
}

// TestPrecedence: without a word on which joint goes over the other, wood that a
// part keeps by one joint and loses by the other is an error that names both.
func TestPrecedence(t *testing.T) {
	b := drawer(t, 80, 50, 40)
	for i := range b.p.Joints {
		b.p.Joints[i].Over = nil
	}
	_, _, faults := joinery.Lower(&b.p, b.l)
	seen := map[string]bool{}
	for _, f := range faults {
		if f.Code != joinery.CodeClaims {
			t.Errorf("%s: %s", f.Address, f.Code)
		}
		other, _ := f.Text.Arg("other")
		seen[string(f.Address)+" "+other.S] = true
	}
	for _, pair := range []string{"front.left bottom.left", "front.right bottom.right", "back.left bottom.back", "back.right bottom.back"} {
		if !seen[pair] {
			t.Errorf("no conflict between %s; %v", pair, seen)
		}
	}
	if len(seen) != 4 {
		t.Errorf("conflicts: %v", seen)
	}
}

// carcase is a box with a back and dividers: sides 14, back 6 let in as deep as
// the corner's rebates, dividers up to the back.
func carcase(t *testing.T, corner, back, housing int64) *builder {
	b := newBuilder(t)
	w, d, h := int64(3000), int64(2000), int64(4000)
	b.part("left", grainUp, 0, 140, 0, d, 0, h)
	b.part("right", grainUpR, w-140, w, 0, d, 0, h)
	b.part("top", grainRight, 140-corner, w-140+corner, 0, d, h-140, h)
	b.part("bottom", grainRight, 140-corner, w-140+corner, 0, d, 0, 140)
	b.part("divider", grainRight, 140-housing, w-140+housing, 0, d-60, 2000, 2140)
	b.part("back", upright, 140-back, w-140+back, d-60, d, 140-back, h-140+back)
	corners := []address.Address{}
	for _, s := range []string{"left", "right"} {
		for _, a := range []string{"top", "bottom"} {
			b.joint("corner."+a+s, piece.RebateJoint, a, s, corner, nil)
			corners = append(corners, address.Address("corner."+a+s))
		}
		b.joint("divider."+s, piece.HousingJoint, "divider", s, housing, func(j *piece.Joint) { j.StopLow = b.fig("stop", 80) })
	}
	for _, s := range []string{"left", "right", "top", "bottom"} {
		b.joint("back."+s, piece.RebateJoint, "back", s, back, func(j *piece.Joint) { j.Over = corners })
	}
	return b
}

// TestCarcase: a back rebate as deep as the corners' runs through; a shallower
// housing runs out into it behind and is stopped in front.
func TestCarcase(t *testing.T) {
	b := carcase(t, 70, 70, 47)
	cuts, _ := b.lower()
	got := trenches(cuts)
	for _, line := range []string{
		"left rebate from face 1: 0..400<> across 194..200 deep 7", // back
		"top rebate from face 1: 0..286<> across 194..200 deep 7",
		"left housing from face 1: 8..200> across 200..214 deep 4.7",
		"divider notch from end 1: 0..14<> across 0..8 deep 4.7",
	} {
		if !slices.Contains(got, line) {
			t.Errorf("missing %q in\n%q", line, got)
		}
	}
	b.voxels([]string{"left", "right", "top", "bottom", "divider", "back"}, cuts, func(lo, hi [3]unit.Length, wood, body []bool) {
		n := 0
		for _, x := range wood {
			if x {
				n++
			}
		}
		if n > 1 {
			t.Fatalf("%d parts have wood at %v", n, lo)
		}
	})
	// Deeper than the corners' rebates it would show in the ends of the sides.
	cuts, _ = carcase(t, 50, 70, 47).lower()
	if want := "left rebate from face 1: 7..393 across 194..200 deep 7"; !slices.Contains(trenches(cuts), want) {
		t.Errorf("missing %q in\n%q", want, trenches(cuts))
	}
	// A housing deeper than the back's rebate is stopped behind, at the back.
	cuts, _ = carcase(t, 40, 40, 47).lower()
	if want := "left housing from face 1: 8..194 across 200..214 deep 4.7"; !slices.Contains(trenches(cuts), want) {
		t.Errorf("missing %q in\n%q", want, trenches(cuts))
	}
}

// TestGrooveThroughBoxJoint: the bottom's groove runs out of the front where its
// end is a socket of the joint, and stops in the side, where it would show.
func TestGrooveThroughBoxJoint(t *testing.T) {
	b := newBuilder(t)
	b.part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
	b.part("side", sideGrain, 0, 100, 0, 3000, 0, 600)
	b.part("bottom", grainBack, 60, 1960, 60, 2900, 140, 180)
	b.joint("corner", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.fig("f", 120) })
	over := func(j *piece.Joint) { j.Over = []address.Address{"corner"} }
	b.joint("groove.front", piece.GrooveJoint, "bottom", "front", 40, over)
	b.joint("groove.side", piece.GrooveJoint, "bottom", "side", 40, over)
	cuts, _ := b.lower()
	got := trenches(cuts)
	for _, want := range []string{
		"front groove from face 1: 0..196< across 14..18 deep 4",
		"side groove from face 2: 6..290 across 14..18 deep 4",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("missing %q in\n%q", want, got)
		}
	}
}

// TestTwoTenons: two rails that meet inside a leg: an error without a word, and
// with one the second is notched for the first.
func TestTwoTenons(t *testing.T) {
	build := func(over ...address.Address) *builder {
		b := newBuilder(t)
		b.part("leg", upright, 0, 400, 0, 400, 0, 4000)
		b.part("rail", frontGrain, 100, 3000, 100, 250, 3000, 3500)
		b.part("side", sideGrain, 120, 260, 150, 2000, 3000, 3500)
		b.joint("a", piece.HousingJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Over = over })
		b.joint("b", piece.HousingJoint, "side", "leg", 250, nil)
		return b
	}
	b := build()
	if _, _, faults := joinery.Lower(&b.p, b.l); len(faults) != 1 || faults[0].Code != joinery.CodeClaims {
		t.Errorf("faults: %+v", faults)
	}
	cuts, _ := build("b").lower()
	if want := "side notch from end 1: 0..50<> across 0..14 deep 10"; !slices.Contains(trenches(cuts), want) {
		t.Errorf("no notch in %q", trenches(cuts))
	}
}

// TestFaults: one mistake each.
func TestFaults(t *testing.T) {
	shelf := func(b *builder, left int64) {
		b.part("shelf", grainRight, left, 3000, 0, 2000, 4000, 4150)
		b.part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
	}
	cases := []struct {
		name  string
		code  diag.Code
		build func(b *builder)
	}{
		{"unknown part", joinery.CodePart, func(b *builder) { shelf(b, 130); b.joint("j", piece.HousingJoint, "shelf", "wall", 50, nil) }},
		{"one part twice", joinery.CodePart, func(b *builder) { shelf(b, 130); b.joint("j", piece.HousingJoint, "shelf", "shelf", 50, nil) }},
		{"apart", joinery.CodeApart, func(b *builder) { shelf(b, 181); b.joint("j", piece.HousingJoint, "shelf", "side", 50, nil) }},
		{"only touching", joinery.CodeNoOverlap, func(b *builder) { shelf(b, 180); b.joint("j", piece.HousingJoint, "shelf", "side", 50, nil) }},
		{"butt that overlaps", joinery.CodeOverlap, func(b *builder) { shelf(b, 179); b.joint("j", piece.ButtJoint, "shelf", "side", 0, nil) }},
		{"too deep", joinery.CodeTooDeep, func(b *builder) { shelf(b, -20); b.joint("j", piece.HousingJoint, "shelf", "side", 200, nil) }},
		{"depth not as drawn", joinery.CodeDepth, func(b *builder) { shelf(b, 130); b.joint("j", piece.HousingJoint, "shelf", "side", 60, nil) }},
		{"stops leave nothing", joinery.CodeStops, func(b *builder) {
			shelf(b, 130)
			b.joint("j", piece.HousingJoint, "shelf", "side", 50, func(j *piece.Joint) { j.StopLow, j.StopHigh = b.fig("s", 1000), b.fig("s", 1000) })
		}},
		{"fingers", joinery.CodeFingers, func(b *builder) {
			b.part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
			b.part("side", sideGrain, 0, 120, 0, 3000, 0, 600)
			b.joint("j", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) {
				j.Fingers = []piece.Figure{b.fig("f", 200), b.fig("f", 200), b.fig("f", 199)}
			})
		}},
		{"fingers in long grain", joinery.CodeGrain, func(b *builder) {
			b.part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
			b.part("side", frontGrain, 0, 2000, 0, 100, 500, 1100)
			b.joint("j", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.fig("finger", 120) })
		}},
		{"fingers not flush", joinery.CodeDepth, func(b *builder) {
			b.part("front", frontGrain, 20, 2000, 0, 100, 0, 600)
			b.part("side", sideGrain, 0, 120, 0, 3000, 0, 600)
			b.joint("j", piece.BoxJoint, "front", "side", 0, nil)
		}},
		{"halving", joinery.CodeHalving, func(b *builder) {
			b.part("rail", grainRight, 0, 3000, 1000, 1400, 50, 150)
			b.part("stile", grainBack, 1000, 1400, 0, 3000, 0, 200)
			b.joint("j", piece.HalvingJoint, "rail", "stile", 0, nil)
		}},
		{"dowels too thick", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.joint("j", piece.DowelJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.fig("d", 160), Count: 2, Margin: b.fig("m", 300), InA: b.fig("a", 250), InB: b.fig("b", 90)}
			})
		}},
		{"dowels through", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.joint("j", piece.DowelJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.fig("d", 60), Count: 2, Margin: b.fig("m", 300), InA: b.fig("a", 250), InB: b.fig("b", 180)}
			})
		}},
		{"pins without room", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.joint("j", piece.ButtJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Fasteners = &piece.Fasteners{Kind: "pin", Count: 2, Margin: b.fig("m", 1000)}
			})
		}},
		{"too many pins", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.joint("j", piece.ButtJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Fasteners = &piece.Fasteners{Kind: "pin", Count: 1 << 30, Margin: b.fig("m", 10)}
			})
		}},
	}
	for _, c := range cases {
		b := newBuilder(t)
		c.build(b)
		_, low, faults := joinery.Lower(&b.p, b.l)
		if len(faults) != 1 || faults[0].Code != c.code {
			t.Errorf("%s: %+v", c.name, faults)
		}
		if len(low) != 0 {
			t.Errorf("%s: has numbers all the same", c.name)
		}
	}
}
