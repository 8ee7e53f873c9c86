package scantling_test

import (
	"slices"
	"testing"

	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestGougeTrayCups: a channelled board cups within days while it waits (common practice,
// no source). Of a board whose core reads what the room gives nothing is told; 3 percent
// over it the tray of 278 goes hollow on the channels, as much under it on the back, by
// several millimetres on the bench and by few tenths on edge; without a reading it is
// asked for.
func TestGougeTrayCups(t *testing.T) {
	const old = "  moisture  = 9.5 # percent, read in a fresh cut\n"
	for _, c := range []struct {
		moisture, way string
	}{{old, ""}, {"  moisture = 12.3\n", "cup.machined"}, {"  moisture = 6.3\n", "cup.back"}} {
		r := planBoth(t, "gouge-tray", nil, []string{old, c.moisture})
		i := slices.IndexFunc(r.Plan.Findings, func(f plan.Finding) bool { return f.Code == "cups-while-it-waits" })
		switch {
		case (i >= 0) != (c.way != ""):
			t.Errorf("%s: told: %t", c.moisture, i >= 0)
		case i >= 0:
			f := r.Plan.Findings[i]
			if way, _ := f.Text.Arg("way"); way.S != c.way {
				t.Errorf("%s: hollow %s, want %s", c.moisture, way.S, c.way)
			}
			high, _ := f.Text.Arg("high")
			edge, _ := f.Text.Arg("edge")
			if high.Nm < 3*unit.Millimetre || edge.Nm > unit.Millimetre/2 {
				t.Errorf("%s: %s flat, %s on edge", c.moisture, mm(high.Nm), mm(edge.Nm))
			}
		}
	}
	if r := planBoth(t, "gouge-tray", nil, []string{old, ""}); !slices.Contains(codes(r), "core-not-read") {
		t.Errorf("%v: nobody asks for the reading", codes(r))
	}
}
