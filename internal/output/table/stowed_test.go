package table

import (
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestStowed: three bays that are alike share their rows, and a sum adds up as it
// is printed although its terms do not: by hand, 98 · 4 + 98 · 0.04 = 395.92 is
// printed to the tenth as 392 + 3.9 = 395.9.
func TestStowed(t *testing.T) {
	at := func(um int64) plan.Figure {
		return plan.Figure{Nm: unit.Length(um) * unit.Micrometre, Entry: 1}
	}
	lot := func(in string) plan.Stowed {
		s := plan.Stowed{Of: "contents.records", Count: 98, Places: 98, More: 2,
			Needs: [3]plan.Figure{at(395_920), at(315_000), at(330_000)},
			Has:   [3]plan.Figure{at(416_200), at(330_000), at(330_000)},
			Spare: [3]plan.Figure{at(20_280), at(15_000), {Entry: 1}},
		}
		s.Sums[0] = []piece.Addend{{Word: "things", Times: 98, Each: at(4_000), Figure: at(392_000)}, {Word: "flip", Times: 98, Each: at(40), Figure: at(3_920)}}
		s.Sums[1] = []piece.Addend{{Word: "things", Times: 1, Figure: at(315_000)}}
		s.Sums[2] = []piece.Addend{{Word: "things", Times: 1, Figure: at(315_000)}, {Word: "above", Times: 1, Figure: at(15_000)}}
		return s
	}
	p := tray("tray", 15)
	p.Piece.Contents = []piece.Contents{{Address: "contents.records", Label: "Records"}}
	p.Stowed = []plan.Stowed{lot(""), lot(""), lot("")}
	w := english(unit.Metric)
	got := Stowed(p, w, w.Show())
	if len(got.Rows) != 3 || len(got.Groups) != 1 {
		t.Fatalf("%+v", got)
	}
	if sum := got.Rows[0][1]; sum != "392 for the things (98 × 4) + 3.9 to leaf through (in 98)" || got.Rows[0][2] != "395.9" || got.Rows[0][3] != "416.2" || got.Rows[0][4] != "20.3" {
		t.Errorf("%q", got.Rows[0])
	}
	if title := got.Groups[0]; !strings.Contains(title, "98 in 98 places") || !strings.Contains(title, "2 more") {
		t.Errorf("%q", title)
	}
}

// TestSupplies: a figure says its range, source and status; nothing known is said so.
func TestSupplies(t *testing.T) {
	minutes := func(n int64) unit.Value { return unit.OfInt(unit.DimUntyped, n) }
	p := tray("tray", 15)
	p.Supplies = []plan.Supply{
		{Kind: "glue", Name: "pva", Water: "D2", Figures: []plan.SupplyFigure{
			{Word: "clamp", Estimate: plan.Estimate{Value: minutes(80), Low: minutes(80), High: minutes(80), Unit: "min", Source: figure.Source{Title: "a magazine", Status: figure.Read}}},
			{Word: "coldest", Estimate: plan.Estimate{Value: minutes(7), Low: minutes(4), High: minutes(7), Unit: "°C", Source: figure.Source{Status: figure.Memory}}},
		}},
		{Kind: "finish", Name: "soap"},
		{Kind: "finish", Name: "wax", Figures: []plan.SupplyFigure{
			{Word: "litres", Estimate: plan.Estimate{Value: unit.OfFloat(unit.DimUntyped, 0.00722), Low: unit.OfFloat(unit.DimUntyped, 0.00577), High: unit.OfFloat(unit.DimUntyped, 0.00962), Unit: "l", Source: figure.Source{Status: figure.Memory}}},
		}},
	}
	got := Supplies(p, english(unit.Metric))
	if len(got.Rows) != 4 || len(got.Groups) != 3 {
		t.Fatalf("%+v", got)
	}
	for i, want := range []string{"in clamps, today|1 h 20 min|–|a magazine|looked up", "least temperature|7 °C|4 to 7 °C|–|from memory", "nothing is known of it|–|–|–|–", "wanted, about|7.2 ml|5.8 to 9.6 ml|–|from memory"} {
		if row := strings.Join(got.Rows[i], "|"); row != want {
			t.Errorf("%s, want %s", row, want)
		}
	}
}
