package joinery_test

import (
	"fmt"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/unit"
)

// drawer is the trial drawer.
func drawer(t *testing.T, lap, back, groove int64) *builder {
	return &builder{trial.Drawer(lap, back, groove), t}
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
	for i := range b.Piece.Joints {
		b.Piece.Joints[i].Over = nil
	}
	_, _, faults := joinery.Lower(&b.Piece, b.Ledger)
	seen := map[string]bool{}
	for _, f := range faults {
		if f.Code != joinery.CodeClaims {
			t.Errorf("%s: %s", f.Address, f.Code)
		}
		other, _ := f.Text.Arg("other")
		seen[string(f.Address)+" "+other.S] = true
	}
	for _, pair := range []string{"joint.front.left joint.bottom.left", "joint.front.right joint.bottom.right", "joint.back.left joint.bottom.back", "joint.back.right joint.bottom.back"} {
		if !seen[pair] {
			t.Errorf("no conflict between %s; %v", pair, seen)
		}
	}
	if len(seen) != 4 {
		t.Errorf("conflicts: %v", seen)
	}
}

// carcase is the trial carcase.
func carcase(t *testing.T, corner, back, housing int64) *builder {
	return &builder{trial.Carcase(corner, back, housing), t}
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
	b.voxels([]string{"left", "right", "top", "bottom", "divider", "panel"}, cuts, func(lo, hi [3]unit.Length, wood, body []bool) {
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
	b.Part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
	b.Part("side", sideGrain, 0, 100, 0, 3000, 0, 600)
	b.Part("bottom", grainBack, 60, 1960, 60, 2900, 140, 180)
	b.Joint("corner", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.Fig("f", 120) })
	over := func(j *piece.Joint) { j.Over = []address.Address{"corner"} }
	b.Joint("groove.front", piece.GrooveJoint, "bottom", "front", 40, over)
	b.Joint("groove.side", piece.GrooveJoint, "bottom", "side", 40, over)
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
		b.Part("leg", upright, 0, 400, 0, 400, 0, 4000)
		b.Part("rail", frontGrain, 100, 3000, 100, 250, 3000, 3500)
		b.Part("side", sideGrain, 120, 260, 150, 2000, 3000, 3500)
		b.Joint("a", piece.HousingJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Over = over })
		b.Joint("b", piece.HousingJoint, "side", "leg", 250, nil)
		return b
	}
	b := build()
	if _, _, faults := joinery.Lower(&b.Piece, b.Ledger); len(faults) != 1 || faults[0].Code != joinery.CodeClaims {
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
		b.Part("shelf", grainRight, left, 3000, 0, 2000, 4000, 4150)
		b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
	}
	cases := []struct {
		name  string
		code  diag.Code
		build func(b *builder)
	}{
		{"unknown part", joinery.CodePart, func(b *builder) { shelf(b, 130); b.Joint("j", piece.HousingJoint, "shelf", "wall", 50, nil) }},
		{"one part twice", joinery.CodePart, func(b *builder) { shelf(b, 130); b.Joint("j", piece.HousingJoint, "shelf", "shelf", 50, nil) }},
		{"apart", joinery.CodeApart, func(b *builder) { shelf(b, 181); b.Joint("j", piece.HousingJoint, "shelf", "side", 50, nil) }},
		{"only touching", joinery.CodeNoOverlap, func(b *builder) { shelf(b, 180); b.Joint("j", piece.HousingJoint, "shelf", "side", 50, nil) }},
		{"butt that overlaps", joinery.CodeOverlap, func(b *builder) { shelf(b, 179); b.Joint("j", piece.ButtJoint, "shelf", "side", 0, nil) }},
		{"too deep", joinery.CodeTooDeep, func(b *builder) { shelf(b, -20); b.Joint("j", piece.HousingJoint, "shelf", "side", 200, nil) }},
		{"depth not as drawn", joinery.CodeDepth, func(b *builder) { shelf(b, 130); b.Joint("j", piece.HousingJoint, "shelf", "side", 60, nil) }},
		{"stops leave nothing", joinery.CodeStops, func(b *builder) {
			shelf(b, 130)
			b.Joint("j", piece.HousingJoint, "shelf", "side", 50, func(j *piece.Joint) { j.StopLow, j.StopHigh = b.Fig("s", 1000), b.Fig("s", 1000) })
		}},
		{"fingers", joinery.CodeFingers, func(b *builder) {
			b.Part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
			b.Part("side", sideGrain, 0, 120, 0, 3000, 0, 600)
			b.Joint("j", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) {
				j.Fingers = []piece.Figure{b.Fig("f", 200), b.Fig("f", 200), b.Fig("f", 199)}
			})
		}},
		{"fingers in long grain", joinery.CodeGrain, func(b *builder) {
			b.Part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
			b.Part("side", frontGrain, 0, 2000, 0, 100, 500, 1100)
			b.Joint("j", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.Fig("finger", 120) })
		}},
		{"fingers not flush", joinery.CodeDepth, func(b *builder) {
			b.Part("front", frontGrain, 20, 2000, 0, 100, 0, 600)
			b.Part("side", sideGrain, 0, 120, 0, 3000, 0, 600)
			b.Joint("j", piece.BoxJoint, "front", "side", 0, nil)
		}},
		{"halving", joinery.CodeHalving, func(b *builder) {
			b.Part("rail", grainRight, 0, 3000, 1000, 1400, 50, 150)
			b.Part("stile", grainBack, 1000, 1400, 0, 3000, 0, 200)
			b.Joint("j", piece.HalvingJoint, "rail", "stile", 0, nil)
		}},
		{"dowels too thick", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.Joint("j", piece.DowelJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 160), Count: 2, Margin: b.Fig("m", 300), InA: b.Fig("a", 250), InB: b.Fig("b", 90)}
			})
		}},
		{"dowels through", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.Joint("j", piece.DowelJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 60), Count: 2, Margin: b.Fig("m", 300), InA: b.Fig("a", 250), InB: b.Fig("b", 180)}
			})
		}},
		{"pins without room", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.Joint("j", piece.ButtJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Fasteners = &piece.Fasteners{Kind: "pin", Count: 2, Margin: b.Fig("m", 1000)}
			})
		}},
		{"too many pins", joinery.CodeHoles, func(b *builder) {
			shelf(b, 180)
			b.Joint("j", piece.ButtJoint, "shelf", "side", 0, func(j *piece.Joint) {
				j.Fasteners = &piece.Fasteners{Kind: "pin", Count: 1 << 30, Margin: b.Fig("m", 10)}
			})
		}},
	}
	for _, c := range cases {
		b := newBuilder(t)
		c.build(b)
		_, low, faults := joinery.Lower(&b.Piece, b.Ledger)
		if len(faults) != 1 || faults[0].Code != c.code {
			t.Errorf("%s: %+v", c.name, faults)
		}
		if len(low) != 0 {
			t.Errorf("%s: has numbers all the same", c.name)
		}
	}
}
