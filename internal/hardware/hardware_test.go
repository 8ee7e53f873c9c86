package hardware

import (
	"errors"
	"slices"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

const um = unit.Micrometre

func wantKey(t *testing.T, err error, key string) {
	t.Helper()
	var r *figure.Refusal
	if !errors.As(err, &r) || r.Text.Key != key {
		t.Errorf("error %v, want %s", err, key)
	}
}

func second[T any](_ T, err error) error { return err }

// TestScrewGauges: the diameters of numbered screws follow 0.060 + 0.013 n in
// (ANSI B18.6.1, from memory), to the micrometre of the table.
func TestScrewGauges(t *testing.T) {
	for n, name := range map[int64]string{4: "no. 4", 6: "no. 6", 8: "no. 8", 10: "no. 10", 12: "no. 12"} {
		s, err := FindScrew(name, 38100*um)
		want := unit.Inch*60/1000 + unit.Inch*unit.Length(13*n)/1000
		if err != nil || (s.Diameter-want).Abs() > um {
			t.Errorf("%s: %v %v, want %v", name, s.Diameter.Millimetres(), err, want.Millimetres())
		}
	}
}

func TestTables(t *testing.T) {
	if len(Screws()) < 50 || len(Pins()) < 20 || len(Dowels()) < 15 {
		t.Errorf("%d screws, %d pins, %d dowels", len(Screws()), len(Pins()), len(Dowels()))
	}
	for _, s := range Screws() {
		if !(0 < s.Root && s.Root < s.Diameter && s.Diameter < s.Head && s.Diameter < s.Length) || s.Source.Status == "" {
			t.Errorf("screw %+v", s)
		}
		h, soft := s.Holes(HardWood), s.Holes(SoftWood)
		if !(soft.Lead.Value < h.Lead.Value && h.Lead.Value < s.Root && h.Clearance.Value > s.Diameter && h.Sink.Value > s.Head) {
			t.Errorf("holes of %s: %+v", s.Name, h)
		}
	}
	for _, p := range Pins() {
		if !(0 < p.Diameter && p.Diameter <= p.Head && p.Head < p.Length) || p.Lead().Value >= p.Diameter {
			t.Errorf("pin %+v", p)
		}
	}
	if d := DowelDiameters(); !slices.IsSorted(d) || len(d) != 7 || d[0] != unit.MM(6) {
		t.Errorf("diameters %v", d)
	}
	for _, kind := range []FittingKind{Knob, TurnButton, Hinge} {
		if len(Fittings(kind)) < 2 {
			t.Errorf("%d of %s", len(Fittings(kind)), kind)
		}
		for _, f := range Fittings(kind) {
			if err := f.Check(); err != nil {
				t.Errorf("%s: %v", f.Name, err)
			}
			if _, err := FindScrew(f.Screw, f.ScrewLength); err != nil {
				t.Errorf("%s: its screw: %v", f.Name, err)
			}
			if found, err := FindFitting(f.Name); err != nil || found.Name != f.Name {
				t.Errorf("%s: %v", f.Name, err)
			}
		}
	}
}

func TestFind(t *testing.T) {
	for _, c := range []struct {
		name           string
		length, expect unit.Length
	}{{"4", unit.MM(30), unit.MM(30)}, {"4.0", unit.MM(33), unit.MM(30)}, {"No. 8", 26 * unit.Millimetre, 25400 * um}} {
		if s, err := FindScrew(c.name, c.length); err != nil || s.Length != c.expect {
			t.Errorf("%s x %v: %v %v", c.name, c.length.Millimetres(), s.Length.Millimetres(), err)
		}
	}
	wantKey(t, second(FindScrew("4.7", unit.MM(30))), "hardware.unknown-size")
	wantKey(t, second(FindScrew("8", unit.MM(30))), "hardware.unknown-size")
	wantKey(t, second(FindScrew("4", unit.MM(5))), "hardware.no-length")
	if p, err := FindPin("panel pin 1.25", unit.MM(30)); err != nil || p.Length != unit.MM(30) {
		t.Errorf("pin: %+v %v", p, err)
	}
	if d, err := FindDowel(unit.MM(8), unit.MM(42)); err != nil || d.Length != unit.MM(40) {
		t.Errorf("dowel: %+v %v", d, err)
	}
	wantKey(t, second(FindDowel(unit.MM(7), unit.MM(42))), "hardware.unknown-size")
	wantKey(t, second(FindFitting("knob 99")), "hardware.unknown-fitting")
	wantKey(t, second(FindFitting("")), "hardware.unknown-fitting")
	wantKey(t, Fitting{Kind: "bell"}.Check(), "hardware.unknown-kind")
	wantKey(t, Fitting{Kind: Knob, Screws: 51}.Check(), "hardware.screw-count")
	wantKey(t, Fitting{Kind: Knob, Diameter: -1}.Check(), "figure.length-range")
}

func TestFittings(t *testing.T) {
	h, _ := FindFitting("butt hinge 50")
	if leaf, ok := h.Leaf(); !ok || leaf.Length != unit.MM(50) || leaf.Width != unit.MM(18) || leaf.Depth != 2750*um {
		t.Errorf("leaf %+v", leaf)
	}
	b, _ := FindFitting("turn-button 40")
	if reach, ok := b.Reach(); !ok || reach != unit.MM(20) {
		t.Errorf("reach %v", reach)
	}
	if _, ok := b.Leaf(); ok {
		t.Error("a turn-button has a leaf")
	}
	if _, ok := h.Reach(); ok {
		t.Error("a hinge reaches")
	}
}
