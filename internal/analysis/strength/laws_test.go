package strength_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/analysis/strength"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// TestShelfLaws, over random shelves: twice the load sags twice as far, a lasting load
// sags more, a longer shelf more, a thicker one less, and the range holds the value.
func TestShelfLaws(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		span, thick, deep := 3000+r.Int64N(5000), 120+r.Int64N(150), 1500+r.Int64N(2000)
		sag := func(span, thick int64, kpa int64) plan.ShelfSag {
			b := trial.New()
			b.Part("left", trial.LeftSide, 0, 190, 0, deep, 0, 10000)
			b.Part("right", trial.RightSide, 190+span, 380+span, 0, deep, 0, 10000)
			b.Part("shelf", trial.GrainRight, 130, 250+span, 0, deep, 4000, 4000+thick)
			for _, side := range []string{"left", "right"} {
				b.Joint("joint."+side, piece.HousingJoint, "shelf", side, 60, nil)
			}
			materials(b, []string{oak, "Pine, eastern white", "Oak, European"}[seed%3])
			s := &shop.Shop{Rules: []shop.Rule{{Name: "shelf load", Value: unit.OfInt(unit.DimRatio, kpa)}}}
			return load(shelfOf(t, derive(t, b, s), "shelf"), "shelf load")
		}
		mm := func(e plan.Estimate) float64 {
			l, low, high, ok := e.Lengths()
			if !ok || low > l || l > high {
				t.Errorf("seed %d: %+v", seed, e)
			}
			return l.Millimetres()
		}
		one := sag(span, thick, 1)
		heavy := sag(span, thick, 2)
		if whole := heavy.Load.Value.Float() / one.Load.Value.Float(); math.Abs(mm(heavy.AtOnce)-whole*mm(one.AtOnce)) > 0.004 {
			t.Errorf("seed %d: %g under one, %g under %g times it", seed, mm(one.AtOnce), mm(heavy.AtOnce), whole)
		}
		if mm(one.Lasting) < 1.5*mm(one.AtOnce) || mm(sag(span+500, thick, 1).AtOnce) <= mm(one.AtOnce) || mm(sag(span, thick+20, 1).AtOnce) >= mm(one.AtOnce) {
			t.Errorf("seed %d: span %d, thick %d", seed, span, thick)
		}
	}
}

// TestStandingLaws: the more drawers are out, the less holds it, and a loaded drawer out
// makes it worse than an empty one does, seen from shut.
func TestStandingLaws(t *testing.T) {
	got := derive(t, chest(300), nil).Standing
	holds := map[string]map[int]float64{"empty": {}, "loaded": {}}
	for _, s := range got {
		holds[s.Case][len(s.Out)] = s.Holds.Value.Float()
	}
	for state, h := range holds {
		if !(h[0] > h[1] && h[1] > h[2]) {
			t.Errorf("%s: %v", state, h)
		}
	}
	if holds["loaded"][0]-holds["loaded"][2] <= holds["empty"][0]-holds["empty"][2] {
		t.Errorf("%v", holds)
	}
}

// TestAlikePlaces: of three alike bays one is named; the others' jars count for the whole
// piece, and load the named bay's shelf no more.
func TestAlikePlaces(t *testing.T) {
	b := bookcase()
	b.Space("bay", 190, 9190, 0, 3000, 4190, 8000)
	b.Piece.Spaces[0].Bounds[4] = "shelf.top"
	jars(b, 30, 1000, "bay")
	b.Piece.Contents[0].Among = 3
	got := derive(t, b, nil)
	own := 0.912 * 0.3 * 0.019 * 705.6
	near(t, "shelf", load(shelfOf(t, got, "shelf"), "contents").Load, (10+own)*9.80665, 0.001)
	if c := load(shelfOf(t, got, "top"), "contents"); c.Load.Known() || c.Load.Missing[0] != plan.NoPlace {
		t.Errorf("%+v", c.Load)
	}
	for _, s := range got.Standing {
		empty := 3*own + (2*1.0*0.3*0.019-6*0.006*0.019*0.3)*705.6 // less the housings
		if s.Case == "loaded" {
			empty += 30
		}
		near(t, s.Case, s.Mass, 1000*empty, 0.001)
		near(t, s.Case, s.Holds, empty*0.15*9.80665, 0.001)
	}
}

// TestFunctionsRefuse: what the ledger calls takes no other values, and does not fall
// over them.
func TestFunctionsRefuse(t *testing.T) {
	for name, f := range strength.Functions() {
		for _, bad := range [][]unit.Value{nil, {unit.OfText("x")}, {unit.OfText("x"), unit.OfText("y"), unit.OfText("z"), unit.OfText("x"), unit.OfText("y"), unit.OfText("z")}} {
			if v, err := f(bad); err == nil {
				t.Errorf("%s of %v: %v", name, bad, v)
			}
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	x := trial.Rack(10, 30)
	x.Piece.Materials = []piece.Material{{Name: "oak", Species: oak, Cut: "flat"}}
	for b.Loop() {
		x.Ledger = ledger.New(nil)
		rack := trial.Rack(10, 30)
		rack.Piece.Materials = x.Piece.Materials
		derive(b, rack, nil)
	}
	b.ReportMetric(float64(len(x.Piece.Parts)), "parts")
}
