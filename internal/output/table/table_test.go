package table

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

func english(system unit.System) *words.Words {
	return words.New(words.English, words.British, unit.Show{System: system, Denominator: 16}, "EUR")
}

func fig(mm int64) plan.Figure { return plan.Figure{Nm: unit.MM(mm)} }

func tray(name string, tall int64, cuts ...piece.Cut) *plan.Plan {
	a := address.Address(name)
	p := &piece.Piece{Edition: "mm", Parts: []piece.Part{{Address: a, Name: "tray", Length: fig(300), Width: fig(80), Thickness: fig(tall),
		Frame: piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}}}}
	for i := range cuts {
		cuts[i].Part = a
	}
	p.Cuts = cuts
	return &plan.Plan{Piece: p, Parts: []plan.PartRow{{Mark: "A1", Name: "tray", Members: []address.Address{a}, Stage: "1", Basis: plan.Planned}}}
}

func channel(n int, key string, middle, depth int64) piece.Cut {
	return piece.Cut{Address: "tray.channel", Kind: piece.Channel, Series: "tray.channel", Nth: n, Key: key,
		Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongLength, From: fig(0), To: fig(300), StartOpen: true, EndOpen: true, Near: fig(middle - 3), Far: fig(middle + 3), Depth: fig(depth)}}
}

// Equal channels share a row with the middle of each; a deeper one has its own.
func TestCuts(t *testing.T) {
	p := tray("tray", 15, channel(1, "4.0 a", 15, 2), channel(2, "4.0 b", 29, 2), channel(3, "6.0 a", 43, 3),
		piece.Cut{Address: "tray.scoop", Kind: piece.Scoop, Dip: &piece.Dip{Open: piece.EdgeLow, Centre: fig(100), Chord: fig(48), Depth: fig(16)}})
	got := Cuts(p, p.Parts[0], english(unit.Metric))
	want := [][]string{
		{"a", "channel × 2", "top face", "edge 1", "middle at 15 · 29", "6", "2", "through", "4.0 a b"},
		{"b", "channel", "top face", "edge 1", "middle at 43", "6", "3", "through", "6.0 a"},
		{"c", "scoop", "right edge", "end 1", "76 – 124", "48", "16", "arc of radius 26", ""},
	}
	if !slices.EqualFunc(got.Rows, want, slices.Equal) {
		t.Errorf("got %q\nwant %q", got.Rows, want)
	}
	for i, row := range got.Rows {
		if len(row) != len(got.Columns) {
			t.Errorf("row %d has %d cells for %d columns", i, len(row), len(got.Columns))
		}
	}
}

// What must be got is counted, not what is needed; boards in cubic metres for
// metric readers, in board feet for others: 2 of 4 boards of 2 board feet each
// are 4 (figures worked out by hand).
func TestBuying(t *testing.T) {
	p := tray("tray", 15)
	p.Buying = []plan.Buy{
		{Label: "oak", Need: 4, Have: 2, Get: 2, Price: 1000, Sum: 2000, Measure: message.New("buying.boards", message.Count("n", 4), message.Length("length", unit.MM(2000)),
			message.Length("width", unit.MM(150)), message.Length("thickness", unit.MM(25)), message.Ratio("cubic", 0.03), message.Ratio("boardfeet", 8))},
		{Label: "pins", Need: 8, Have: 9, Measure: message.New("buying.pieces", message.Count("n", 0))},
	}
	for edition, want := range map[string]string{"mm": "2 boards 2000 × 150 × 25; 0.015 m³", "in": "2 boards 78 3/4 × 5 7/8 × 1; 4 board feet"} {
		p.Piece.Edition = edition
		got := Buying(p, english(unit.System(edition)))
		if got.Rows[0][4] != want || got.Rows[1][4] != "in the rack" {
			t.Errorf("%s: got %q and %q, want %q", edition, got.Rows[0][4], got.Rows[1][4], want)
		}
	}
}

// Things that lie alike share a row, under the part that holds them.
func TestHeld(t *testing.T) {
	p := tray("tray", 15)
	held := func(thing string, land int64) plan.Held {
		return plan.Held{Thing: thing, In: "tray", Cutter: "round-nose 6", Depth: fig(2), Sinks: fig(2), Proud: fig(2), Land: fig(land)}
	}
	p.Held = []plan.Held{held("4.0 a", 9), held("4.0 b", 8), held("spare", 7)}
	got := Held(p, english(unit.Metric))
	if len(got.Rows) != 2 || got.Rows[0][0] != "4.0 a b" || got.Rows[0][5] != "8" || got.Rows[1][0] != "spare" || got.Groups[0] != "Tray · A1" {
		t.Errorf("%q %v", got.Rows, got.Groups)
	}
}

// Lengths stand without their unit, which the table names once.
func TestUnitsAreNamedOnce(t *testing.T) {
	p := tray("tray", 15)
	p.Parts[0].Length, p.Parts[0].Width, p.Parts[0].Thickness = fig(300), fig(80), fig(15)
	got := Parts(p, "1", english(unit.Metric))
	for _, cell := range got.Rows[0] {
		if strings.Contains(cell, "mm") {
			t.Errorf("%q names the unit", cell)
		}
	}
	if got.Note != "Lengths in millimetres." || got.Rows[0][3] != "300" || !got.Columns[3].Length {
		t.Errorf("%q %q %+v", got.Note, got.Rows[0], got.Columns[3])
	}
}
