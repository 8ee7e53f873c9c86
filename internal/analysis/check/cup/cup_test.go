package cup_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/cup"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// tray is a board 200 wide and 14 thick with six channels 20 wide and 8 deep in a face.
func tray(face piece.Side) *trial.Builder {
	b := trial.New()
	b.Part("tray", trial.GrainRight, 0, 4000, 0, 2000, 0, 140)
	for i := range int64(6) {
		b.Slot("tray", "channel", piece.Channel, face, piece.AlongLength, 0, 4000, 100+310*i, 300+310*i, 80, 0)
	}
	checktest.Materials(b)
	return b
}

// read is the shop with a reading of its board's core.
func read(core float64) *shop.Shop {
	s := checktest.Shop()
	s.Boards[0].Moisture = timber.Moisture(core)
	return s
}

func run(t *testing.T, b *trial.Builder, s *shop.Shop, status plan.Status, code diag.Code) plan.Finding {
	t.Helper()
	return checktest.Want(t, checktest.Run(t, b, s, cup.Analysis), status, code)[0]
}

func arg(t *testing.T, f plan.Finding, name string) message.Arg {
	t.Helper()
	a, ok := f.Text.Arg(name)
	if !ok {
		t.Errorf("%s says nothing of %s", f.Code, name)
	}
	return a
}

// TestWays: the wetter core is hollow on the machined face and the drier one on the other,
// twice as far for twice the points, whichever face it is (what wood does, as makers know
// it; how far is tested against the series solution in mechanics). On edge
// there is little left, and after two weeks too.
func TestWays(t *testing.T) {
	var last unit.Length
	for _, c := range []struct {
		core float64
		face piece.Side
		way  string
	}{{11.5, piece.FaceHigh, "cup.machined"}, {14.5, piece.FaceHigh, "cup.machined"}, {5.5, piece.FaceHigh, "cup.back"}, {2.5, piece.FaceHigh, "cup.back"},
		{11.5, piece.FaceLow, "cup.machined"}} {
		f := run(t, tray(c.face), read(c.core), plan.Fail, cup.CodeCups)
		if got := arg(t, f, "way").S; got != c.way {
			t.Errorf("a core of %g %%: %s, want %s", c.core, got, c.way)
		}
		is := max(f.Is.Nm, -f.Is.Nm)
		if (f.Is.Nm > 0) != (c.core > 8.5) || is <= unit.Millimetre || f.Limit.Nm != unit.Millimetre || f.Rule != "cup while it waits" {
			t.Errorf("%+v", f)
		}
		if edge := arg(t, f, "edge").Nm; edge <= 0 || edge > is/5 {
			t.Errorf("%v flat, %v on edge", is, edge)
		}
		if later := arg(t, f, "later").Nm; later <= 0 || later > is/5 {
			t.Errorf("%v at worst, %v after two weeks", is, later)
		}
		if off := c.core - 8.5; (off == 6 || off == -6) && max(is-2*last, 2*last-is) > 10*unit.Micrometre {
			t.Errorf("%v for three points, %v for six", last, is)
		}
		last = is
		if hours := arg(t, f, "hours").N; hours < 12 || hours > 96 {
			t.Errorf("worst after %d hours: a channelled board cups within days (common practice)", hours)
		}
		for _, source := range []string{"check.cup (practice)", "movement.cup"} {
			if !strings.Contains(f.Source, source) {
				t.Errorf("%s does not name %s", f.Source, source)
			}
		}
	}
}

// TestStaysFlat: a core as dry as the room's, cuts alike in both faces, narrow boards and
// sheet goods are left in peace.
func TestStaysFlat(t *testing.T) {
	run(t, tray(piece.FaceHigh), read(8.5), plan.Pass, cup.CodeFlat)
	both := tray(piece.FaceHigh)
	for i := range int64(6) {
		both.Slot("tray", "below", piece.Channel, piece.FaceLow, piece.AlongLength, 0, 4000, 100+310*i, 300+310*i, 20, 0)
	}
	run(t, both, read(14.5), plan.Pass, cup.CodeFlat)
	narrow := trial.New()
	narrow.Part("tray", trial.GrainRight, 0, 4000, 0, 500, 0, 140)
	narrow.Slot("tray", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 4000, 100, 400, 40, 0)
	checktest.Materials(narrow)
	run(t, narrow, checktest.Shop(), plan.Pass, cup.CodeFlat)
	sheet := tray(piece.FaceHigh)
	sheet.Find("tray").Material = "panel"
	run(t, sheet, checktest.Shop(), plan.Pass, cup.CodeFlat)
}

// TestHouseRule: the house lets it wait with more, or less; the limit itself is still good.
func TestHouseRule(t *testing.T) {
	f := run(t, tray(piece.FaceHigh), read(11.5), plan.Fail, cup.CodeCups)
	s := read(11.5)
	checktest.Rule(s, "cup while it waits", arg(t, f, "high").Nm)
	run(t, tray(piece.FaceHigh), s, plan.Pass, cup.CodeFlat)
	checktest.Rule(s, "cup while it waits", arg(t, f, "high").Nm-10*unit.Micrometre)
	run(t, tray(piece.FaceHigh), s, plan.Fail, cup.CodeCups)
}

// TestRoom: a channelled lid has the room above it that its fit leaves, where that is
// less; a tray inside of what moves has not.
func TestRoom(t *testing.T) {
	lid := func(above int64, inside bool) *trial.Builder {
		b := trial.New()
		b.Part("lid.tray", trial.GrainRight, 0, 4000, 0, 2000, 0, 140)
		for i := range int64(6) {
			b.Slot("lid.tray", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 4000, 100+310*i, 300+310*i, 80, 0)
		}
		if inside {
			b.Part("lid.side", trial.LeftSide, -140, 0, 0, 2000, -100, 300)
		}
		b.Part("case.side", trial.LeftSide, -340, -200, 0, 2000, 0, 400)
		checktest.Materials(b)
		b.Group("lid", "opening")
		b.Space("opening", 0, 4000, 0, 2000, 0, 140+above)
		b.Piece.Fits = []piece.Fit{{Address: "fit.lid", Moves: "lid", Inside: "opening", Sides: b.Fig("sides", 8), Above: b.Fig("above", above), Behind: b.Fig("behind", 80)}}
		return b
	}
	s := read(9)
	f := run(t, lid(2, false), s, plan.Fail, cup.CodeBinds)
	if f.Limit.Nm != unit.Millimetre/5 || f.Rule != "" || !strings.Contains(f.Source, "fit.lid (stated)") {
		t.Errorf("%+v", f)
	}
	run(t, lid(2, true), s, plan.Pass, cup.CodeFlat)
	run(t, lid(9, false), s, plan.Pass, cup.CodeFlat)
}

// TestUnknown: two boards whose core nobody read are one question, which names the board
// in the rack that wants the reading. A rule of the house answers it; a wood that nobody
// knows is another question.
func TestUnknown(t *testing.T) {
	b := tray(piece.FaceHigh)
	b.Part("other", trial.GrainRight, 0, 4000, 3000, 4500, 0, 140)
	b.Slot("other", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 4000, 100, 1300, 80, 0)
	checktest.Materials(b)
	f := run(t, b, checktest.Shop(), plan.Unknown, cup.CodeUnknown)
	if len(f.Marks) != 2 || len(arg(t, f, "boards").List) != 1 || arg(t, f, "boards").List[0].S != "cherry 27" {
		t.Errorf("%+v", f)
	}
	s := checktest.Shop()
	s.Rules = append(s.Rules, shop.Rule{Name: "core moisture", Value: unit.OfInt(unit.DimUntyped, 8)})
	run(t, tray(piece.FaceHigh), s, plan.Pass, cup.CodeFlat)
	b = tray(piece.FaceHigh)
	for i := range b.Piece.Materials {
		b.Piece.Materials[i].Species = "nobody's wood"
	}
	run(t, b, checktest.Shop(), plan.Unknown, cup.CodeNoWood)
}
