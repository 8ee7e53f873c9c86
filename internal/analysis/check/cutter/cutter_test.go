package cutter_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/cutter"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// board has one slot: open ends or not, near to far, depth and corner in tenths.
func board(kind piece.CutKind, through bool, at ...int64) *trial.Builder {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 200)
	end := int64(6000)
	if !through {
		end = 5000
	}
	b.Slot("board", "cut", kind, piece.FaceHigh, piece.AlongLength, append([]int64{0, end}, at...)...)
	return b
}

func TestCutters(t *testing.T) {
	for _, c := range []struct {
		name   string
		b      *trial.Builder
		change func(*piece.Cut, *shop.Shop)
		status plan.Status
		code   diag.Code
	}{
		{"round-nose of the radius", board(piece.Channel, true, 100, 164, 32, 32), nil, plan.Pass, cutter.CodeRight},
		{"no such radius", board(piece.Channel, true, 100, 164, 31, 31), nil, plan.Fail, cutter.CodeNoCutter},
		{"just reaches", board(piece.Channel, true, 100, 164, 80, 32), nil, plan.Pass, cutter.CodeRight},
		{"too deep by a hair", board(piece.Channel, true, 100, 164, 81, 32), nil, plan.Fail, cutter.CodeReach},
		{"reach not stated", board(piece.Channel, true, 100, 164, 40, 32), func(_ *piece.Cut, s *shop.Shop) { s.Cutters[3].Tool.CuttingLength = 0 }, plan.Unknown, cutter.CodeReachUnknown},
		{"stopped groove of a cutter's width", board(piece.Groove, false, 100, 132, 40, 0), nil, plan.Pass, cutter.CodeRight},
		{"stopped groove narrower", board(piece.Groove, false, 100, 131, 40, 0), nil, plan.Fail, cutter.CodeNoCutter},
		{"through groove for the saw", board(piece.Groove, true, 100, 131, 40, 0), nil, plan.Pass, cutter.CodeRight},
		{"through groove narrower than the saw", board(piece.Groove, true, 100, 129, 40, 0), nil, plan.Fail, cutter.CodeNoCutter},
		{"narrow and deep", board(piece.Groove, false, 100, 132, 101, 0), nil, plan.Fail, cutter.CodeReach},
		{"a cutter of no name", board(piece.Channel, true, 100, 164, 32, 32), func(c *piece.Cut, _ *shop.Shop) { c.Cutter = "round-nose 7" }, plan.Fail, cutter.CodeNamed},
		{"no cutters", board(piece.Channel, true, 100, 164, 32, 32), func(_ *piece.Cut, s *shop.Shop) { s.Cutters = nil }, plan.Unknown, cutter.CodeNoTools},
	} {
		s := checktest.Shop()
		if c.change != nil {
			c.change(&c.b.Piece.Cuts[0], s)
		}
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, c.b, s, cutter.Analysis), c.status, c.code)
	}
}

func TestDrill(t *testing.T) {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 200)
	b.Piece.Cuts = append(b.Piece.Cuts, piece.Cut{Address: "board.hole", Part: "board", Kind: piece.Hole,
		Bore: &piece.Bore{Open: piece.FaceHigh, At: [2]piece.Figure{b.Fig("x", 500), b.Fig("y", 500)}, Diameter: b.Fig("d", 50), Depth: b.Fig("deep", 100)}})
	s := checktest.Shop()
	checktest.Want(t, checktest.Run(t, b, s, cutter.Analysis), plan.Fail, cutter.CodeNoDrill)
	s.Cutters = append(s.Cutters, shop.Cutter{ID: "drill 5", Tool: tool.Cutter{Name: "drill 5", Shape: tool.Drill, Diameter: unit.MM(5)}})
	checktest.Want(t, checktest.Run(t, b, s, cutter.Analysis), plan.Pass, cutter.CodeRight)
}

func TestRods(t *testing.T) {
	for _, c := range []struct {
		name     string
		rod      int64 // in a channel 3.2 deep of radius 3.2
		status   plan.Status
		severity diag.Severity
		code     diag.Code
		sinks    unit.Length
	}{
		{"half", 64, plan.Pass, diag.Note, cutter.CodeRight, 0},
		{"thicker by a hair", 65, plan.Fail, diag.Warning, cutter.CodeRides, 0},
	} {
		b := board(piece.Channel, true, 100, 164, 32, 32)
		hold(b, c.rod)
		got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), cutter.Analysis), c.status, c.code)
		if got[0].Severity != c.severity {
			t.Errorf("%s: %s", c.name, got[0].Severity)
		}
	}
	// In a shallow channel of radius 6.4: half of 6.2 and a bit less than half.
	for _, c := range []struct {
		rod      int64
		severity diag.Severity
		code     diag.Code
	}{{60, "", cutter.CodeRight}, {61, "", cutter.CodeRight}, {62, diag.Note, cutter.CodeShallow}, {120, diag.Note, cutter.CodeShallow}, {121, diag.Warning, cutter.CodeShallow}} {
		b := board(piece.Channel, true, 100, 228, 30, 64)
		hold(b, c.rod)
		got := checktest.Run(t, b, checktest.Shop(), cutter.Analysis)
		if len(got) != 1 || got[0].Code != c.code || c.severity != "" && got[0].Severity != c.severity {
			t.Errorf("rod %d: %+v", c.rod, got)
		}
	}
	// A handle with flats does not roll: a quarter of it, 3 of 12, is enough.
	for rod, code := range map[int64]diag.Code{62: cutter.CodeRight, 120: cutter.CodeRight, 121: cutter.CodeShallow} {
		b := board(piece.Channel, true, 100, 228, 30, 64)
		hold(b, rod)
		b.Piece.Contents[0].Things[0].Sides, b.Piece.Contents[0].Things[0].Flats = 8, b.Fig("flats", rod*92/100)
		if got := checktest.Run(t, b, checktest.Shop(), cutter.Analysis); len(got) != 1 || got[0].Code != code {
			t.Errorf("handle %d: %+v", rod, got)
		}
	}
	b := board(piece.Channel, true, 100, 164, 32, 32)
	hold(b, 64)
	b.Piece.Contents[0].Things[0].Cut = ""
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), cutter.Analysis), plan.Unknown, cutter.CodeNowhere)
}

func hold(b *trial.Builder, rod int64) {
	b.Piece.Contents = []piece.Contents{{Address: "contents.rods", Kind: "rod", Things: []piece.Thing{
		{Key: "a", Diameter: b.Fig("rod", rod), Length: b.Fig("long", 5000), In: "board", Cut: "board.cut"},
	}}}
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), cutter.Analysis), plan.Pass, cutter.CodeRight)
}
