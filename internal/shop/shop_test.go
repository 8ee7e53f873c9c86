package shop

import (
	"bytes"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestLookUps finds things by their names, and says so where there are none.
func TestLookUps(t *testing.T) {
	s := &Shop{
		Units: unit.Inches, Denominator: 32, Resolution: unit.Millimetre / 10,
		Boards:   []Board{{ID: "a"}, {ID: "b", Have: 2}},
		Sheets:   []Sheet{{ID: "s"}},
		Machines: []Machine{{ID: "m", Tool: tool.Machine{Kind: tool.BandSaw}}},
		Cutters:  []Cutter{{ID: "c", Tool: tool.Cutter{Name: "c"}}},
		Fittings: []Fitting{{ID: "f"}},
		Rules:    []Rule{{Name: "depth", Value: unit.OfLength(3 * unit.Millimetre), Why: "habit"}, {Name: "word", Value: unit.OfText("x")}},
	}
	if b, ok := s.Board("b"); !ok || b.Have != 2 {
		t.Error("board")
	}
	_, sheet := s.Sheet("s")
	_, cutter := s.Cutter("c")
	_, fitting := s.Fitting("f")
	_, none := s.Board("z")
	if !sheet || !cutter || !fitting || none || len(s.Of(tool.BandSaw)) != 1 || len(s.Of(tool.TableSaw)) != 0 || s.Tools()[0].Name != "c" {
		t.Error("look-ups")
	}
	if l := s.LengthRule("depth"); l.Value != 3*unit.Millimetre || l.Source.Status != figure.Stated || s.LengthRule("word").Known() || s.LengthRule("none").Known() {
		t.Errorf("rule %+v", l)
	}
	if s.Step() != unit.Inch/32 || (&Shop{}).Step() != unit.Millimetre/2 || s.Show(unit.Both).Works() != unit.Inches {
		t.Error("steps")
	}
}

// TestDefault gives two documents.
func TestDefault(t *testing.T) {
	metric, a := Default(unit.Metric)
	inch, b := Default(unit.Inches)
	if metric == inch || bytes.Equal(a, b) || len(a) == 0 || len(b) == 0 {
		t.Error(metric, inch)
	}
}
