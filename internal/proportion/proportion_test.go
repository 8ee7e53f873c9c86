package proportion

import (
	"errors"
	"math/rand/v2"
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

// TestFractionsOfTheTrade: what makers write down for common thicknesses (no
// published source).
func TestFractionsOfTheTrade(t *testing.T) {
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
	for _, c := range []struct {
		name      string
		got, want unit.Length
	}{
		{"housing in 17.6", get(HousingDepth(17600*um, MetricStep)), unit.MM(6)},
		{"housing in 18", get(HousingDepth(unit.MM(18), MetricStep)), unit.MM(6)},
		{"housing in 14", get(HousingDepth(unit.MM(14), MetricStep)), 4500 * um},
		{"housing in 8", get(HousingDepth(unit.MM(8), MetricStep)), 2500 * um},
		{"housing in 3/4 in", get(HousingDepth(19050*um, InchStep)), unit.Inch / 4},
		{"groove for 5.6", get(GrooveWidth(5600 * um)), 5700 * um},
		{"groove for 17.6", get(GrooveWidth(17600 * um)), 17700 * um},
		{"halving in 38", get(HalvingDepth(unit.MM(38), MetricStep)), 19500 * um},
		{"stopped before the edge of 14", get(StoppedEnd(unit.MM(14), MetricStep)), unit.MM(7)},
		{"pin through 12", get(PinLength(unit.MM(12))), unit.MM(30)},
		{"dowel in 3/4 in", get(DowelDiameter(19050*um, []unit.Length{6350 * um, 9525 * um, 12700 * um})), 9525 * um},
		{"dowel in 18", get(DowelDiameter(unit.MM(18), []unit.Length{unit.MM(6), unit.MM(8), unit.MM(10)})), unit.MM(8)},
		{"dowel into a face of 18", get(DowelInto(unit.MM(18))), unit.MM(14)},
		{"knob on 80", get(KnobHeight(unit.MM(80), MetricStep)), unit.MM(44)},
		{"between housings in 17.6", get(LeastBetween(17600*um, MetricStep)), unit.MM(7)},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.name, c.got.Millimetres(), c.want.Millimetres())
		}
	}
	d, err := DowelLength(9525*um, InchStep)
	if err != nil || d.Length.Value != unit.Inch*5/2 || d.Into.Value != unit.Inch*5/4 || d.Hole.Value <= d.Into.Value {
		t.Errorf("3/8 in dowel: %+v %v, want 2-1/2 in", d, err)
	}
	g, err := BottomGroove(unit.MM(10), 5600*um, MetricStep)
	if err != nil || g.Depth.Value != unit.MM(5) || g.Width.Value != 5700*um || g.Up.Value != unit.MM(10) {
		t.Errorf("groove in 10: %+v %v", g, err)
	}
	// Two housings of 6 in 17.6 leave 5.6: less than the least; 5 leave 7.6: enough.
	least, _ := LeastBetween(17600*um, MetricStep)
	if 5600*um >= least.Value || 7600*um < least.Value {
		t.Errorf("back to back in 17.6: least %v must lie between 5.6 and 7.6", least.Value.Millimetres())
	}
}

func TestRebates(t *testing.T) {
	r, err := CornerRebate(unit.MM(18), unit.MM(12), MetricStep)
	if err != nil || r.Width.Value != unit.MM(12) || r.Tongue.Value != unit.MM(6) || r.Depth.Value != unit.MM(12) {
		t.Errorf("corner: %+v %v", r, err)
	}
	r, err = BackRebate(unit.MM(14), 5600*um, MetricStep)
	if err != nil || r.Width.Value != unit.MM(7) || r.Depth.Value != 5600*um || r.Tongue.Value != unit.MM(7) {
		t.Errorf("back: %+v %v", r, err)
	}
	wantKey(t, second(CornerRebate(unit.MM(6), unit.MM(12), MetricStep)), "proportion.tongue-too-thin")
	wantKey(t, second(BottomGroove(unit.MM(3), unit.MM(3), MetricStep)), "proportion.side-too-thin")
	wantKey(t, second(DowelDiameter(unit.MM(9), []unit.Length{unit.MM(6)})), "proportion.no-dowel")
	wantKey(t, second(DowelDiameter(unit.MM(9), nil)), "proportion.no-dowel")
	for _, bad := range []unit.Length{-1, 0, 10 * unit.Metre} {
		wantKey(t, second(HousingDepth(bad, MetricStep)), "figure.length-range")
		wantKey(t, second(PinSpacing(bad)), "figure.length-range")
		wantKey(t, second(BoxJoint(bad, unit.MM(6))), "figure.length-range")
		wantKey(t, second(BestBoxJoint(bad, unit.MM(6), nil)), "figure.length-range")
	}
}

// TestFingers: 0.365 in does not divide 4 in; 6.35 into 57.15 gives nine.
func TestFingers(t *testing.T) {
	f, err := BoxJoint(4*unit.Inch, unit.Inch*365/1000)
	if err != nil || f.Last == 0 || f.Whole != 10 {
		t.Errorf("0.365 in into 4 in: %+v %v", f, err)
	}
	f, err = BoxJoint(57150*um, 6350*um)
	if err != nil || f.Whole != 9 || f.Last != 0 || !f.Symmetrical() {
		t.Errorf("6.35 into 57.15: %+v %v", f, err)
	}
	f, err = BoxJoint(unit.MM(80), unit.MM(6)) // 13 and 2 left: less than half, so the last is 8
	if err != nil || f.Whole != 12 || f.Last != unit.MM(8) || f.Count() != 13 {
		t.Errorf("6 into 80: %+v %v", f, err)
	}
	f, err = BoxJoint(unit.MM(81), unit.MM(6))
	if err != nil || f.Whole != 13 || f.Last != unit.MM(3) {
		t.Errorf("6 into 81: %+v %v", f, err)
	}
	wantKey(t, second(BoxJoint(unit.MM(10), unit.MM(6))), "proportion.fingers")
	wantKey(t, second(BoxJoint(unit.Metre, unit.MM(1))), "proportion.fingers")
	wantKey(t, second(BestBoxJoint(unit.MM(80), unit.MM(12), nil)), "proportion.no-finger-cutter")
	best, err := BestBoxJoint(unit.MM(72), unit.MM(12), []unit.Length{unit.MM(3), unit.MM(6), unit.MM(8), unit.MM(10), unit.MM(20)})
	if err != nil || best.Finger.Value != unit.MM(8) || !best.Symmetrical() {
		t.Errorf("best in 72 of 12: %+v %v, want nine of 8", best, err)
	}
}

// TestFingerLaws: edges rise, the last is the width, the odd one is from half a
// finger to less than one and a half.
func TestFingerLaws(t *testing.T) {
	const seed = 40
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 3000 {
		width, cutter := unit.MM(20)+unit.Length(rng.Int64N(2e8)), unit.MM(1)+unit.Length(rng.Int64N(2e7))
		f, err := BoxJoint(width, cutter)
		if err != nil {
			continue
		}
		edges := f.Edges()
		if len(edges) != f.Count() || edges[len(edges)-1] != width {
			t.Fatalf("seed %d step %d: %d by %d: %v", seed, i, width, cutter, edges)
		}
		last := unit.Length(0)
		for _, e := range edges {
			w := e - last
			if 2*w < cutter || 2*w >= 3*cutter {
				t.Fatalf("seed %d step %d: finger %d of cutter %d", seed, i, w, cutter)
			}
			last = e
		}
	}
}

// TestSpacingLaws: symmetrical, within the ends, never too far apart.
func TestSpacingLaws(t *testing.T) {
	const seed = 41
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 2000 {
		length := unit.MM(1) + unit.Length(rng.Int64N(2e9))
		for _, by := range []func() (Spacing, error){
			func() (Spacing, error) { return PinSpacing(length) },
			func() (Spacing, error) { return ScrewSpacing(length) },
			func() (Spacing, error) { return DowelSpacing(length, unit.MM(8)) },
		} {
			s, err := by()
			if err != nil {
				t.Fatal(seed, i, err)
			}
			n := len(s.At)
			for j, at := range s.At {
				if (at + s.At[n-1-j] - length).Abs() > 1 {
					t.Fatalf("seed %d step %d: %v in %d is lopsided", seed, i, s.At, length)
				}
				if j > 0 && at-s.At[j-1] > s.Apart.Value {
					t.Fatalf("seed %d step %d: %d apart", seed, i, at-s.At[j-1])
				}
				if n > 1 && (at < s.Ends.Value || length-at < s.Ends.Value) {
					t.Fatalf("seed %d step %d: %d too near the end of %d", seed, i, at, length)
				}
			}
			if n > 2 && (s.At[n-1]-s.At[0])/unit.Length(n-2) <= s.Apart.Value {
				t.Fatalf("seed %d step %d: %d where fewer would do in %d", seed, i, n, length)
			}
		}
	}
	if s, err := PinSpacing(unit.MM(124)); err != nil || len(s.At) != 3 || s.At[1] != unit.MM(62) {
		t.Errorf("pins along 124: %v %v, want 12, 62, 112", s.At, err)
	}
	wantKey(t, second(spaced("x", unit.Metre, ruled("a", 1, 1, 1), ruled("b", unit.MM(1), 1, 1))), "proportion.too-many-fasteners")
}

func TestFronts(t *testing.T) {
	if at, _, err := Knobs(unit.MM(400)); err != nil || len(at) != 1 || at[0] != unit.MM(200) {
		t.Errorf("400: %v %v", at, err)
	}
	if at, from, err := Knobs(unit.MM(900)); err != nil || len(at) != 2 || at[0] != unit.MM(150) || at[1] != unit.MM(750) || from.Low >= from.High {
		t.Errorf("900: %v %v", at, err)
	}
	if s := FingerScoop(); s.Below.Value != unit.MM(20) || s.Depth.Value != unit.MM(15) {
		t.Errorf("scoop %+v", s)
	}
}

// TestSensibleEverywhere: over all usual thicknesses a joint leaves wood on both
// sides and is a multiple of the step.
func TestSensibleEverywhere(t *testing.T) {
	for _, step := range []unit.Length{MetricStep, InchStep} {
		for th := unit.MM(9); th <= unit.MM(60); th += 300 * um {
			h, err := HousingDepth(th, step)
			if err != nil || h.Value%step != 0 || 4*h.Value < th-4*step || h.Value > th*2/5 {
				t.Fatalf("housing in %v: %v %v", th, h.Value, err)
			}
			r, err := CornerRebate(th, th, step)
			if err != nil || r.Depth.Value+r.Tongue.Value != th || r.Tongue.Value%step != 0 {
				t.Fatalf("rebate in %v: %+v %v", th, r, err)
			}
			g, err := BottomGroove(th, unit.MM(4), step)
			if err != nil || g.Depth.Value >= th || g.Depth.Value%step != 0 {
				t.Fatalf("groove in %v: %+v %v", th, g, err)
			}
		}
	}
}
