package reading_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/reading"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// The drawers are 200 wide and 60 high; the fits leave 0.8 and 1.5.
func TestReading(t *testing.T) {
	type read map[string]int64
	for _, c := range []struct {
		name     string
		read     read
		status   plan.Status
		severity diag.Severity
		code     diag.Code
	}{
		{"nothing read", nil, plan.Pass, diag.Note, reading.CodeAgree},
		{"as planned", read{"width front": 2008, "width back": 2008, "height left": 615, "height right": 615}, plan.Pass, diag.Note, reading.CodeAgree},
		{"wider behind by all of the clearance", read{"width front": 2008, "width back": 2016}, plan.Pass, diag.Note, reading.CodeAgree},
		{"wider behind by a hair more", read{"width front": 2008, "width back": 2017}, plan.Fail, diag.Warning, reading.CodeUneven},
		{"wider in front by a hair more", read{"width front": 2017, "width back": 2008}, plan.Fail, diag.Warning, reading.CodeUneven},
		{"lower at the right", read{"height left": 631, "height right": 615}, plan.Fail, diag.Warning, reading.CodeUneven},
		{"the drawer a hair too wide for its clearance", read{"width front": 2007, "width back": 2008}, plan.Fail, diag.Warning, reading.CodeTooLarge},
		{"the drawer too wide to go in", read{"width front": 1999, "width back": 1999}, plan.Fail, diag.Error, reading.CodeTooLarge},
		{"read in front only", read{"width front": 2008}, plan.Unknown, diag.Warning, reading.CodeOneEnd},
		{"square enough", read{"diagonals": 8}, plan.Pass, diag.Note, reading.CodeAgree},
		{"out of square by a hair", read{"diagonals": 9}, plan.Fail, diag.Warning, reading.CodeSquare},
	} {
		b := checktest.Chest()
		for _, what := range []string{"width front", "width back", "height left", "height right", "diagonals"} {
			if v, ok := c.read[what]; ok {
				b.Ledger.Leaf("case.opening[1]."+what, unit.Length(v)*trial.Tenth, ledger.Measured, "record")
			}
		}
		t.Log(c.name)
		got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), reading.Analysis), c.status, c.code)
		if got[0].Severity != c.severity {
			t.Errorf("%s: %s", c.name, got[0].Severity)
		}
	}
}

// A fit of nothing has nothing to agree with.
func TestNoFit(t *testing.T) {
	b := checktest.Chest()
	b.Piece.Fits = []piece.Fit{}
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), reading.Analysis), plan.Pass, reading.CodeAgree)
}
