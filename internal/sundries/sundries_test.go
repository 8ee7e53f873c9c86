package sundries_test

import (
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// TestClamps: a joint of 3/4 by 48 in at 175 psi wants 6300 lbf, five to six clamps
// of 1000 to 1500 lbf (arithmetic on a glue maker's pressure).
func TestClamps(t *testing.T) {
	whole := sundries.ClampForce(mechanics.PSI(175), 48*unit.Inch, unit.Inch*3/4)
	if math.Abs(whole.Pounds()-6300) > 0.5 {
		t.Errorf("%g lbf", whole.Pounds())
	}
	for each, want := range map[float64]int{1500: 5, 1250: 6, 1000: 7, 10000: 2} {
		if n, err := sundries.Clamps(whole, mechanics.Pounds(each)); err != nil || n != want {
			t.Errorf("of %g lbf: %d (%v), want %d", each, n, err, want)
		}
	}
	if _, err := sundries.Clamps(whole, 0); err == nil {
		t.Error("clamps without force")
	}
	if p := sundries.Pressing(true); p.Low <= sundries.Pressing(false).High {
		t.Errorf("%+v", p)
	}
}

// TestClampTime: the magazine's rule: an hour at 70 F, doubled for each 15 F below.
func TestClampTime(t *testing.T) {
	for f, want := range map[float64]float64{70: 60, 55: 120, 40: 240, 90: 60} {
		if m, err := sundries.ClampTime(timber.Temperature((f - 32) / 1.8)); err != nil || math.Abs(float64(m.Value)-want) > 1e-9 {
			t.Errorf("%g F: %g min (%v), want %g", f, m.Value, err, want)
		}
	}
	if _, err := sundries.ClampTime(2); err == nil {
		t.Error("sets at 2 degrees")
	}
}

// TestFinish: a litre on 10 square metres lies a tenth of a millimetre thick.
func TestFinish(t *testing.T) {
	if got := sundries.WetFilm(10); got != unit.Millimetre/10 {
		t.Errorf("%v", got)
	}
	if got := sundries.Litres(5, 2, 10); got != 1 {
		t.Errorf("%g l", got)
	}
	if sundries.WetFilm(0) != 0 || sundries.Litres(1, 1, 0) != 0 {
		t.Error("no coverage")
	}
}
