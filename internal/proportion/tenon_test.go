package proportion

import (
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// TestTenons: what makers write down for common parts (no published source).
func TestTenons(t *testing.T) {
	get := func(f figure.Of[unit.Length], err error) unit.Length {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		if f.Source.Status != figure.Practice || f.Source.Key == "" || f.Low > f.Value || f.High < f.Value {
			t.Errorf("figure %+v", f)
		}
		return f.Value
	}
	haunch, err := TenonHaunch(unit.MM(90), unit.MM(7), MetricStep)
	if err != nil {
		t.Fatal(err)
	}
	loose, err := LooseTenon(unit.MM(22), unit.MM(100), unit.MM(45), MetricStep)
	if err != nil {
		t.Fatal(err)
	}
	tight, err := LooseTenon(unit.MM(18), unit.MM(30), unit.MM(18), MetricStep)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want unit.Length
	}{
		{"tenon on 20", get(TenonThickness(unit.MM(20), MetricStep)), unit.MM(7)},
		{"tenon on 19.8", get(TenonThickness(19800*um, MetricStep)), unit.MM(7)},
		{"tenon on 3/4 in", get(TenonThickness(19050*um, InchStep)), unit.Inch / 4},
		{"tenon into 45", get(TenonLength(unit.MM(45), MetricStep)), unit.MM(30)},
		{"tenon into 15: 6 stay", get(TenonLength(unit.MM(15), MetricStep)), unit.MM(9)},
		{"shoulder on 80", get(TenonShoulder(unit.MM(80), MetricStep)), unit.MM(8)},
		{"shoulder on 20", get(TenonShoulder(unit.MM(20), MetricStep)), unit.MM(3)},
		{"shoulder on 300", get(TenonShoulder(unit.MM(300), MetricStep)), unit.MM(10)},
		{"haunch on 90", get(haunch.Shoulder, nil), unit.MM(30)},
		{"haunch of 7", get(haunch.Length, nil), unit.MM(7)},
		{"wall in 45", get(MortiseWall(unit.MM(45))), unit.MM(5)},
		{"wall in 18", get(MortiseWall(unit.MM(18))), 3600 * um},
		{"end for 10", get(MortiseEnd(unit.MM(10))), unit.MM(10)},
		{"end for 4", get(MortiseEnd(unit.MM(4))), unit.MM(6)},
		{"glue room", get(GlueRoom(), nil), 1500 * um},
		{"loose thick", get(loose.Thickness, nil), unit.MM(7)},
		{"loose wide", get(loose.Width, nil), unit.MM(28)},
		{"loose deep", get(loose.Into, nil), unit.MM(30)},
		{"loose margin", get(loose.Margin, nil), unit.MM(21)},
		{"in a narrow one", get(tight.Width, nil), unit.MM(15)},
		{"in a shallow one", get(tight.Into, nil), unit.MM(12)},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.name, c.got.Millimetres(), c.want.Millimetres())
		}
	}
	_, err = TenonLength(unit.MM(7), MetricStep)
	wantKey(t, err, "proportion.tenon-short")
	for _, f := range []func(unit.Length, unit.Length) error{
		func(a, s unit.Length) error { return second(TenonThickness(a, s)) },
		func(a, s unit.Length) error { return second(TenonLength(a, s)) },
		func(a, s unit.Length) error { return second(TenonShoulder(a, s)) },
		func(a, s unit.Length) error { return second(TenonHaunch(a, a, s)) },
		func(a, s unit.Length) error { return second(LooseTenon(a, a, a, s)) },
		func(a, _ unit.Length) error { return second(MortiseWall(a)) },
		func(a, _ unit.Length) error { return second(MortiseEnd(a)) },
	} {
		wantKey(t, f(0, MetricStep), "figure.length-range")
		wantKey(t, f(10*unit.Metre, MetricStep), "figure.length-range")
	}
}
