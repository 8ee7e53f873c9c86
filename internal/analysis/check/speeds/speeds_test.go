package speeds_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/speeds"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// board has a round-bottomed channel so deep along it, of the cutter of 12.8.
func board(depth int64) *trial.Builder {
	b := trial.New()
	b.Piece.Name, b.Piece.Units = "Board", "mm"
	b.Piece.Materials = []piece.Material{{Name: "cherry", Asks: "black cherry board", Species: checktest.Cherry, Stock: "cherry 27", Cut: "flat", Thickness: b.Fig("dressed", 200)}}
	b.Part("board", trial.GrainRight, 0, 4000, 0, 1000, 0, 200).Material = "cherry"
	b.Slot("board", "bed", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 4000, 400, 528, depth, 64)
	return b
}

// TestSpeeds: what a cutter is marked with against what the table turns at, and passes
// against 6.35 by rule.
func TestSpeeds(t *testing.T) {
	for _, c := range []struct {
		name   string
		table  tool.Speed // the slowest that it turns; 0 if nobody has said
		marked tool.Speed // on the cutter; 0 for none
		pass   int64      // the house's, in tenths; 0 for none
		status plan.Status
		code   diag.Code
	}{
		{"as slow as the cutter wants", 18000, 18000, 0, plan.Pass, speeds.CodeRight},
		{"one turn too fast", 18000, 17999, 0, plan.Fail, speeds.CodeFast},
		{"nobody has said how slow it goes", 0, 18000, 0, plan.Unknown, speeds.CodeSpeedUnknown},
		{"as fast as any router of one speed", 0, 22000, 0, plan.Pass, speeds.CodeRight},
		{"passes of the house", 10000, 24000, 63, plan.Pass, speeds.CodeRight},
		{"passes of the house, too deep", 10000, 24000, 64, plan.Fail, speeds.CodeDeep},
	} {
		t.Log(c.name)
		s := checktest.Shop()
		for i := range s.Machines {
			if m := &s.Machines[i].Tool; m.Kind == tool.RouterTable {
				m.LeastSpeed = c.table
			}
		}
		for i := range s.Cutters {
			s.Cutters[i].Tool.Greatest = c.marked
		}
		if c.pass > 0 {
			checktest.Rule(s, "depth per pass", unit.Length(c.pass)*trial.Tenth)
		}
		checktest.Want(t, checktest.Run(t, board(64), s, speeds.Analysis), c.status, c.code)
	}
}

// TestPassOfNothing: a rule of the house that says nothing is asked about.
func TestPassOfNothing(t *testing.T) {
	s := checktest.Shop()
	s.Rules = append(s.Rules, shop.Rule{Name: "depth per pass", Value: unit.OfLength(0)})
	checktest.Want(t, checktest.Run(t, board(30), s, speeds.Analysis), plan.Unknown, speeds.CodePassUnknown)
}
