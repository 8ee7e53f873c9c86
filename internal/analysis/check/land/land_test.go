package land_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/land"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

const um = unit.Micrometre

// row builds a tray with channels of a width and depth at a pitch.
func row(n int, pitch, mouth, depth, margin, thick unit.Length) *trial.Builder {
	b := trial.New()
	wide := 2*margin + unit.Length(n-1)*pitch + mouth
	p := b.Part("tray", trial.Tray, 0, int64(wide/trial.Tenth), 0, 3500, 0, int64(thick/trial.Tenth))
	p.Width.Nm = wide
	fig := func(l unit.Length) piece.Figure { return b.Ledger.Leaf("row", l, "document", "") }
	p.Width = fig(wide)
	for i := range n {
		near := margin + unit.Length(i)*pitch
		c := b.Slot("tray", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 3500, 0, 0, 0, 0)
		c.Address, c.Series, c.Nth = c.Part.Nth("channel", i+1), "tray.channel", i+1
		c.Slot.Near, c.Slot.Far, c.Slot.Depth, c.Slot.Corner = fig(near), fig(near+mouth), fig(depth), fig(mouth/2)
	}
	s := piece.Series{Address: "tray.channel", Part: "tray", Kind: piece.Channel, Across: piece.AlongWidth, Whole: p.Width}
	s.Terms = checktest.Terms(b, &s)
	b.Piece.Series = append(b.Piece.Series, s)
	return b
}

// A 3/8 in cutter sunk to its radius is 4.7625 deep and leaves 0.475 at a pitch
// of 10 (check value; common practice, no source).
func TestThreeEighthsAtTen(t *testing.T) {
	b := row(36, 10*unit.Millimetre, 9525*um, 4762500, 15*unit.Millimetre, 20*unit.Millimetre)
	got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), land.Analysis), plan.Fail, land.CodeLand)
	if f := got[0]; f.Is.Nm != 475*um || f.Limit.Nm != 1500*um || !strings.Contains(f.Source, "practice") {
		t.Errorf("is %v, limit %v, source %q", f.Is, f.Limit, f.Source)
	}
	if n, _ := got[0].Text.Arg("count"); n.N != 35 {
		t.Errorf("%d lands are thin, want 35", n.N)
	}
}

func TestByAHair(t *testing.T) {
	const hair = unit.Micrometre
	mm := unit.MM
	for _, c := range []struct {
		name                                string
		pitch, mouth, depth, margin, thick  unit.Length
		land, marginThin, floor, everything bool
	}{
		{"passes", mm(8), mm(6) + mm(1)/2, mm(3), 1500 * um, mm(6), false, false, false, true},
		{"land", mm(8), 6500*um + hair, mm(3), 2500 * um, mm(8), true, false, false, false},
		{"margin", mm(8), mm(6), mm(3), 1500*um - hair, mm(8), false, true, false, false},
		{"floor", mm(8), mm(6), mm(3), mm(2), 5900 * um, false, false, true, false},
		{"deep cuts ask for more land", mm(9), mm(7), 8200 * um, mm(3), mm(17), true, false, false, false},
	} {
		b := row(5, c.pitch, c.mouth, c.depth, c.margin, c.thick)
		got := checktest.Run(t, b, checktest.Shop(), land.Analysis)
		switch {
		case c.everything:
			checktest.Want(t, got, plan.Pass, land.CodeEnough)
		case c.land:
			checktest.Want(t, got, plan.Fail, land.CodeLand)
		case c.marginThin:
			checktest.Want(t, got, plan.Fail, land.CodeMargin)
		case c.floor:
			checktest.Want(t, got, plan.Fail, land.CodeFloor)
		}
	}
}

// The house's own rule goes before the trade's.
func TestHouseRule(t *testing.T) {
	s := checktest.Shop()
	checktest.Rule(s, "least land", unit.MM(3))
	b := row(5, unit.MM(8), unit.MM(6), unit.MM(3), unit.MM(4), unit.MM(8))
	got := checktest.Want(t, checktest.Run(t, b, s, land.Analysis), plan.Fail, land.CodeLand)
	if !strings.HasPrefix(got[0].Source, "house.least land") || got[0].Limit.Nm != unit.MM(3) {
		t.Errorf("limit %v by %q", got[0].Limit, got[0].Source)
	}
	checktest.Rule(s, "least land", unit.MM(2))
	checktest.Want(t, checktest.Run(t, b, s, land.Analysis), plan.Pass, land.CodeEnough)
}

func TestUnknown(t *testing.T) {
	b := row(5, unit.MM(8), unit.MM(6), unit.MM(3), unit.MM(4), unit.MM(8))
	b.Piece.Series[0].Terms = nil
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), land.Analysis), plan.Unknown, land.CodeRow)
}

// Two grooves side by side, and one at an edge.
func TestAlone(t *testing.T) {
	for _, c := range []struct {
		second, deep int64
		want         []string
	}{{215, 40, nil}, {214, 40, []string{"land-too-thin"}}, {1945, 40, nil}, {1946, 40, []string{"margin-too-thin"}}} {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 120)
		b.Slot("board", "a", piece.Groove, piece.FaceHigh, piece.AlongLength, 0, 6000, 160, 200, c.deep, 0)
		b.Slot("board", "b", piece.Groove, piece.FaceHigh, piece.AlongLength, 1000, 6000, c.second, c.second+40, c.deep, 0)
		got := checktest.Run(t, b, checktest.Shop(), land.Analysis)
		if c.want == nil {
			checktest.Want(t, got, plan.Pass, land.CodeEnough)
		} else if len(got) != 1 || string(got[0].Code) != c.want[0] {
			t.Errorf("%d: %+v", c.second, got)
		}
	}
}

// A floor too thin by a stated depth is mended by writing a shallower one.
func TestShallower(t *testing.T) {
	b := trial.New()
	b.Piece.Units, b.Piece.File = "mm", "a.piece.hcl"
	b.Part("tray", trial.Tray, 0, 1000, 0, 3500, 0, 120)
	c := b.Slot("tray", "trough", piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, 1000, 100, 300, 70, 0)
	checktest.Written(b, &c.Slot.Depth, 100, 101)
	got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), land.Analysis), plan.Fail, land.CodeFloor)
	if r := got[0].Remedy; len(r) != 1 || len(r[0].Edits) != 1 || r[0].Edits[0].New != "5" || r[0].Edits[0].Start != 100 {
		t.Errorf("remedy %+v", r)
	}
	b.Piece.Cuts[0].Slot.Depth = b.Fig("depth", 50)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), land.Analysis), plan.Pass, land.CodeEnough)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), land.Analysis), plan.Pass, land.CodeEnough)
}
