package equip

import (
	"slices"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// opened works a shop document out and returns what was reported.
func opened(t testing.TB, name string, text []byte, bare unit.Length) (*shop.Shop, *formula.Maker, *diag.List) {
	t.Helper()
	file, ds := document.Read(document.Source{Name: name, Text: text}, document.Limits{})
	steps, most := 0, 100_000
	m := &formula.Maker{Ledger: ledger.New(formula.Functions(nil)), Bare: bare, Steps: &steps, Most: &most}
	m.Report = func(d diag.Diagnostic) { ds = append(ds, d) }
	return Shop(file, m), m, &ds
}

// TestDefaults works both built-in shops out without a complaint.
func TestDefaults(t *testing.T) {
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		name, text := shop.Default(system)
		s, _, ds := opened(t, name, text, system.Unit())
		for _, d := range *ds {
			t.Errorf("%s:%d %s", name, d.Where.Line, d.Code)
		}
		if s.Units != system || len(s.Boards) < 3 || len(s.Sheets) < 2 || len(s.Machines) < 5 || len(s.Cutters) < 6 {
			t.Errorf("%s: %+v", name, s)
		}
		for _, m := range s.Machines {
			if m.Tool.Accuracy.Value <= 0 {
				t.Errorf("%s: %s has no accuracy", name, m.ID)
			}
		}
		if l := s.LengthRule("depth per pass"); !l.Known() || l.Value <= 0 {
			t.Errorf("%s: no depth per pass", name)
		}
		if c := s.Climate.Season; c.Dry >= c.Now || c.Now >= c.Wet {
			t.Errorf("%s: season %+v", name, c)
		}
	}
}

// TestShop reads one of each with its units.
func TestShop(t *testing.T) {
	s, _, ds := opened(t, "x", []byte(`scantling = 1

shop "S" {
  units       = "mm"
  denominator = 16
  trim_edges  = 5
}

sheet "mdf" {
  kind    = "MDF"
  nominal = 12
  length  = 2440
  width   = 1220
  grain   = "none"
  price   = 31.25
}

machine "planer" {
  kind         = "planer"
  least_length = "12 in"
  most_width   = 300
}

cutter "core box 3/8" {
  kind     = "core box"
  diameter = "3/8 in"
}

rule "cut tolerance" {
  length = 0.15
  why    = "my saw"
}
`), unit.Millimetre)
	for _, d := range *ds {
		t.Error(d.Code, d.Where.Line)
	}
	m, c := s.Of(tool.ThicknessPlaner), s.Tools()
	if len(m) != 1 || m[0].Tool.Least.Length.Value != 12*unit.Inch || c[0].NoseRadius() != 9525*unit.Micrometre/2 {
		t.Errorf("%+v %+v", m, c)
	}
	if x, _ := s.Sheet("mdf"); x.Stock.Price.Amount != 3125 || x.Stock.Trim != 5*unit.Millimetre || x.Have != 0 || x.Stock.Measured != 0 {
		t.Errorf("%+v", x)
	}
	if s.LengthRule("cut tolerance").Value != 150*unit.Micrometre || s.Denominator != 16 {
		t.Errorf("%+v", s.Rules)
	}
}

// TestFind asks the metric shop's rack.
func TestFind(t *testing.T) {
	name, text := shop.Default(unit.Metric)
	s, m, ds := opened(t, name, text, unit.Millimetre)
	for _, c := range []struct {
		asks, more string
		need       unit.Length
		stock      string
		thick      unit.Length
		code       diag.Code
	}{
		{"cherry board", "", 14 * unit.Millimetre, "cherry planed 20", 0, ""},
		{"cherry board", "  stock = \"cherry 27\"\n", 14 * unit.Millimetre, "cherry 27", 0, ""},
		{"cherry board", "", 20 * unit.Millimetre, "cherry 27", 0, ""}, // the planed one does not clean up to it
		{"cherry board", "", 0, "cherry planed 20", 19600 * unit.Micrometre, ""},
		{"black walnut board", "", 14 * unit.Millimetre, "walnut 27", 0, ""},
		{"birch plywood 4", "", 0, "birch ply 4", 3800 * unit.Micrometre, ""},
		{"Birch Plywood 6 mm", "", 0, "birch ply 6", 5600 * unit.Micrometre, ""},
		{"birch plywood 9", "", 0, "", 0, CodeNotInRack},
		{"cherry board", "", 60 * unit.Millimetre, "", 0, CodeTooThinInRack},
		{"teak board", "", 14 * unit.Millimetre, "", 0, CodeNotInRack},
		{"walnutt board", "", 14 * unit.Millimetre, "", 0, CodeUnknownWood},
		{"cherry board", "  stock = \"cherry 99\"\n", 14 * unit.Millimetre, "", 0, CodeNotInRack},
	} {
		file, _ := document.Read(document.Source{Name: "m", Text: []byte("scantling = 1\npiece \"p\" {}\nmaterial \"m\" {\n  asks = \"" + c.asks + "\"\n" + c.more + "}\n")}, document.Limits{})
		*ds = nil
		a := Find(formula.Reader{Maker: m, Scope: nameless{&reader{maker: m}}, File: file, Block: file.Blocks[1]}, s, c.need)
		if a.Stock != c.stock || a.Found != (c.stock != "") || c.thick != 0 && a.Thickness != c.thick {
			t.Errorf("%s %v: %+v", c.asks, c.need, a)
		}
		var got []diag.Code
		for _, d := range *ds {
			got = append(got, d.Code)
		}
		if c.code == "" && len(got) > 0 || c.code != "" && !slices.Equal(got, []diag.Code{c.code}) {
			t.Errorf("%s: %v, not %s", c.asks, got, c.code)
		}
	}
}

// FuzzShop works anything out as a shop.
func FuzzShop(f *testing.F) {
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		_, text := shop.Default(system)
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<14 {
			return
		}
		s, _, _ := opened(t, "x", text, unit.Millimetre)
		for _, b := range s.Boards {
			if b.Stock.Check() != nil || b.Species == "" {
				t.Fatalf("%+v is kept", b)
			}
		}
		for _, c := range s.Cutters {
			if c.Tool.Check() != nil {
				t.Fatalf("%+v is kept", c)
			}
		}
	})
}
