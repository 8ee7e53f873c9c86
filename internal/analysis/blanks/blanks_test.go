package blanks_test

import (
	"fmt"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestAllowances: a blank is the part and what comes off, and the ledger says so.
func TestAllowances(t *testing.T) {
	b := newBench()
	b.row("A1", 2, 4000, 900, 180)
	out, _ := b.derive(t)
	blank := out[0]
	if blank.ID != "blank.A1.1" || tenths(blank.Length) != 4000+120 || tenths(blank.Width) != 900+50 || tenths(blank.Thickness) != 180 {
		t.Errorf("%+v", blank)
	}
	for _, f := range []piece.Figure{blank.Length, blank.Width} {
		e, _ := b.in.Ledger.Entry(f.Entry)
		leaves := 0
		for _, x := range b.in.Ledger.Explain(f.Entry) {
			if x.Op == ledger.OpGiven {
				leaves++
			}
		}
		if e.Op != ledger.OpAdd || len(e.Args) != 3 || leaves != 2 {
			t.Errorf("%s: %s of %d, from %d leaves", e.Name, e.Op, len(e.Args), leaves)
		}
	}
	if part := out[len(out)-1]; part.ID != "part.A1" || part.Count != 2 || fmt.Sprint(part.From) != "[blank.A1.1 blank.A1.2]" {
		t.Errorf("%+v", part)
	}
}

// TestHouseAllowances: other habits, other sums.
func TestHouseAllowances(t *testing.T) {
	b := newBench()
	b.in.Allowances.End, b.in.Allowances.Edge = b.fig(100), b.fig(0)
	b.row("A1", 1, 4000, 900, 180)
	out, _ := b.derive(t)
	if tenths(out[0].Length) != 4200 || tenths(out[0].Width) != 900 {
		t.Errorf("%+v", out[0])
	}
}

// TestKeptLong: what is too short for the machines keeps its blank long.
func TestKeptLong(t *testing.T) {
	for _, c := range []struct {
		name          string
		length        int64
		plane, rout   int64
		routed        bool
		want          int64
		why           string
		boardIsLength int64
	}{
		{"long enough", 3000, 3050, 3050, false, 3120, "[]", 24000},
		{"just long enough", 2930, 3050, 3050, false, 3050, "[]", 24000},
		{"too short for the planer", 2800, 3050, 3050, false, 3050, "[blanks.kept-long]", 24000},
		{"routed parts want what the router table wants", 2900, 3000, 4000, true, 4000, "[blanks.kept-long]", 24000},
		{"without a slot the router table does not count", 2900, 3000, 4000, false, 3020, "[]", 24000},
		{"no machines", 2800, 0, 0, true, 2920, "[]", 24000},
		{"no board is so long", 2800, 3050, 3050, false, 2920, "[blanks.kept-long]", 3200},
	} {
		b := newBench()
		b.in.Limits.LeastPlane, b.in.Limits.LeastRout = unit.Length(c.plane)*tenth, unit.Length(c.rout)*tenth
		b.in.Stock[0].Length = unit.Length(c.boardIsLength) * tenth
		b.row("A1", 1, c.length, 900, 180)
		if c.routed {
			b.slot(100, 150)
		}
		out, diags := b.derive(t)
		if len(diags) > 0 || tenths(out[0].Length) != c.want || keys(out[0].Why) != c.why {
			t.Errorf("%s: %d long, %s, want %d, %s", c.name, tenths(out[0].Length), keys(out[0].Why), c.want, c.why)
		}
	}
}

// TestStockFor: which stock a part comes out of.
func TestStockFor(t *testing.T) {
	planed := func(s blanks.Stock) blanks.Stock { s.Planed = true; return s }
	finished := func(s blanks.Stock) blanks.Stock { s.Finished = true; return s }
	narrow := board("narrow", 24000, 1200, 270, 4)
	other := board("ash", 24000, 1650, 270, 4)
	other.Species = "ash"
	for _, c := range []struct {
		name      string
		thickness int64
		stock     []blanks.Stock
		own       string
		want      string
	}{
		{"the thinnest of the rack", 100, []blanks.Stock{board("27", 24000, 1650, 270, 4), planed(board("20", 24000, 1650, 196, 2))}, "", "20"},
		{"planed loses 1: 18 out of 19.05, common practice", 180, []blanks.Stock{planed(board("3/4", 24000, 1650, 191, 2)), board("27", 24000, 1650, 270, 4)}, "", "3/4"},
		{"finished loses nothing", 100, []blanks.Stock{finished(board("10", 24000, 1650, 100, 2)), board("27", 24000, 1650, 270, 4)}, "", "10"},
		{"and is no thicker than it is", 101, []blanks.Stock{finished(board("10", 24000, 1650, 100, 2)), board("27", 24000, 1650, 270, 4)}, "", "27"},
		{"planed, and the material says no other thickness", 100, []blanks.Stock{planed(board("10", 24000, 1650, 100, 2)), board("27", 24000, 1650, 270, 4)}, "10", "10"},
		{"and 18.2 not", 182, []blanks.Stock{planed(board("3/4", 24000, 1650, 191, 2)), board("27", 24000, 1650, 270, 4)}, "", "27"},
		{"rough loses 5", 220, []blanks.Stock{board("27", 24000, 1650, 270, 4), board("34", 24000, 1650, 340, 4)}, "", "27"},
		{"and 22.1 out of 27 not", 221, []blanks.Stock{board("27", 24000, 1650, 270, 4), board("34", 24000, 1650, 340, 4)}, "", "34"},
		{"the rack before what must be bought", 100, []blanks.Stock{planed(board("13", 24000, 1650, 130, 0)), board("27", 24000, 1650, 270, 4)}, "", "27"},
		{"the widest", 180, []blanks.Stock{narrow, board("27", 24000, 1650, 270, 4)}, "", "27"},
		{"its own wood", 180, []blanks.Stock{other, narrow}, "", "narrow"},
		{"what the material names", 100, []blanks.Stock{board("27", 24000, 1650, 270, 4), planed(board("20", 24000, 1650, 196, 2))}, "27", "27"},
		{"unless it is too thin", 200, []blanks.Stock{board("27", 24000, 1650, 270, 4), planed(board("20", 24000, 1650, 196, 2))}, "20", "27"},
		{"long enough with its allowances", 180, []blanks.Stock{planed(board("short", 4300, 1650, 200, 4)), board("27", 24000, 1650, 270, 4)}, "", "27"},
	} {
		b := newBench()
		b.in.Stock = c.stock
		b.in.Piece.Materials = []piece.Material{{Name: "case", Stock: c.own}}
		b.row("A1", 1, 4000, 900, c.thickness)
		out, diags := b.derive(t)
		if len(diags) > 0 || out[0].Stock != c.want {
			t.Errorf("%s: from %q, want %q (%v)", c.name, out[0].Stock, c.want, diags)
		}
	}
}

// TestNoStock: the reason is told with the two figures that clash.
func TestNoStock(t *testing.T) {
	for _, c := range []struct {
		name                     string
		sheet                    bool
		length, width, thickness int64
		species                  string
		key                      string
		args                     map[string]int64
	}{
		{"too thick", false, 4000, 900, 230, "cherry", "blanks.no-stock", map[string]int64{"thickness": 230, "thickest": 270}},
		{"too long", false, 23900, 900, 180, "cherry", "blanks.too-long", map[string]int64{"needs": 24020, "length": 23900, "longest": 23800}},
		{"no such wood", false, 4000, 900, 180, "ebony", "blanks.no-wood", nil},
		{"no sheet so thick", true, 4000, 900, 60, "ply", "blanks.no-sheet", map[string]int64{"thickness": 60, "nearest": 56}},
		{"sheet too small", true, 4000, 6100, 38, "ply", "blanks.sheet-too-small", map[string]int64{"length": 4000, "width": 6100, "longest": 12100, "widest": 6000}},
		{"sheet with grain too narrow for a part across", true, 3000, 7000, 38, "ply", "blanks.sheet-too-small", map[string]int64{"length": 3000, "width": 7000, "longest": 12100, "widest": 6000}},
	} {
		b := newBench()
		b.in.Stock = append(b.in.Stock, sheet("ply 6", 12200, 6100, 56, 1), sheet("ply 4", 12200, 6100, 38, 1))
		r := b.row("A1", 1, c.length, c.width, c.thickness)
		r.Species, r.Sheet = c.species, c.sheet
		out, diags := b.derive(t)
		if len(diags) != 1 || diags[0].Code != blanks.CodeNoStock || diags[0].Text.Key != c.key || len(find(out, plan.BlankPiece)) != 0 {
			t.Errorf("%s: %v, %+v", c.name, diags, out)
			continue
		}
		for name, want := range c.args {
			if got, ok := diags[0].Text.Arg(name); !ok || int64(got.Nm/tenth) != want {
				t.Errorf("%s: %s is %v, want %d", c.name, name, got.Nm, want)
			}
		}
	}
}

// TestSheets: sheet goods are cut once, to the finished size, one blank a part;
// a sheet without grain takes a part across.
func TestSheets(t *testing.T) {
	b := newBench()
	s := sheet("mdf", 12200, 6100, 60, 1)
	s.Turns = true
	b.in.Stock = append(b.in.Stock, s)
	r := b.row("A1", 3, 3000, 7000, 60)
	r.Species, r.Sheet = "ply", true
	out, diags := b.derive(t)
	pieces := find(out, plan.BlankPiece)
	if len(diags) != 0 || len(pieces) != 3 || pieces[0].Length.Nm != unit.MM(300) || pieces[0].Width.Nm != unit.MM(700) || len(pieces[0].Why) != 0 {
		t.Errorf("%v %+v", diags, pieces)
	}
}

// TestThin: much thinner than its board.
func TestThin(t *testing.T) {
	planed := board("planed 13", 24000, 1650, 128, 0)
	planed.Planed = true
	for _, c := range []struct {
		name             string
		width, thickness int64
		resaw            int64
		stock            []blanks.Stock
		want             string
	}{
		{"as usual: 18 out of 27", 900, 180, 1500, nil, "[]"},
		{"17 is just no word", 900, 170, 1500, nil, "[]"},
		{"10 out of 27 and a band saw: two of 11 and 4 for kerf and faces", 900, 100, 1500, nil, "[blanks.resaw]"},
		{"no band saw", 900, 100, 0, nil, "[blanks.planed-away]"},
		{"a band saw that is too low", 900, 100, 900, nil, "[blanks.planed-away]"},
		{"no two of 14 in 27", 900, 140, 1500, nil, "[blanks.planed-away]"},
		{"thinner stock to be bought", 900, 100, 0, []blanks.Stock{planed}, "[blanks.planed-away blanks.thinner]"},
		{"panels too", 2600, 100, 1500, nil, "[blanks.glued-up blanks.resaw]"},
	} {
		b := newBench()
		b.in.Limits.Resaw, b.in.Limits.ResawKerf = unit.Length(c.resaw)*tenth, 1200*unit.Micrometre
		b.in.Stock = append(b.in.Stock, c.stock...)
		b.row("A1", 1, 4000, c.width, c.thickness)
		out, _ := b.derive(t)
		w := out[0]
		if panels := find(out, plan.PanelPiece); len(panels) > 0 {
			w = panels[0]
		}
		if keys(w.Why) != c.want {
			t.Errorf("%s: %s, want %s", c.name, keys(w.Why), c.want)
		}
	}
}

// TestAssemblies: groups are put together from their parts, inner groups first.
func TestAssemblies(t *testing.T) {
	b := newBench()
	b.row("A1", 2, 4000, 900, 180)
	b.row("B1", 1, 5000, 900, 180)
	for i, g := range []string{"box", "box", "box.tray"} {
		b.in.Piece.Parts[i].Group = address.Address(g)
	}
	b.in.Piece.Groups = []piece.Group{{Address: "box.tray", Parent: "box"}, {Address: "box"}}
	out, _ := b.derive(t)
	got := find(out, plan.AssemblyPiece)
	if len(got) != 2 || fmt.Sprint(got[0].From) != "[part.B1]" || fmt.Sprint(got[1].From) != "[box.tray part.A1]" {
		t.Errorf("%+v", got)
	}
}
