package joinery_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// tray makes a box of four walls with a bottom in grooves all round, 300 × 400
// × high, all walls t thick; corner joins front and back to the sides, and the
// bottom's grooves go over the corners. The bottom lies between two heights and
// reaches so far into the walls.
func tray(b *builder, t, high, from, to, into int64, corner func(name, side, end string)) {
	const wide, deep = 3000, 4000
	b.Part("front", frontGrain, 0, wide, 0, t, 0, high)
	b.Part("back", frontGrain, 0, wide, deep-t, deep, 0, high)
	b.Part("left", sideGrain, 0, t, 0, deep, 0, high)
	b.Part("right", sideGrain, wide-t, wide, 0, deep, 0, high)
	b.Part("bottom", grainRight, t-into, wide-t+into, t-into, deep-t+into, from, to)
	for _, side := range []string{"left", "right"} {
		corner("corner."+side+".front", side, "front")
		corner("corner."+side+".back", side, "back")
	}
	var corners []address.Address
	for _, j := range b.Piece.Joints {
		corners = append(corners, j.Address)
	}
	for _, wall := range []string{"front", "back", "left", "right"} {
		b.Joint("bottom."+wall, piece.GrooveJoint, "bottom", wall, into, func(j *piece.Joint) { j.Over = corners })
	}
}

// apart holds that no two parts of a piece share wood, as solids.
func apart(t *testing.T, b *builder, cuts []piece.Cut) *shape.Shapes {
	t.Helper()
	shapes := shape.New(&b.Piece, cuts, 8)
	for i, a := range shapes.All() {
		if ok, why := a.Verified(); !ok {
			t.Errorf("%s: %s", a.Part.Address, why)
			continue
		}
		for _, c := range shapes.All()[:i] {
			if o := solid.Interference(a.Placed(), c.Placed()); o.Status != solid.Verified || o.Volume > 1e-2 || o.Depth > 1e-5 {
				t.Errorf("%s and %s: %+v", a.Part.Address, c.Part.Address, o)
			}
		}
	}
	return shapes
}

// slotOf finds the one groove of a part that a joint makes.
func slotOf(t *testing.T, cuts []piece.Cut, part, joint string) piece.Slot {
	t.Helper()
	for _, c := range cuts {
		if string(c.Part) == part && string(c.Joint) == joint && c.Slot != nil {
			return *c.Slot
		}
	}
	t.Fatalf("%s has no groove by %s", part, joint)
	return piece.Slot{}
}

// TestGrooveThroughDovetails: a bottom's groove in a side runs out through a tail that
// lies hidden in a half-blind socket, and stops where it would show at the end of a
// through tail; in the front it runs out into the sockets.
func TestGrooveThroughDovetails(t *testing.T) {
	b := newRuled(t)
	// Tails 20 to 80 and 100 to 160 tenths above the lower edge, at their ends.
	tray(b, 120, 600, 100, 140, 50, func(name, side, end string) {
		lap := int64(0)
		if end == "front" {
			lap = 40
		}
		b.Joint(name, piece.DovetailJoint, side, end, 0, func(j *piece.Joint) { j.Tails = tails(b, 15, lap, 60, 220, 40, 220, 60) })
	})
	for _, side := range []string{"left", "right"} {
		b.Find(side).Extent[piece.Back].Low = b.Fig("front end", 40)
		p := b.Find(side)
		p.Length = b.Ledger.Less("length", p.Extent[piece.Back].High, p.Extent[piece.Back].Low)
	}
	cuts, _ := b.lower()
	apart(t, b, cuts)
	if s := slotOf(t, cuts, "left", "bottom.left"); !s.StartOpen || s.EndOpen {
		t.Errorf("the side's groove: %+v", s)
	}
	// At that height the front's ends are sockets, so that its groove shows nowhere.
	if s := slotOf(t, cuts, "front", "bottom.front"); !s.StartOpen || !s.EndOpen {
		t.Errorf("the front's groove: %+v", s)
	}
}

// TestGrooveThroughMitres: in a splined, mitred tray every groove runs through, as
// nothing of it shows.
func TestGrooveThroughMitres(t *testing.T) {
	b := newRuled(t)
	tray(b, 120, 600, 100, 140, 50, func(name, side, end string) {
		b.Joint(name, piece.MitreJoint, side, end, 0, func(j *piece.Joint) {
			j.Spline = &piece.Spline{Thickness: b.Fig("t", 30), Depth: b.Fig("d", 40), Heel: b.Fig("h", 20)}
		})
	})
	cuts, _ := b.lower()
	apart(t, b, cuts)
	for _, wall := range []string{"front", "back", "left", "right"} {
		if s := slotOf(t, cuts, wall, "bottom."+wall); !s.StartOpen || !s.EndOpen {
			t.Errorf("%s: %+v", wall, s)
		}
	}
}

// TestThreeMitres: three boards that meet in one corner, each mitred to both others,
// share its wood out without a word on which goes over which.
func TestThreeMitres(t *testing.T) {
	b := newRuled(t)
	b.Part("top", grainRight, 0, 3000, 0, 4000, 1850, 2000)
	b.Part("front", frontGrain, 0, 3000, 0, 150, 0, 2000)
	b.Part("side", sideGrain, 0, 150, 0, 4000, 0, 2000)
	b.Joint("a", piece.MitreJoint, "top", "front", 0, nil)
	b.Joint("b", piece.MitreJoint, "top", "side", 0, nil)
	b.Joint("c", piece.MitreJoint, "front", "side", 0, nil)
	cuts, _ := b.lower()
	shapes := apart(t, b, cuts)
	// 300·400·15 + 300·185·15 + 385·185·15 of boards laid against each other.
	sum, want := 0.0, 300.0*400*200-285*385*185
	for _, s := range shapes.All() {
		sum += s.Solid.Volume()
	}
	if d := sum - want; d > 1e-3 || d < -1e-3 {
		t.Errorf("the three hold %.4f mm³ of %.4f", sum, want)
	}
}

// TestSlidingIntoRebate: the housing of a sliding dovetail runs out behind, where a
// back lies in a rebate across it; the back goes over it.
func TestSlidingIntoRebate(t *testing.T) {
	b := newRuled(t)
	b.Part("side", grainUp, 0, 200, 0, 2500, 0, 4000)
	b.Part("shelf", grainRight, 140, 3000, 0, 2500, 1000, 1180)
	b.Part("panel", upright, 100, 3000, 2440, 2500, 0, 4000)
	slide := func(over ...address.Address) func(j *piece.Joint) {
		return func(j *piece.Joint) {
			j.Slide, j.Over = &piece.Slide{Neck: b.Fig("n", 120), Lean: b.Fig("l", 10)}, over
		}
	}
	b.Joint("shelf", piece.SlidingJoint, "shelf", "side", 60, slide())
	b.Joint("back", piece.RebateJoint, "panel", "side", 100, func(j *piece.Joint) { j.Over = []address.Address{"shelf", "lie"} })
	b.Joint("lie", piece.RebateJoint, "panel", "shelf", 60, func(j *piece.Joint) { j.Over = []address.Address{"shelf"} })
	cuts, _ := b.lower()
	apart(t, b, cuts)
	// The other way round the shelf keeps its dovetail and the panel is notched for it.
	for i := range b.Piece.Joints {
		b.Piece.Joints[i].Over = nil
	}
	b.Piece.Joints[0].Over = []address.Address{"back", "lie"}
	cuts, _ = b.lower()
	apart(t, b, cuts)
	notched := false
	for _, c := range cuts {
		notched = notched || c.Part == "panel" && c.Kind == piece.Notch
	}
	if !notched {
		t.Error("the panel is not notched for the dovetail")
	}
}

// TestCornersWithoutAWord: without a word on which goes over which, a tail that loses
// its groove to the bottom is a conflict; a groove beside all tails and pins is none.
func TestCornersWithoutAWord(t *testing.T) {
	for _, c := range []struct {
		from, into int64
		conflict   bool
	}{{100, 50, true}, {100, 0, false}} {
		b := newRuled(t)
		tray(b, 120, 600, c.from, c.from+40, max(c.into, 1), func(name, side, end string) {
			b.Joint(name, piece.DovetailJoint, side, end, 0, func(j *piece.Joint) { j.Tails = tails(b, 15, 0, 60, 220, 40, 220, 60) })
		})
		if c.into == 0 { // the bottom only stands on the front and the back
			b.Piece.Joints = b.Piece.Joints[:4]
			b.Piece.Parts = b.Piece.Parts[:4]
		}
		for i := range b.Piece.Joints {
			b.Piece.Joints[i].Over = nil
		}
		_, _, faults := joinery.Lower(&b.Piece, b.Ledger)
		if (len(faults) > 0) != c.conflict {
			t.Errorf("into %d: %+v", c.into, faults)
		}
		for _, f := range faults {
			if f.Code != joinery.CodeClaims {
				t.Errorf("%s %v", f.Code, f.Text)
			}
		}
	}
}

// TestCrossLaws: trays of random sizes with random corners, grooves at random heights,
// either going over the other: no conflict, and no two parts share wood.
func TestCrossLaws(t *testing.T) {
	r := seeded(t, 20261127)
	for n := range rounds(60) {
		b := newRuled(t)
		thick, high := 80+r.Int64N(100), 500+r.Int64N(600)
		into := 10 + r.Int64N(thick/2)
		from := 20 + r.Int64N(high-120)
		kind := r.IntN(3)
		tray(b, thick, high, from, from+20+r.Int64N(60), into, func(name, side, end string) { randomWall(b, r, kind, thick, high, name, side, end) })
		if r.IntN(2) == 0 { // the corners over the bottom
			var bottoms []address.Address
			for i := range b.Piece.Joints {
				j := &b.Piece.Joints[i]
				if j.Kind == piece.GrooveJoint {
					j.Over, bottoms = nil, append(bottoms, j.Address)
				}
			}
			for i := range b.Piece.Joints {
				if j := &b.Piece.Joints[i]; j.Kind != piece.GrooveJoint {
					j.Over = bottoms
				}
			}
		}
		cuts, _, faults := joinery.Lower(&b.Piece, b.Ledger)
		for _, f := range faults {
			t.Errorf("%s %s %v", f.Address, f.Code, f.Text)
		}
		apart(t, b, cuts)
		if t.Failed() {
			t.Fatalf("tray %d: kind %d thick %d high %d into %d from %d\n%s", n, kind, thick, high, into, from, fmt.Sprint(b.Piece.Joints[0].Over, b.Piece.Joints[4].Over))
		}
	}
}

// randomWall joins a side to an end: by dovetails, a mitre or fingers.
func randomWall(b *builder, r *rand.Rand, kind int, thick, high int64, name, side, end string) {
	switch kind {
	case 0:
		pins, tail := int64(40), int64(0)
		count := 1 + r.Int64N(4)
		tail = (high - pins*(count+1)) / count
		row := []int64{pins}
		for range count {
			row = append(row, tail, pins)
		}
		row[0] += high - tail*count - pins*(count+1)
		b.Joint(name, piece.DovetailJoint, side, end, 0, func(j *piece.Joint) { j.Tails = tails(b, 5+r.Int64N(min(20, (tail-30)/2-4)), 0, row...) })
	case 1:
		b.Joint(name, piece.MitreJoint, side, end, 0, func(j *piece.Joint) {
			j.Keys = &piece.Keys{Thickness: b.Fig("t", 30), Depth: b.Fig("d", thick), At: []piece.Figure{b.Fig("at", 100+r.Int64N(300))}}
		})
	default:
		b.Joint(name, piece.BoxJoint, side, end, 0, func(j *piece.Joint) { j.Finger = b.Fig("f", 60+r.Int64N(80)) })
	}
}
