package hardware

import (
	"testing"

	"scantling/internal/unit"
)

func TestReadKinds(t *testing.T) {
	for kind, want := range map[string]struct {
		name   string
		length unit.Length
	}{
		"screw 4 x 30":           {"4.0", unit.MM(30)},
		"Screw 3.5 x 35":         {"3.5", unit.MM(35)},
		"screw no. 8 x 1 1/4 in": {"no. 8", unit.Inch * 5 / 4},
		"screw 4 x 33":           {"4.0", unit.MM(33)},
		"screw 4":                {},
		"screw 4.2 x 30":         {},
		"screw 4 x -3":           {},
		"screw 4 x 5 m":          {},
		"coach bolt 8 x 60":      {},
		"":                       {},
		"screw 4 x thirty":       {},
	} {
		s, ok := ReadScrew(kind)
		if ok != (want.name != "") || s.Name != want.name || s.Length != want.length {
			t.Errorf("%q: %+v %v", kind, s, ok)
		}
	}
	if p, ok := ReadPin("panel pin 1.25 x 20"); !ok || p.Diameter != 1250*unit.Micrometre || p.Length != unit.MM(20) {
		t.Errorf("pin: %+v %v", p, ok)
	}
	if _, ok := ReadPin("panel pin 20"); ok {
		t.Error("a pin without a thickness is known")
	}
}

// TestPlugs: common practice, no source: 10 over the 8 of a screw of 4.
func TestPlugs(t *testing.T) {
	for head, want := range map[int64][2]int64{8: {8, 5}, 9: {10, 5}, 12: {12, 6}, 40: {15, 7500}} {
		d, deep := Plug(unit.MM(head))
		if w := unit.MM(want[1]); want[1] != 7500 && deep.Value != w || d.Value != unit.MM(want[0]) {
			t.Errorf("head %d: %v deep %v", head, d.Value, deep.Value)
		}
	}
}

// FuzzReadScrew reads any kind of screw or pin: its length is what the table's words may
// say, and no other.
func FuzzReadScrew(f *testing.F) {
	for _, s := range []string{"screw 4 x 30", "screw no. 8 x 1-1/4 in", "panel pin 1.25 x 20", "6d nail x 50", "screw x", " x ", "screw 4 x -3", "screw 4 x 1e99"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, kind string) {
		if s, ok := ReadScrew(kind); ok && (s.Length <= 0 || s.Length > unit.Metre) {
			t.Errorf("%q is %v long", kind, s.Length)
		}
		if p, ok := ReadPin(kind); ok && (p.Length <= 0 || p.Length > unit.Metre) {
			t.Errorf("%q is %v long", kind, p.Length)
		}
	})
}
