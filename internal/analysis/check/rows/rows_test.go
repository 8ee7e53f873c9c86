package rows_test

import (
	"fmt"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/rows"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// divided is three dividers 6 thick and 80 apart from the left wall on, in a room of a
// width in tenths. 4 x 80 + 3 x 6 = 338 closes.
func divided(room int64) *trial.Builder {
	b := trial.New()
	b.Part("wall left", trial.LeftSide, -140, 0, 0, 2000, 0, 500)
	b.Part("wall right", trial.LeftSide, room, room+140, 0, 2000, 0, 500)
	for i := range int64(3) {
		b.Part(fmt.Sprintf("box.divider[%d]", i+1), trial.LeftSide, 800+860*i, 860+860*i, 0, 2000, 0, 500)
	}
	checktest.Materials(b)
	return b
}

func TestRows(t *testing.T) {
	for _, c := range []struct {
		room   int64
		status plan.Status
		code   diag.Code
	}{
		{3380, plan.Pass, rows.CodeCloses}, {3381, plan.Pass, rows.CodeCloses}, {3379, plan.Pass, rows.CodeCloses},
		{3382, plan.Fail, rows.CodeOpen}, {3378, plan.Fail, rows.CodeOpen}, {3300, plan.Fail, rows.CodeOpen},
		{3299, plan.Pass, rows.CodeCloses}, // another space is meant
	} {
		f := checktest.Want(t, checktest.Run(t, divided(c.room), checktest.Shop(), rows.Analysis), c.status, c.code)[0]
		if c.status == plan.Fail && (f.Is.Nm != unit.MM(338) || f.Limit.Nm != unit.Length(c.room)*trial.Tenth || len(f.Marks) == 0) {
			t.Errorf("%d: %+v", c.room, f)
		}
	}
	s := checktest.Shop()
	checktest.Rule(s, "row closes", unit.MM(1))
	checktest.Want(t, checktest.Run(t, divided(3382), s, rows.Analysis), plan.Pass, rows.CodeCloses)
}

// TestMeasured: the walls are drawn where they were planned; what was measured between
// them counts.
func TestMeasured(t *testing.T) {
	b := divided(3380)
	b.Space("room", 0, 3372, 0, 2000, 0, 500)
	s := &b.Piece.Spaces[0]
	s.Clear[piece.Right] = b.Ledger.Leaf("measured", s.Clear[piece.Right].Nm, ledger.Measured, "")
	f := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), rows.Analysis), plan.Fail, rows.CodeOpen)[0]
	if f.Limit.Nm != 337_200_000 {
		t.Errorf("%v", f.Limit.Nm)
	}
}
