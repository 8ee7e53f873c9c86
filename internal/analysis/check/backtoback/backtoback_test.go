package backtoback_test

import (
	"testing"

	"scantling/internal/analysis/check/backtoback"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// board is 18 thick with housings of two depths from both faces, the second one
// from a place on.
func board(first, second, from int64) *trial.Builder {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 180)
	b.Slot("board", "up", piece.Housing, piece.FaceHigh, piece.AlongWidth, 0, 2000, 1000, 1140, first, 0)
	b.Slot("board", "down", piece.Housing, piece.FaceLow, piece.AlongWidth, 0, 2000, from, from+140, second, 0)
	return b
}

// In a board of 18 two fifths are 7.2: 7 to the half millimetre.
func TestBackToBack(t *testing.T) {
	for _, c := range []struct {
		name                string
		first, second, from int64
		status              plan.Status
		code                diag.Code
		severity            diag.Severity
	}{
		{"just enough", 55, 55, 1000, plan.Pass, backtoback.CodeThick, diag.Note},
		{"too little by a hair", 55, 56, 1000, plan.Fail, backtoback.CodeBetween, diag.Warning},
		{"overlap by a hair", 55, 56, 1139, plan.Fail, backtoback.CodeBetween, diag.Warning},
		{"beside each other", 55, 56, 1140, plan.Pass, backtoback.CodeThick, diag.Note},
		{"into each other", 90, 90, 1000, plan.Fail, backtoback.CodeBetween, diag.Error},
		{"no depth", 55, 0, 1000, plan.Unknown, backtoback.CodeDepth, diag.Warning},
	} {
		t.Log(c.name)
		got := checktest.Want(t, checktest.Run(t, board(c.first, c.second, c.from), checktest.Shop(), backtoback.Analysis), c.status, c.code)
		if got[0].Severity != c.severity {
			t.Errorf("%s: %s", c.name, got[0].Severity)
		}
	}
}

// A groove and a housing that cross, from two sides.
func TestCrossing(t *testing.T) {
	for second, code := range map[int64]diag.Code{55: backtoback.CodeThick, 56: backtoback.CodeBetween} {
		b := board(55, 10, 4000)
		b.Slot("board", "groove", piece.Groove, piece.FaceLow, piece.AlongLength, 0, 6000, 500, 540, second, 0)
		got := checktest.Run(t, b, checktest.Shop(), backtoback.Analysis)
		if len(got) != 1 || got[0].Code != code {
			t.Errorf("%d: %+v", second, got)
		}
	}
}

func TestWalls(t *testing.T) {
	for _, c := range []struct {
		kind  piece.CutKind
		depth int64
		code  diag.Code
	}{
		{piece.Rebate, 150, backtoback.CodeThick}, {piece.Rebate, 151, backtoback.CodeTongue},
		{piece.Groove, 160, backtoback.CodeThick}, {piece.Groove, 161, backtoback.CodeWall},
		{piece.Housing, 180, backtoback.CodeThick}, // a slot right through is no wall
	} {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 180)
		b.Slot("board", "cut", c.kind, piece.FaceHigh, piece.AlongLength, 0, 6000, 0, 100, c.depth, 0)
		got := checktest.Run(t, b, checktest.Shop(), backtoback.Analysis)
		if len(got) != 1 || got[0].Code != c.code {
			t.Errorf("%s %d: %+v", c.kind, c.depth, got)
		}
	}
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), backtoback.Analysis), plan.Pass, backtoback.CodeThick)
}
