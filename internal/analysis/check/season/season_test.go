package season_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/season"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// From 8.5 to 11 % a front of 60 of flat-sawn cherry grows 60 × 0.00248 × 2.5 =
// 0.372 (Wood Handbook, Table 13-5 and Equation 13-1).
func TestFit(t *testing.T) {
	const grows = 372 * unit.Micrometre
	for _, c := range []struct {
		above  unit.Length
		status plan.Status
		code   diag.Code
	}{
		{grows, plan.Pass, season.CodeMoves},
		{grows - unit.Micrometre, plan.Fail, season.CodeBinds},
		{grows + 1500*unit.Micrometre, plan.Pass, season.CodeMoves},
		{grows + 1501*unit.Micrometre, plan.Fail, season.CodeLoose},
	} {
		b := checktest.Chest()
		b.Piece.File = "chest.piece.hcl"
		above := b.Ledger.Leaf("above", c.above, "document", "")
		checktest.Written(b, &above, 10, 12)
		b.Piece.Fits[0].Above = above
		got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), season.Analysis), c.status, c.code)
		if c.code == season.CodeBinds {
			if e := got[0].Remedy[0].Edits; len(e) != 1 || e[0].New != "0.38" {
				t.Errorf("remedy %+v", got[0].Remedy)
			}
		}
	}
	b := checktest.Chest()
	b.Piece.Fits[0].Sides = b.Fig("sides", -1)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), season.Analysis), plan.Fail, season.CodeBinds)
}

func TestUnknownWood(t *testing.T) {
	b := checktest.Chest()
	b.Piece.Materials[0].Species = "unobtainium"
	got := checktest.Run(t, b, checktest.Shop(), season.Analysis)
	checktest.Want(t, got, plan.Unknown, season.CodeFitUnknown, season.CodeFitUnknown, season.CodeTrayUnknown, season.CodeTrayUnknown)
	s := checktest.Shop()
	s.Climate.Season = timber.Season{}
	if got := checktest.Run(t, checktest.Chest(), s, season.Analysis); len(got) == 0 || got[0].Status == plan.Pass {
		t.Errorf("without air: %+v", got)
	}
}

// A board glued across another one: up to 100 is put up with.
// Nails in the place of the glue give.
func TestNailed(t *testing.T) {
	for wide, code := range map[int64]diag.Code{1000: season.CodeMoves, 1001: season.CodeGives} {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, 6000, 0, wide, 0, 180)
		b.Part("batten", piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}, 1000, 1400, 0, wide, 180, 360)
		b.Joint("nails", piece.ButtJoint, "batten", "board", 0, func(j *piece.Joint) {
			j.Glue, j.Fasteners = "", &piece.Fasteners{Kind: "panel pin 25", Count: 3, Margin: b.Fig("margin", 200)}
		})
		checktest.Materials(b)
		got := checktest.Run(t, b, checktest.Shop(), season.Analysis)
		if len(got) != 1 || got[0].Code != code {
			t.Errorf("%d: %+v", wide, got)
		}
	}
}

func TestCrossGrain(t *testing.T) {
	for _, c := range []struct {
		wide   int64
		change func(*piece.Joint)
		code   diag.Code
	}{
		{1000, nil, season.CodeMoves},
		{1001, nil, season.CodeCrossGrain},
		{1001, func(j *piece.Joint) { j.Glue = "" }, season.CodeMoves},
		{1001, func(j *piece.Joint) { j.Slides = true }, season.CodeMoves},
	} {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, 6000, 0, c.wide, 0, 180)
		b.Part("batten", piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}, 1000, 1400, 0, c.wide, 180, 360)
		b.Joint("glue", piece.ButtJoint, "batten", "board", 0, c.change)
		checktest.Materials(b)
		got := checktest.Run(t, b, checktest.Shop(), season.Analysis)
		if len(got) != 1 || got[0].Code != c.code {
			t.Errorf("%d: %+v", c.wide, got)
		}
	}
	// Along the grain of both nothing moves against the other.
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 6000, 0, 3000, 0, 180)
	b.Part("other", trial.GrainRight, 0, 6000, 0, 3000, 180, 360)
	b.Joint("glue", piece.ButtJoint, "other", "board", 0, nil)
	checktest.Materials(b)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), season.Analysis), plan.Pass, season.CodeMoves)
	// Solid wood glued to ply bows.
	b.Find("other").Material = "panel"
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), season.Analysis), plan.Fail, season.CodeCrossGrain)
}

// A tray of 176 grows 176 × 0.00248 × 2.5 = 1.0912 between walls 180 apart.
func TestTray(t *testing.T) {
	for wide, code := range map[int64]diag.Code{1788: season.CodeMoves, 1789: season.CodeTray} {
		b := checktest.Chest()
		p := b.Find("drawer[1].tray")
		p.Extent[piece.Right].Low = b.Fig("low", 144+105)
		p.Extent[piece.Right].High = b.Ledger.Sum("high", p.Extent[piece.Right].Low, b.Fig("wide", wide))
		p.Width = b.Ledger.Less("width", p.Extent[piece.Right].High, p.Extent[piece.Right].Low)
		got := checktest.Run(t, b, checktest.Shop(), season.Analysis)
		if len(got) != 1 || got[0].Code != code {
			t.Errorf("%d: %+v", wide, got)
		}
	}
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), season.Analysis), plan.Pass, season.CodeMoves)
}

// A top of cherry 400 screwed up through a rail of 300 across its grain, 20 from its
// ends: what moves is the whole of the 400.
func TestScrews(t *testing.T) {
	for _, c := range []struct {
		slides bool
		slot   int64
		code   diag.Code
	}{{false, 0, season.CodeScrewed}, {true, 0, season.CodeMoves}, {true, 60, season.CodeMoves}, {true, 5, season.CodeSlot}} {
		b := trial.New()
		b.Part("top", trial.GrainRight, 0, 4500, 0, 4000, 200, 400)
		b.Part("rail", piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}, 1000, 1400, 500, 3500, 0, 200)
		b.Joint("up", piece.ButtJoint, "rail", "top", 0, func(j *piece.Joint) {
			j.Glue, j.Slides = "", c.slides
			j.Fasteners = &piece.Fasteners{Kind: "screw 4 x 35", Count: 3, Margin: b.Fig("margin", 200)}
			if c.slot > 0 {
				j.Fasteners.Slot = b.Fig("slot", c.slot)
			}
		})
		checktest.Materials(b)
		got := checktest.Run(t, b, checktest.Shop(), season.Analysis)
		if len(got) != 1 || got[0].Code != c.code {
			t.Errorf("slots of %d: %+v", c.slot, got)
		}
	}
}
