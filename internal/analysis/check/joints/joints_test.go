package joints_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/joints"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// shelf is a shelf of cherry, 600 by 300 by 20, between two sides, each end held by two of a
// fastener.
func shelf(kind piece.JointKind, depth int64, fastener string) *trial.Builder {
	b := trial.New()
	b.Part("left", trial.LeftSide, 0, 200, 0, 3000, 0, 6000)
	b.Part("right", trial.LeftSide, 6200, 6400, 0, 3000, 0, 6000)
	b.Part("shelf", trial.GrainRight, 200-depth, 6200+depth, 0, 3000, 3000, 3200)
	for _, side := range []string{"left", "right"} {
		b.Joint("joint."+side, kind, "shelf", side, depth, func(j *piece.Joint) {
			j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: fastener, Count: 2, Margin: b.Fig("margin", 300)}
		})
	}
	checktest.Materials(b)
	return b
}

// loaded is the shop with a load that its shelves are reckoned for, in kilopascals.
func loaded(kpa int64) *shop.Shop {
	s := checktest.Shop()
	s.Rules = append(s.Rules, shop.Rule{Name: "shelf load", Value: unit.OfInt(unit.DimUntyped, kpa)})
	return s
}

func run(t *testing.T, b *trial.Builder, s *shop.Shop, status plan.Status, code diag.Code) plan.Finding {
	t.Helper()
	return checktest.Want(t, checktest.Run(t, b, s, joints.Analysis), status, code)[0]
}

// TestSideways: 4 kPa on 0.6 by 0.3 m are 720 N, 360 at each end. Two screws of 4 mm in
// cherry (0.50) bear, pushed sideways, K D2 = 31.99 x 16 each (Wood Handbook FPL-GTR-190,
// Table 8-4, in newtons and millimetres), a fifth of that in use: 204 N. What half a
// kilopascal puts on them they bear.
func TestSideways(t *testing.T) {
	got := checktest.Run(t, shelf(piece.ButtJoint, 0, "screw 4 x 60"), loaded(4), joints.Analysis)
	f := checktest.Want(t, got, plan.Fail, joints.CodeWeak, joints.CodeWeak)[0]
	is, _ := f.Text.Arg("is")
	limit, _ := f.Text.Arg("limit")
	if is.X != 360 || limit.X != 204 {
		t.Errorf("%g N on it, %g borne", is.X, limit.X)
	}
	for _, source := range []string{"house.shelf load", "Wood Handbook"} {
		if !strings.Contains(f.Source, source) {
			t.Errorf("%s does not name %s", f.Source, source)
		}
	}
	half := checktest.Shop()
	half.Rules = append(half.Rules, shop.Rule{Name: "shelf load", Value: unit.OfFloat(unit.DimUntyped, 0.5)})
	run(t, shelf(piece.ButtJoint, 0, "screw 4 x 60"), half, plan.Pass, joints.CodeBear)
}

// TestBears: a housing bears on wood, and glue alone has no formula.
func TestBears(t *testing.T) {
	run(t, shelf(piece.HousingJoint, 60, "screw 4 x 60"), loaded(10), plan.Pass, joints.CodeBear)
	b := shelf(piece.ButtJoint, 0, "screw 4 x 60")
	for i := range b.Piece.Joints {
		b.Piece.Joints[i].Glue, b.Piece.Joints[i].Fasteners = "pva", nil
	}
	run(t, b, loaded(10), plan.Pass, joints.CodeBear)
}

// TestUnknown: both ends of a shelf on a fastener that nobody knows are one question; and
// where nothing says what a shelf carries, books are tried.
func TestUnknown(t *testing.T) {
	f := run(t, shelf(piece.ButtJoint, 0, "staple"), loaded(1), plan.Unknown, joints.CodeUnknown)
	if a, _ := f.Text.Arg("lacks"); len(a.List) != 1 || a.List[0].S != "datum.fastener" {
		t.Errorf("%+v", a)
	}
	f = run(t, shelf(piece.ButtJoint, 0, "screw 3 x 60"), checktest.Shop(), plan.Unknown, joints.CodeUnknown)
	if a, _ := f.Text.Arg("lacks"); len(a.List) != 1 || a.List[0].S != "datum.load" {
		t.Errorf("%+v", a)
	}
}

// TestLies: a board on feet with sides screwed to it lies, and hangs by nothing.
func TestLies(t *testing.T) {
	b := trial.New()
	for i, name := range []string{"left", "right"} {
		x := int64(i) * 6200
		b.Part("foot."+name, trial.GrainRight, x, x+200, 0, 3000, -400, 0)
		b.Part(name, trial.LeftSide, x, x+200, 0, 3000, 200, 6200)
	}
	b.Part("board", trial.GrainRight, 0, 6400, 0, 3000, 0, 200)
	for _, side := range []string{"left", "right"} {
		b.Joint("joint."+side, piece.ButtJoint, "board", side, 0, func(j *piece.Joint) {
			j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: "screw 3 x 30", Count: 2, Margin: b.Fig("margin", 300)}
		})
	}
	checktest.Materials(b)
	run(t, b, loaded(20), plan.Pass, joints.CodeBear)
}

// TestGoodChest: nothing of the chest hangs on its pins.
func TestGoodChest(t *testing.T) {
	run(t, checktest.Chest(), loaded(2), plan.Pass, joints.CodeBear)
}
