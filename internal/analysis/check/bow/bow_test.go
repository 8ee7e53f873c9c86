package bow_test

import (
	"math"
	"strings"
	"testing"

	"scantling/internal/analysis/check/bow"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// faced is a sheet 6 thick with wood of a thickness glued on top, so wide, in tenths.
func faced(wide, thick int64) *trial.Builder {
	b := trial.New()
	b.Part("lid.face", trial.GrainRight, 0, 6000, 0, wide, 60, 60+thick)
	b.Part("lid.sheet", trial.GrainRight, 0, 6000, 0, wide, 0, 60)
	b.Joint("glue", piece.ButtJoint, "lid.face", "lid.sheet", 0, nil)
	b.Piece.Joints[0].Glue = "pva"
	material(b)
	return b
}

func material(b *trial.Builder) {
	checktest.Materials(b)
	b.Find("lid.sheet").Material = "panel"
}

func run(t *testing.T, b *trial.Builder, s *shop.Shop, status plan.Status, code diag.Code) plan.Finding {
	t.Helper()
	return checktest.Want(t, checktest.Run(t, b, s, bow.Analysis), status, code)[0]
}

// TestSeen: 6 mm of flat-sawn cherry, 300 wide, on 6 mm of birch ply bows as Timoshenko's
// formula says, done by hand: equal thicknesses, so that the curvature is
// 24 e / (h (12 + (1+n)(1+1/n))). 1/32 in to the foot of 300 is 300/384.
func TestSeen(t *testing.T) {
	s := checktest.Shop()
	f := run(t, faced(3000, 60), s, plan.Fail, bow.CodeBows)
	season := s.Climate.Season
	dry, wet := float64(season.Now-season.Dry), float64(season.Wet-season.Now)
	n := 10.3 * 1.1 * 0.086 / 4.763
	by := 24 * 0.00248 * max(dry, wet) / (12 * (12 + (1+n)*(1+1/n))) * 300 * 300 / 8
	if got := math.Abs(f.Is.Nm.Millimetres()); math.Abs(got-by) > by/50 {
		t.Errorf("bows %g, by hand %g", got, by)
	}
	if f.Limit.Nm != 300*unit.Millimetre/384 || f.Rule != "bow to the foot" {
		t.Errorf("%+v", f)
	}
	for _, source := range []string{"check.seen-bow (practice)", "Timoshenko"} {
		if !strings.Contains(f.Source, source) {
			t.Errorf("%s does not name %s", f.Source, source)
		}
	}
}

// TestStaysFlat: narrow wood, wood that lies loose, and wood on both faces are
// left in peace; wood that is held against by too little is not.
func TestStaysFlat(t *testing.T) {
	run(t, faced(300, 60), checktest.Shop(), plan.Pass, bow.CodeFlat)
	loose := faced(3000, 60)
	loose.Piece.Joints[0].Glue = ""
	run(t, loose, checktest.Shop(), plan.Pass, bow.CodeFlat)
	for _, c := range []struct {
		thick  int64
		status plan.Status
		code   diag.Code
	}{{60, plan.Pass, bow.CodeFlat}, {30, plan.Pass, bow.CodeFlat}, {29, plan.Fail, bow.CodeBows}} {
		b := faced(3000, 60)
		b.Part("lid.back", trial.GrainRight, 0, 6000, 0, 3000, -c.thick, 0)
		b.Joint("glue below", piece.ButtJoint, "lid.back", "lid.sheet", 0, nil)
		b.Piece.Joints[1].Glue = "pva"
		material(b)
		run(t, b, checktest.Shop(), c.status, c.code)
	}
}

// TestHouseRule: the house may put up with more.
func TestHouseRule(t *testing.T) {
	s := checktest.Shop()
	checktest.Rule(s, "bow to the foot", 20*unit.Millimetre)
	run(t, faced(3000, 60), s, plan.Pass, bow.CodeFlat)
}

// TestRoom: a faced lid in an opening that leaves less than an eye sees takes up the
// room; with the house's rule out of the way it is the fit alone that counts.
func TestRoom(t *testing.T) {
	for _, c := range []struct {
		above  int64
		status plan.Status
		code   diag.Code
	}{{2, plan.Fail, bow.CodeBinds}, {200, plan.Pass, bow.CodeFlat}} {
		b := faced(3000, 60)
		b.Part("case.side", trial.LeftSide, -140, 0, 0, 3000, 0, 400)
		material(b)
		b.Group("lid", "opening")
		b.Space("opening", 0, 6000, 0, 3000, 0, 120+c.above)
		b.Piece.Fits = []piece.Fit{{Address: "fit.lid", Moves: "lid", Inside: "opening", Sides: b.Fig("sides", 8), Above: b.Fig("above", c.above), Behind: b.Fig("behind", 80)}}
		s := checktest.Shop()
		checktest.Rule(s, "bow to the foot", 50*unit.Millimetre)
		f := run(t, b, s, c.status, c.code)
		if c.status == plan.Fail && (f.Limit.Nm > unit.Length(c.above)*trial.Tenth || f.Rule != "" || !strings.Contains(f.Source, "fit.lid (stated)")) {
			t.Errorf("%+v", f)
		}
	}
}

// TestUnknown: two pairs of sheets that nobody knows are one question.
func TestUnknown(t *testing.T) {
	b := faced(3000, 60)
	b.Part("door.face", trial.GrainRight, 0, 6000, 4000, 6000, 60, 120)
	b.Part("door.sheet", trial.GrainRight, 0, 6000, 4000, 6000, 0, 60)
	b.Joint("more", piece.ButtJoint, "door.face", "door.sheet", 0, nil)
	b.Piece.Joints[1].Glue = "pva"
	material(b)
	b.Find("door.sheet").Material = "panel"
	for i := range b.Piece.Materials {
		if b.Piece.Materials[i].Sheet {
			b.Piece.Materials[i].Species = "cardboard"
		}
	}
	got := checktest.Run(t, b, checktest.Shop(), bow.Analysis)
	checktest.Want(t, got, plan.Unknown, bow.CodeUnknown)
	if len(got) != 1 || len(got[0].Marks) < 2 {
		t.Errorf("%+v", got)
	}
}
