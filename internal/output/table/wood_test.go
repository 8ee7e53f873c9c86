package table

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/figure"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

func estimated(v, low, high unit.Value, in string) plan.Estimate {
	return plan.Estimate{Value: v, Low: low, High: high, Unit: in, Source: figure.Source{Key: "k", Status: figure.Memory}}
}

func mm(n int64) unit.Value { return unit.OfLength(unit.MM(n)) }

// TestWood: pairs that move freely are left out, equal parts share a row, what is missing
// is named.
func TestWood(t *testing.T) {
	p := &plan.Plan{Piece: &piece.Piece{Edition: "mm"}}
	one := unit.OfInt(unit.DimUntyped, 1)
	for _, x := range []struct {
		moves   address.Address
		verdict plan.Verdict
	}{{"top", plan.WillBreak}, {"lid", plan.WillBreak}, {"panel", plan.MovesFreely}} {
		p.Seasons.Pairs = append(p.Seasons.Pairs, plan.GrainPair{Moves: x.moves, Holds: "batten", Restraint: plan.Glued, Verdict: x.verdict, Strain: estimated(one, one, one, "percent")})
	}
	p.Seasons.Rooms = []plan.PanelRoom{{Part: "bottom", Spare: estimated(mm(-2), mm(-3), mm(-1), ""), Keeps: plan.Estimate{Missing: []plan.Datum{plan.NoWood}}}}
	got := Wood(p, english(unit.Metric))
	if len(got.Rows) != 3 || got.Rows[0][0] != "Top, Lid" || len(got.Groups) != 2 {
		t.Fatalf("%q %v", got.Rows, got.Groups)
	}
	for _, r := range got.Rows {
		if len(r) != len(got.Columns) || slices.Contains(r, "") {
			t.Errorf("%q", r)
		}
	}
}

// TestLoad: the short list leaves out single drawers, sags at once and joints; a piece
// of which nothing is known has empty tables.
func TestLoad(t *testing.T) {
	p := &plan.Plan{Piece: &piece.Piece{Edition: "mm"}}
	if w, l := Wood(p, english(unit.Metric)), Load(p, english(unit.Metric), false); len(w.Rows)+len(l.Rows)+len(w.Groups)+len(l.Groups) != 0 {
		t.Errorf("%v %v", w, l)
	}
	force := func(n int64) plan.Estimate {
		v := unit.OfInt(unit.DimForce, n)
		return estimated(v, v, v, "")
	}
	p.Strength = plan.Strength{
		Shelves: []plan.Shelf{{Part: "shelf", Kind: "shelf", Loads: []plan.ShelfSag{{Case: "books", Load: force(1), AtOnce: estimated(mm(2), mm(2), mm(3), ""), Lasting: estimated(mm(4), mm(3), mm(5), "")}}}},
		Standing: []plan.Standing{
			{Case: "empty", Pull: force(50)}, {Case: "empty", Out: nil, Pull: force(50)},
			{Case: "loaded", Pull: plan.Estimate{Missing: []plan.Datum{plan.NoMass}}},
		},
		Joints: []plan.JointHold{{Joint: "j", Kind: "sliding dovetail", Ways: []plan.Holding{{Way: "moment", Count: 2, Allowed: force(3)}}}, {Joint: "k", Kind: "rebate"}},
	}
	full, short := Load(p, english(unit.Metric), false), Load(p, english(unit.Metric), true)
	if len(full.Rows) != 5 || len(short.Rows) != 3 {
		t.Errorf("%q\n%q", full.Rows, short.Rows)
	}
}
