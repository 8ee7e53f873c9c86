package cases_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scantling/internal/analysis/check/cases"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// shelves is an open case of cherry, so high in tenths and 300 deep: three shelves of 600
// by 20 between two sides of 20, each held at both ends by three of a fastener, without glue.
func shelves(high int64, fastener string) *trial.Builder {
	b := trial.New()
	b.Part("left", trial.LeftSide, 0, 200, 0, 3000, 0, high)
	b.Part("right", trial.LeftSide, 6200, 6400, 0, 3000, 0, high)
	for i := range int64(3) {
		shelf := fmt.Sprintf("shelf[%d]", i+1)
		b.Part(shelf, trial.GrainRight, 200, 6200, 0, 3000, i*(high-200)/2, i*(high-200)/2+200)
		for _, side := range []string{"left", "right"} {
			b.Joint(fmt.Sprintf("joint.%s[%d]", side, i+1), piece.ButtJoint, shelf, side, 0, func(j *piece.Joint) {
				if j.Glue = ""; fastener != "" {
					j.Fasteners = &piece.Fasteners{Kind: fastener, Count: 3, Margin: b.Fig("margin", 300)}
				}
			})
		}
	}
	checktest.Materials(b)
	return b
}

// backed lets a back of ply in between the sides.
func backed(b *trial.Builder, change func(*piece.Joint)) *trial.Builder {
	b.Part("back", trial.BackPanel, 200, 6200, 2940, 3000, 0, 10000)
	for _, side := range []string{"left", "right"} {
		b.Joint("joint.back."+side, piece.ButtJoint, "back", side, 0, change)
	}
	checktest.Materials(b)
	b.Find("back").Material = "panel"
	return b
}

func run(t *testing.T, b *trial.Builder, status plan.Status, code diag.Code) plan.Finding {
	t.Helper()
	return checktest.Want(t, checktest.Run(t, b, checktest.Shop(), cases.Analysis), status, code)[0]
}

func quantity(t *testing.T, f plan.Finding, role string) plan.Estimate {
	t.Helper()
	for _, q := range f.Figures {
		if q.Role == role {
			return q.Estimate
		}
	}
	t.Fatalf("%s has no figure of what is %s", f.Code, role)
	return plan.Estimate{}
}

// TestScrews: by statics, 100 N at the top of 2600 is 260 N m on six corners, 43.3 each.
// Three screws 4 x 60 through a side of 20 into end grain of cherry (0.50 at 12 %) are
// drawn at 3 x 108.25 x 0.25 x 4 x 40 x 0.75 (Wood Handbook FPL-GTR-190, Equation 8-10),
// a fifth of that in use, at half of the shelf's 20: 19.5 N m.
func TestScrews(t *testing.T) {
	f := run(t, shelves(26000, "screw 4 x 60"), plan.Fail, cases.CodeRacks)
	each, bears := quantity(t, f, plan.RoleIs), quantity(t, f, plan.RoleLimit)
	if got := each.Value.Float(); math.Abs(got-100*2.6/6) > 0.01 {
		t.Errorf("%g N m on each, by hand %g", got, 100*2.6/6)
	}
	hand := 3 * 108.25 * 0.25 * 4 * 40 * 0.75 / 5 * 0.010
	if got := bears.Value.Float(); math.Abs(got-hand) > hand/20 {
		t.Errorf("%g N m borne, by hand %g", got, hand)
	}
	if f.Severity != diag.Warning || !strings.Contains(f.Source, "mechanics.push-of-use (practice)") || !strings.Contains(f.Source, "Wood Handbook") {
		t.Errorf("%s %s", f.Severity, f.Source)
	}
}

// TestRange: between what is borne at worst and what is borne in the mean it is a note;
// below, nothing.
func TestRange(t *testing.T) {
	f := run(t, shelves(26000, "screw 4 x 60"), plan.Fail, cases.CodeRacks)
	bears := quantity(t, f, plan.RoleLimit)
	tenths := func(moment float64) int64 { return int64(moment * 6 / 100 * 10000) } // of height, at which each corner bears it
	if bears.Low.Float() >= bears.Value.Float() {
		t.Fatalf("no range: %+v", bears)
	}
	if f = run(t, shelves(tenths(bears.Value.Float())-40, "screw 4 x 60"), plan.Fail, cases.CodeRacks); f.Severity != diag.Note {
		t.Errorf("between: %s", f.Severity)
	}
	run(t, shelves(tenths(bears.Low.Float())-40, "screw 4 x 60"), plan.Pass, cases.CodeSquare)
}

// TestBacks: a back glued in or fixed holds, a loose one does not.
func TestBacks(t *testing.T) {
	run(t, backed(shelves(10000, ""), func(j *piece.Joint) { j.Glue = "pva" }), plan.Pass, cases.CodeSquare)
	b := shelves(10000, "")
	pins := &piece.Fasteners{Kind: "panel pin 20", Count: 5, Margin: b.Fig("margin", 200)}
	run(t, backed(b, func(j *piece.Joint) { j.Glue, j.Fasteners = "", pins }), plan.Pass, cases.CodeSquare)
	f := run(t, backed(shelves(26000, "screw 4 x 60"), func(j *piece.Joint) { j.Glue = "" }), plan.Fail, cases.CodeRacks)
	if back, _ := f.Text.Arg("back"); back.S != "back.loose" {
		t.Errorf("%+v", back)
	}
}

// TestUnknown: of corners without a formula, and of a fastener that nobody knows, the
// answer is not known, and says what is missing.
func TestUnknown(t *testing.T) {
	for fastener, lacks := range map[string]string{"": "datum.joint-strength", "staple": "datum.fastener"} {
		f := run(t, shelves(10000, fastener), plan.Unknown, cases.CodeUnknown)
		if a, _ := f.Text.Arg("lacks"); len(a.List) != 1 || a.List[0].S != lacks {
			t.Errorf("%+v, want %s", a, lacks)
		}
	}
}

// TestNoCase: a drawer, a board and a good chest have nothing that racks.
func TestNoCase(t *testing.T) {
	run(t, checktest.Chest(), plan.Pass, cases.CodeSquare)
	run(t, trial.Drawer(50, 50, 30), plan.Pass, cases.CodeSquare)
}
