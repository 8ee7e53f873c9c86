package racking_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/racking"
	"scantling/internal/analysis/estimate"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

func TestRacking(t *testing.T) {
	for _, c := range []struct {
		name       string
		wide, long int64
		hardware   string
		status     plan.Status
		code       diag.Code
	}{
		{"square", 4000, 4000, "", plan.Pass, racking.CodeRuns},
		{"wider by a hair", 4001, 4000, "", plan.Fail, racking.CodeWide},
		{"wider, on runners", 4001, 4000, "ball runner 350", plan.Pass, racking.CodeRuns},
		{"sticks when it is shut", 4001, 1000, "", plan.Fail, racking.CodeSticks},
		{"a quarter of its width, to a hair", 4001, 1001, "", plan.Fail, racking.CodeWide},
		{"wider, with a knob", 4001, 4000, "knob 25", plan.Fail, racking.CodeWide},
		{"empty", 0, 0, "", plan.Unknown, racking.CodeNoParts},
	} {
		b := trial.New()
		b.Group("drawer", "opening")
		if c.wide > 0 {
			b.Part("drawer.front", trial.Front, 0, c.wide, 0, 140, 0, 600)
			b.Part("drawer.side", trial.SideLow, 0, 100, 140, c.long, 0, 600)
		}
		if c.hardware != "" {
			b.Piece.Hardware = []piece.Hardware{{Address: "drawer.hardware.it", Kind: c.hardware, Count: 1, On: "drawer.side"}}
		}
		t.Log(c.name)
		got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), racking.Analysis), c.status, c.code)
		if c.status == plan.Fail && (got[0].Is.Nm != unit.Length(c.long)*trial.Tenth || got[0].Limit.Nm != 4001*trial.Tenth) {
			t.Errorf("%s: is %v, limit %v", c.name, got[0].Is, got[0].Limit)
		}
	}
}

// Strips of 200 high beside a drawer of 600 by 400: 1 from side to side in all is its fit.
func TestStrips(t *testing.T) {
	for _, c := range []struct {
		name                   string
		long, gap, high, start int64
		status                 plan.Status
		code                   diag.Code
	}{
		{"close", 4000, 5, 200, 0, plan.Pass, racking.CodeRuns},
		{"a hair too wide", 4000, 6, 200, 0, plan.Fail, racking.CodeWide},
		{"half of the drawer's height", 4000, 5, 300, 0, plan.Pass, racking.CodeRuns},
		{"as high as a divider", 4000, 5, 301, 0, plan.Fail, racking.CodeWide},
		{"half of its length", 4000, 5, 200, 2000, plan.Pass, racking.CodeRuns},
		{"less than half", 4000, 5, 200, 2001, plan.Fail, racking.CodeWide},
		{"sticks when it is shut", 1000, 5, 200, 0, plan.Fail, racking.CodeSticks},
	} {
		b := trial.New()
		b.Group("drawer", "opening")
		b.Part("drawer.front", trial.Front, 0, 4001, 0, 140, 0, 600)
		b.Part("drawer.side", trial.SideLow, 0, 4001, 140, c.long, 0, 600)
		b.Part("case.guide[1]", trial.SideLow, -100, -c.gap, c.start, c.long, 100, 100+c.high)
		b.Part("case.guide[2]", trial.SideLow, 4001+c.gap, 4101, c.start, c.long, 100, 100+c.high)
		b.Piece.Fits = []piece.Fit{{Address: "fit.drawer", Moves: "drawer", Inside: "opening", Sides: b.Fig("sides", 10)}}
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, b, checktest.Shop(), racking.Analysis), c.status, c.code)
	}
}

// The house may put up with another length: 0.7 of the width of 400 is 280.
func TestHouseRule(t *testing.T) {
	for _, c := range []struct {
		long   int64
		status plan.Status
		code   diag.Code
	}{{2800, plan.Pass, racking.CodeRuns}, {2799, plan.Fail, racking.CodeWide}} {
		b := trial.New()
		b.Group("drawer", "opening")
		b.Part("drawer.front", trial.Front, 0, 4000, 0, 140, 0, 600)
		b.Part("drawer.side", trial.SideLow, 0, 100, 140, c.long, 0, 600)
		s := checktest.Shop()
		s.Rules = append(s.Rules, shop.Rule{Name: "drawer length to width", Value: estimate.Value(unit.DimRatio, 0.7), Why: "waxed runners"})
		got := checktest.Want(t, checktest.Run(t, b, s, racking.Analysis), c.status, c.code)
		if c.status == plan.Fail && (got[0].Limit.Nm != unit.MM(280) || !strings.HasPrefix(got[0].Source, "house.drawer length to width: waxed runners")) {
			t.Errorf("%v %s", got[0].Limit, got[0].Source)
		}
	}
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), racking.Analysis), plan.Pass, racking.CodeRuns)
}
