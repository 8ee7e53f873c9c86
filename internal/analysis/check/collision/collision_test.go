package collision_test

import (
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/collision"
	"scantling/internal/analysis/marks"
	"scantling/internal/fitting"
	"scantling/internal/hardware"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// findings runs the check on a piece.
func findings(t *testing.T, b *trial.Builder) []plan.Finding {
	t.Helper()
	cuts, _, _ := joinery.Lower(&b.Piece, b.Ledger)
	c := analysis.Context{Piece: &b.Piece, Cuts: cuts, Ledger: b.Ledger, Facets: 8}
	r, err := analysis.Run(&c, []analysis.Analysis{marks.Analysis, collision.Analysis})
	if err != nil {
		t.Fatal(err)
	}
	return r.Findings
}

// two boards side by side, the second beginning at the given nanometre.
func two(from unit.Length) *trial.Builder {
	b := trial.New()
	b.Part("case.a", trial.GrainRight, 0, 1000, 0, 500, 0, 200)
	b.Part("case.b", trial.GrainRight, 1000, 2000, 0, 500, 0, 200)
	p := &b.Piece.Parts[1]
	p.Extent[0].Low.Nm = from
	p.Length.Nm = p.Extent[0].Size()
	return b
}

func one(t *testing.T, list []plan.Finding) plan.Finding {
	t.Helper()
	if len(list) != 1 {
		t.Fatalf("%d findings: %+v", len(list), list)
	}
	return list[0]
}

// TestFailsByAHair: 1 µm into each other.
func TestFailsByAHair(t *testing.T) {
	f := one(t, findings(t, two(unit.MM(100)-unit.Micrometre)))
	if f.Status != plan.Fail || f.Code != collision.Overlap || f.Is == nil || f.Is.Nm != unit.Micrometre {
		t.Errorf("%+v", f)
	}
	if len(f.Marks) != 2 || f.Text.Key != "collision.no-joint" || len(f.Remedy) == 0 {
		t.Errorf("%+v", f)
	}
}

// TestPassesByAHair: touching, and 0.4 µm into each other, which is rounding.
func TestPassesByAHair(t *testing.T) {
	for _, from := range []unit.Length{unit.MM(100), unit.MM(100) - 400, unit.MM(100) + 1} {
		if f := one(t, findings(t, two(from))); f.Status != plan.Pass {
			t.Errorf("%v: %+v", from, f)
		}
	}
}

// TestUnknown: a part without a verified solid is named, and the rest is judged.
func TestUnknown(t *testing.T) {
	b := two(unit.MM(99))
	b.Part("case.c", trial.GrainRight, 500, 700, 0, 500, 190, 400)
	b.Slot("case.c", "odd", piece.Groove, piece.FaceHigh, piece.AlongThickness, 0, 100, 0, 100, 50, 10)
	list := findings(t, b)
	if len(list) != 2 || list[0].Status != plan.Fail || list[1].Status != plan.Unknown || list[1].Address != "case.c" {
		t.Errorf("%+v", list)
	}
}

// TestSilent: a single board has nothing to collide with.
func TestSilent(t *testing.T) {
	b := trial.New()
	b.Part("lid", trial.GrainRight, 0, 1000, 0, 500, 0, 200)
	if list := findings(t, b); len(list) != 0 {
		t.Errorf("%+v", list)
	}
}

// TestPieces: the trial pieces are clear; without a joint their parts collide.
func TestPieces(t *testing.T) {
	for name, b := range map[string]*trial.Builder{
		"drawer": trial.Drawer(80, 50, 40), "carcase": trial.Carcase(70, 70, 47), "chest": trial.Chest(),
	} {
		if f := one(t, findings(t, b)); f.Status != plan.Pass {
			t.Errorf("%s: %+v", name, f)
		}
	}
	b := trial.Carcase(70, 70, 47)
	joints := b.Piece.Joints
	for i := range joints {
		if joints[i].Kind == piece.HousingJoint {
			b.Piece.Joints = append(joints[:i:i], joints[i+1:]...)
			break
		}
	}
	f := one(t, findings(t, b))
	if f.Status != plan.Fail || f.Is.Nm != 47*trial.Tenth || f.Address != "left" {
		t.Errorf("%+v", f)
	}
}

// TestMeasuredClear: a drawer that is cut to an opening measured wider than drawn
// does not collide with the case; one that is wider than what was measured does.
func TestMeasuredClear(t *testing.T) {
	for wide, want := range map[int64]plan.Status{1004: plan.Pass, 1005: plan.Fail} {
		b := trial.New()
		b.Group("case", "")
		b.Group("drawer", "case.opening")
		b.Part("case.side", trial.LeftSide, 1000, 1180, 0, 500, 0, 1000)
		b.Part("drawer.front", trial.Front, 0, wide, 0, 140, 0, 500)
		b.Space("case.opening", 0, 1004, 0, 500, 0, 1000)
		s := &b.Piece.Spaces[0]
		s.Clear[0] = b.Ledger.Leaf("opening", 1004*trial.Tenth, ledger.Measured, "")
		if f := one(t, findings(t, b)); f.Status != want {
			t.Errorf("%d: %+v", wide, f)
		}
	}
}

// TestFittings: a hinge in its recesses is clear; without them its leaves stand in
// wood, and so does a knob's neighbour.
func TestFittings(t *testing.T) {
	build := func(cut bool) *trial.Builder {
		b := trial.New()
		b.Part("side", trial.LeftSide, 0, 180, 0, 2000, 0, 4000)
		b.Part("door", trial.BackPanel, 0, 3000, -180, 0, 0, 4000)
		f, err := hardware.FindFitting("butt hinge 50")
		if err != nil {
			t.Fatal(err)
		}
		out, fault := fitting.Lay(fitting.Job{
			Name: "hinge", Fitting: f, Count: 2, On: b.Find("side"), With: b.Find("door"), Side: piece.ToFront, Toward: piece.ToLeft, Runs: piece.Up, Ledger: b.Ledger,
		})
		if fault != nil {
			t.Fatal(fault.Text)
		}
		b.Piece.Hardware = append(b.Piece.Hardware, piece.Hardware{Address: "hardware.hinge", Kind: f.Name, Count: 2, On: "side", With: "door", Bodies: out.Bodies})
		if cut {
			b.Piece.Cuts = out.Cuts
		}
		return b
	}
	if f := one(t, findings(t, build(true))); f.Status != plan.Pass {
		t.Errorf("%+v", f)
	}
	list := findings(t, build(false))
	if len(list) != 2 || list[0].Code != collision.Fouls || list[0].Is.Nm <= 0 || list[1].Address != "hardware.hinge" {
		t.Errorf("%+v", list)
	}
	b := build(true) // another fitting on the same spot
	other := b.Piece.Hardware[0]
	other.Address = "hardware.other"
	b.Piece.Hardware = append(b.Piece.Hardware, other)
	if f := one(t, findings(t, b)); f.Code != collision.Fouls || f.Address != "hardware.other" {
		t.Errorf("%+v", f)
	}
}
