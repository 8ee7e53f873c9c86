package blind_test

import (
	"testing"

	"scantling/internal/analysis/check/blind"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// tray is a board so long with a channel 3 deep that is closed at both ends.
func tray(long int64) *trial.Builder {
	b := trial.New()
	b.Piece.Name, b.Piece.Units = "Tray", "mm"
	b.Piece.Materials = []piece.Material{{Name: "cherry", Asks: "black cherry board", Species: checktest.Cherry, Stock: "cherry 27", Cut: "flat", Thickness: b.Fig("dressed", 200)}}
	b.Part("tray", trial.GrainRight, 0, long, 0, 1000, 0, 200).Material = "cherry"
	b.Slot("tray", "bed", piece.Channel, piece.FaceHigh, piece.AlongLength, 200, long-200, 400, 464, 30, 32)
	return b
}

// TestBlind: a router table alone, with and without the rule, and routers that plunge,
// do not, or of which nobody has said.
func TestBlind(t *testing.T) {
	raise := func(s *shop.Shop) {
		s.Rules = append(s.Rules, shop.Rule{Name: "raise into held work", Value: unit.OfTruth(true), Why: "a lift and two stops"})
	}
	router := func(p tool.Plunges) func(*shop.Shop) {
		return func(s *shop.Shop) {
			s.Machines = append(s.Machines, shop.Machine{ID: "router", Tool: tool.Machine{Name: "router", Kind: tool.Router, Plunges: p}})
		}
	}
	for _, c := range []struct {
		name   string
		long   int64
		shop   []func(*shop.Shop)
		status plan.Status
		code   diag.Code
	}{
		{"a table alone", 4000, nil, plan.Fail, blind.CodeNoWay},
		{"held work may be raised into", 4000, []func(*shop.Shop){raise}, plan.Pass, blind.CodeSafe},
		{"just long enough to be held", 3050, []func(*shop.Shop){raise}, plan.Pass, blind.CodeSafe},
		{"a tenth too short", 3049, []func(*shop.Shop){raise}, plan.Fail, blind.CodeShort},
		{"a router of which nothing is said", 4000, []func(*shop.Shop){router(tool.PlungesUnsaid)}, plan.Unknown, blind.CodeUnknown},
	} {
		t.Log(c.name)
		s := checktest.Shop()
		for _, change := range c.shop {
			change(s)
		}
		checktest.Want(t, checktest.Run(t, tray(c.long), s, blind.Analysis), c.status, c.code)
	}
}
