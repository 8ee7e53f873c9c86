package proportion

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/unit"
)

// TestCornersOfTheTrade: what makers use for common thicknesses (no published source).
func TestCornersOfTheTrade(t *testing.T) {
	tongue, err := TongueFor(unit.MM(18), MetricStep)
	if err != nil || tongue.Thickness.Value != unit.MM(6) || tongue.Length.Value != unit.MM(6) || tongue.Length.High != unit.MM(9) {
		t.Errorf("tongue on 18: %+v %v", tongue, err)
	}
	if soft, hard := Slope(true), Slope(false); soft.Value != 6 || hard.Value != 8 {
		t.Errorf("slopes %d and %d", soft.Value, hard.Value)
	}
	for _, c := range []struct {
		soft bool
		want unit.Length
	}{{true, unit.MM(3)}, {false, 2250 * um}} {
		if l, err := Lean(unit.MM(18), c.soft); err != nil || l.Value != c.want || l.Low > l.Value || l.High < l.Value {
			t.Errorf("lean over 18: %+v %v", l, err)
		}
	}
	if l, err := Lap(unit.MM(20), MetricStep); err != nil || l.Value != unit.MM(4) {
		t.Errorf("lap of 20: %+v %v", l, err)
	}
	if l, err := Lap(unit.MM(12), MetricStep); err != nil || l.Value != unit.MM(3) {
		t.Errorf("lap of 12: %+v %v", l, err)
	}
	slide, err := SlidingTail(unit.MM(18), unit.MM(18), MetricStep)
	if err != nil || slide.Neck.Value != unit.MM(12) || slide.Depth.Value != unit.MM(6) {
		t.Errorf("slide: %+v %v", slide, err)
	}
	spline, err := MitreSpline(unit.MM(18), unit.MM(25), MetricStep)
	if err != nil || spline.Thickness.Value != unit.MM(6) || spline.Depth.Value != unit.MM(9) || spline.Heel.Value != unit.MM(4) {
		t.Errorf("spline: %+v %v", spline, err)
	}
	// A case's corner 200 high takes four keys, a frame's one.
	for _, c := range []struct {
		high unit.Length
		want int
	}{{unit.MM(200), 4}, {unit.MM(60), 2}, {unit.MM(12), 1}} {
		if k, err := MitreKeys(c.high, unit.MM(12), unit.MM(17), MetricStep); err != nil || k.Count != c.want || k.Thickness.Value != unit.MM(3) || k.Depth.Value != 11500*um {
			t.Errorf("keys in %v: %+v %v", c.high.Millimetres(), k, err)
		}
	}
	wantKey(t, second(TongueFor(0, MetricStep)), "figure.length-range")
	wantKey(t, second(MitreSpline(unit.MM(18), 0, MetricStep)), "figure.length-range")
	wantKey(t, second(Lean(0, true)), "figure.length-range")
}

// TestTailCount: a tail for every two thicknesses, fewer where they grow too narrow.
func TestTailCount(t *testing.T) {
	for _, c := range []struct {
		width, thick, pin, lean unit.Length
		want                    int
	}{
		{unit.MM(100), unit.MM(12), unit.MM(6), 1500 * um, 4},
		{unit.MM(60), unit.MM(10), unit.MM(5), 1500 * um, 3},
		{unit.MM(30), unit.MM(12), unit.MM(6), 1500 * um, 1},
		{unit.MM(60), unit.MM(10), unit.MM(14), 1500 * um, 2}, // three would keep 60 - 56 = 4 in all
	} {
		if n, err := TailCount(c.width, c.thick, c.pin, c.pin, c.lean); err != nil || n != c.want {
			t.Errorf("%+v: %d %v", c, n, err)
		}
	}
	wantKey(t, second(TailCount(unit.MM(20), unit.MM(12), unit.MM(8), unit.MM(8), unit.MM(1))), "proportion.tails-too-narrow")
}

// TestMitreTriangle: against the 3-4-5 triangle, exactly, and against math.Hypot.
func TestMitreTriangle(t *testing.T) {
	if got := MitreLength(unit.MM(30), unit.MM(40)); got != unit.MM(50) {
		t.Error(got)
	}
	if a, b := MitreAlong(unit.MM(10), unit.MM(30), unit.MM(40)), MitreLeg(unit.MM(10), unit.MM(40), unit.MM(30)); a != unit.MM(6) || b != 12500*um {
		t.Error(a, b)
	}
	if MitreAlong(unit.MM(1), 0, 0) != 0 || MitreLeg(unit.MM(1), 0, unit.MM(1)) != 0 {
		t.Error("triangles without sides")
	}
	r := rand.New(rand.NewPCG(11, 1))
	t.Log("seed 11")
	for range 2000 {
		l, a, b := unit.Length(r.Int64N(1e9)), unit.Length(1+r.Int64N(1e9)), unit.Length(1+r.Int64N(1e9))
		d := math.Hypot(float64(a), float64(b))
		for _, c := range [][2]float64{
			{float64(MitreLength(a, b)), d},
			{float64(MitreAlong(l, a, b)), float64(l) * float64(a) / d},
			{float64(MitreLeg(l, a, b)), float64(l) * d / float64(a)},
		} {
			if math.Abs(c[0]-c[1]) > 1+1e-12*c[1] {
				t.Fatalf("%v of %v %v: %v, %v", l, a, b, c[0], c[1])
			}
		}
	}
}
