package nominal_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/nominal"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
)

// bottom is a sheet part so thick in a groove so wide; joined or not. The shop's
// ply 4 measures 3.8.
func bottom(thick, groove int64, joined bool) *trial.Builder {
	b := trial.New()
	b.Part("side", trial.GrainRight, 0, 3000, 0, 600, 0, 100)
	b.Part("sheet", piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}, 0, 3000, 80, 80+thick, 60, 400)
	checktest.Materials(b)
	b.Find("sheet").Material = "ply"
	c := b.Slot("side", "groove", piece.Groove, piece.FaceHigh, piece.AlongLength, 0, 3000, 80, 80+groove, 40, 0)
	if joined {
		c.Joint, c.With = "joint.groove", "sheet"
	}
	return b
}

func TestNominal(t *testing.T) {
	for _, c := range []struct {
		name          string
		thick, groove int64
		joined        bool
		change        func(*shop.Shop)
		status        plan.Status
		code          diag.Code
	}{
		{"measured and a clearance", 38, 40, true, nil, plan.Pass, nominal.CodeActual},
		{"measured and a clearance, of the document's own", 38, 40, false, nil, plan.Pass, nominal.CodeActual},
		{"drawn as it is called", 40, 42, true, nil, plan.Fail, nominal.CodePart},
		{"called 4, measures 3.7: just fits", 37, 40, true, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 37 * trial.Tenth }, plan.Pass, nominal.CodeActual},
		{"called 4, measures 3.6: rattles", 36, 40, true, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 36 * trial.Tenth }, plan.Fail, nominal.CodeCut},
		{"the same of the document's own", 36, 40, false, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 36 * trial.Tenth }, plan.Fail, nominal.CodeCut},
		{"thicker than it is called", 42, 40, true, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 42 * trial.Tenth }, plan.Fail, nominal.CodeCut},
		{"a width of its own", 36, 50, false, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 36 * trial.Tenth }, plan.Pass, nominal.CodeActual},
		{"not measured", 40, 42, true, func(s *shop.Shop) { s.Sheets[0].Stock.Measured = 0 }, plan.Unknown, nominal.CodeUnmeasured},
	} {
		s := checktest.Shop()
		if c.change != nil {
			c.change(s)
		}
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, bottom(c.thick, c.groove, c.joined), s, nominal.Analysis), c.status, c.code)
	}
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), nominal.Analysis), plan.Pass, nominal.CodeActual)
}
