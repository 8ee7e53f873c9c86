package strength_test

import (
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// held returns the joint of a piece with one.
func held(t *testing.T, b *trial.Builder) plan.JointHold {
	t.Helper()
	got := derive(t, b, nil).Joints
	if len(got) != 1 {
		t.Fatalf("%+v", got)
	}
	return got[0]
}

// corner is a rail 18 thick and 100 wide butted to the face of an upright 25 thick.
func corner(change func(*trial.Builder, *piece.Joint)) *trial.Builder {
	b := trial.New()
	b.Part("upright", trial.LeftSide, 0, 250, 0, 1000, 0, 6000)
	b.Part("rail", trial.GrainRight, 250, 6000, 0, 1000, 3000, 3180)
	b.Joint("joint", piece.ButtJoint, "rail", "upright", 0, func(j *piece.Joint) { change(b, j) })
	materials(b, oak)
	return b
}

// TestScrews: two screws 4 x 60 through an upright of 25 into the end grain of a rail of
// red oak (0.63): 35 of thread, 108.25 G2 D L each, three quarters of it in end grain, a
// fifth of that in use (Wood Handbook FPL-GTR-190, Equation 8-10).
func TestScrews(t *testing.T) {
	b := corner(func(b *trial.Builder, j *piece.Joint) {
		j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: "screw 4 x 60", Count: 2, Margin: b.Fig("margin", 200)}
	})
	h := held(t, b)
	if len(h.Ways) != 3 || h.Missing != nil {
		t.Fatalf("%+v", h)
	}
	want := 2 * 108.25 * 0.63 * 0.63 * 4 * 35 * 0.75
	near(t, h.Ways[0].Way, h.Ways[0].Ultimate, want, 1e-4)
	near(t, h.Ways[0].Way, h.Ways[0].Allowed, want/5, 1e-4)
	near(t, h.Ways[1].Way, h.Ways[1].Ultimate, 2*44.13*16, 1e-4) // K D2, Table 8-4
	near(t, h.Ways[2].Way, h.Ways[2].Ultimate, want*0.009, 1e-4) // at half of 18
	if low := h.Ways[0].Allowed.Low.Float(); low > want*0.5/0.75/6*1.001 {
		t.Errorf("low end %g", low)
	}
}

// TestUnknownFastener: nobody knows a fastener of that name.
func TestUnknownFastener(t *testing.T) {
	b := corner(func(b *trial.Builder, j *piece.Joint) {
		j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: "staple", Count: 2, Margin: b.Fig("margin", 200)}
	})
	if h := held(t, b); len(h.Ways) != 0 || len(h.Missing) != 1 || h.Missing[0] != plan.NoFastener {
		t.Errorf("%+v", h)
	}
}

// TestDowelRow: three dowels of 8, 20 deep in an upright of red oak (shear 12.3 MPa):
// Eckelman's formula, and its pull at half the rail's thickness as a moment.
func TestDowelRow(t *testing.T) {
	b := corner(func(b *trial.Builder, j *piece.Joint) {
		j.Kind = piece.DowelJoint
		j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 80), Count: 3, Margin: b.Fig("m", 200), InA: b.Fig("a", 300), InB: b.Fig("b", 200)}
	})
	h := held(t, b)
	if len(h.Ways) != 2 {
		t.Fatalf("%+v", h)
	}
	one := mechanics.DowelWithdrawal(unit.MM(8), unit.MM(20), 12.3, 13.9)
	near(t, "pull", h.Ways[0].Ultimate, 3*float64(one), 1e-4)
	near(t, "moment", h.Ways[1].Ultimate, 3*float64(one)*9/1000, 1e-4)
	if s := h.Ways[1].Ultimate.Source; s.Key != "strength.own-estimate" {
		t.Errorf("%+v", s)
	}
}

// TestNoFormula: a glued housing has no published estimate.
func TestNoFormula(t *testing.T) {
	got := derive(t, bookcase(), nil)
	for _, h := range got.Joints {
		if len(h.Ways) != 0 || h.Missing[0] != plan.NoJointFormula {
			t.Errorf("%+v", h)
		}
	}
}

// TestRacking: the bookcase, open behind, has six corners and stands 1000 high; it
// carries less than 50 kg, so that 100 N push at its top: 16.7 N m on each. Nobody knows
// what its housings bear. With a glued ply back the top moves 100 x 1000/(700 x 6 x 938).
func TestRacking(t *testing.T) {
	got := derive(t, bookcase(), nil).Cases
	if len(got) != 1 || got[0].Corners != 6 || got[0].Back != "open" || got[0].Bears.Known() || got[0].Bears.Missing[0] != plan.NoJointFormula {
		t.Fatalf("%+v", got)
	}
	near(t, "push", got[0].Push, 100, 1e-9)
	near(t, "each", got[0].Each, 100.0/6, 1e-4)
	b := bookcase()
	b.Part("back", trial.BackPanel, 0, 9380, 3000, 3060, 0, 10000).Material = "ply"
	for _, side := range []string{"left", "right"} {
		b.Joint("joint.back."+side, piece.ButtJoint, "back", side, 0, nil)
	}
	materials(b, oak, piece.Material{Name: "ply", Species: "birch plywood", Sheet: true})
	got = derive(t, b, nil).Cases
	if got[0].Back != "glued" {
		t.Errorf("%+v", got[0])
	}
	near(t, "panel", got[0].Panel, 100.0*1000/(700*6*938), 0.03)
	b.Piece.Joints[len(b.Piece.Joints)-1].Glue = ""
	if got = derive(t, b, nil).Cases; got[0].Back != "loose" || got[0].Panel.Known() {
		t.Errorf("%+v", got[0])
	}
}

// TestFingers: a box joint of five fingers, 12 by 12, has four glued cheeks in torsion.
func TestFingers(t *testing.T) {
	b := trial.New()
	b.Part("side", trial.SideLow, 0, 120, 0, 3000, 0, 500)
	b.Part("front", trial.Front, 0, 3000, 0, 120, 0, 500)
	b.Joint("joint", piece.BoxJoint, "side", "front", 120, func(j *piece.Joint) {
		j.First = "a"
		for range 5 {
			j.Fingers = append(j.Fingers, b.Fig("finger", 100))
		}
		j.Finger = j.Fingers[0]
	})
	materials(b, oak)
	h := held(t, b)
	if len(h.Ways) != 1 {
		t.Fatalf("%+v", h)
	}
	near(t, "moment", h.Ways[0].Ultimate, float64(mechanics.CheekMoment(unit.MM(12), unit.MM(12), 4.9, 4))/1000, 1e-4)
}

// TestUnknownWoods: without a wood nothing about it is known, and nothing else is lost.
func TestUnknownWoods(t *testing.T) {
	b := bookcase()
	materials(b, "unobtainium")
	got := derive(t, b, nil)
	if x := load(shelfOf(t, got, "shelf"), "books"); x.AtOnce.Known() || x.AtOnce.Missing[0] != plan.NoWood || !x.Load.Known() {
		t.Errorf("%+v", x)
	}
	if s := got.Standing[0]; s.Holds.Known() || s.Holds.Missing[0] != plan.NoWood {
		t.Errorf("%+v", s.Holds)
	}
	if len(derive(t, trial.New(), nil).Standing) != 0 {
		t.Error("an empty piece stands")
	}
}

// TestPins: a "panel pin 25" may be 1.0 to 1.4 thick: the middle counts, 1.25, and the
// range goes along; into the end grain of a rail behind 15 of wood 10 are left.
func TestPins(t *testing.T) {
	b := trial.New()
	b.Part("upright", trial.LeftSide, 0, 150, 0, 1000, 0, 6000)
	b.Part("rail", trial.GrainRight, 150, 6000, 0, 1000, 3000, 3180)
	b.Joint("joint", piece.ButtJoint, "rail", "upright", 0, func(j *piece.Joint) {
		j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: "panel pin 25", Count: 2, Margin: b.Fig("margin", 200)}
	})
	materials(b, oak)
	h := held(t, b)
	if len(h.Ways) != 3 {
		t.Fatalf("%+v", h)
	}
	want := float64(mechanics.NailWithdrawal(0.63, 1250*unit.Micrometre, unit.MM(10))) * 2 * 0.75
	near(t, "pull", h.Ways[0].Ultimate, want, 1e-4)
	if low, high := h.Ways[0].Ultimate.Low.Float(), h.Ways[0].Ultimate.High.Float(); low > want*1.0/1.25*0.5/0.75*1.001 || high < want*1.4/1.25*0.999 {
		t.Errorf("%g to %g about %g", low, high, want)
	}
}

// TestWhatRestsOnAShelf: a loose board on a shelf, and a drawer that slides on it, load
// it with what lies in them.
func TestWhatRestsOnAShelf(t *testing.T) {
	b := bookcase()
	b.Part("loose", trial.GrainRight, 1000, 6000, 500, 2500, 4190, 4390)
	materials(b, oak)
	c := load(shelfOf(t, derive(t, b, nil), "shelf"), "contents")
	near(t, "load", c.Load, (0.912*0.3*0.019+0.5*0.2*0.02)*705.6*9.80665, 0.002)
	b.Group("drawer", "room")
	b.Space("room", 190, 9190, 0, 3000, 4190, 6000)
	b.Part("drawer.box", trial.GrainRight, 1000, 6000, 500, 2500, 4195, 4395)
	b.Piece.Parts = append(b.Piece.Parts[:5], b.Piece.Parts[6])
	c = load(shelfOf(t, derive(t, b, nil), "shelf"), "contents")
	near(t, "load", c.Load, (0.912*0.3*0.019+0.5*0.2*0.02)*705.6*9.80665, 0.002)
}
