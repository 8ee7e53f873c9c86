package tipping_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/tipping"
	"scantling/internal/diag"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// block is a standing block of cherry (0.5 x 1180 at 12 %, about 580 kg/m3): so wide, deep
// and high, in tenths of a millimetre. It tips at a pull at its top of m g (deep/2)/high.
func block(wide, deep, high int64) *trial.Builder {
	b := trial.New()
	b.Part("side", trial.LeftSide, 0, wide, 0, deep, 0, high)
	checktest.Materials(b)
	return b
}

// TestPulls, by statics: a block 300 deep and 700 high stands with its centre 150 behind
// its front, so it tips at 150/700 of its weight. At 200 wide it is 24 kg, 236 N, 51 N; at
// 150 wide 18 kg, 38 N: told. 550 deep or 650 high it is never asked; nor at 100 wide,
// where it weighs 12 kg, under 30 lb.
func TestPulls(t *testing.T) {
	rule := func(name string, x int64) *shop.Shop {
		s := checktest.Shop()
		s.Rules = append(s.Rules, shop.Rule{Name: name, Value: unit.OfInt(unit.DimUntyped, x), Why: "habit"})
		return s
	}
	height := checktest.Shop()
	checktest.Rule(height, tipping.RuleHeight, unit.MM(600))
	for _, c := range []struct {
		name    string
		b       *trial.Builder
		s       *shop.Shop
		purpose string
		told    bool
	}{
		{"150 wide", block(1500, 3000, 7000), checktest.Shop(), "", true},
		{"250 wide", block(2500, 3000, 7000), checktest.Shop(), "", false},
		{"250 wide, the house wants more", block(2500, 3000, 7000), rule(tipping.RulePull, 100), "", true},
		{"150 wide, the house wants less", block(1500, 3000, 7000), rule(tipping.RulePull, 20), "", false},
		{"under 30 lb", block(1000, 3000, 7000), checktest.Shop(), "", false},
		{"under 30 lb, the house is careful", block(1000, 3000, 7000), rule(tipping.RuleMass, 5), "", true},
		{"under 30 lb, for children", block(1000, 3000, 7000), checktest.Shop(), "children's shelf", true},
		{"650 high", block(1500, 3000, 6500), checktest.Shop(), "", false},
		{"650 high, the house is careful", block(1500, 3000, 6500), height, "", true},
	} {
		t.Log(c.name)
		c.b.Piece.Purpose = c.purpose
		status, code := plan.Pass, tipping.CodeStands
		if c.told {
			status, code = plan.Fail, tipping.CodeEasily
		}
		checktest.Want(t, checktest.Run(t, c.b, c.s, tipping.Analysis), status, diag.Code(code))
	}
}
