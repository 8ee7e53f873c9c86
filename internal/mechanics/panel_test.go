package mechanics_test

import (
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// TestStripShare: beside a plate that is held at four edges under a spread load, w = alpha
// q a4/D with D = E h3/(12 (1 - 0.3 x 0.3)): alpha 0.00406 for a square, 0.00564 at 1.2,
// 0.00772 at 1.5, 0.01013 at 2, 0.01223 at 3 (Timoshenko and Woinowsky-Krieger, Theory of
// Plates and Shells, 2nd edition 1959, Table 8; from memory). The strips sag 5/32 q a4/(E h3)
// times the share: never less than the plate, and never more than the one strip.
func TestStripShare(t *testing.T) {
	const e = mechanics.Stress(9000)
	for ratio, alpha := range map[float64]float64{1: 0.00406, 1.2: 0.00564, 1.5: 0.00772, 2: 0.01013, 3: 0.01223} {
		plate := alpha * 12 * (1 - 0.3*0.3)
		share := float64(mechanics.StripShare(400*unit.Millimetre, unit.FromMillimetres(400*ratio), e, e))
		if strips := 5.0 / 32 * share; strips < plate || share > 1 {
			t.Errorf("%.1f times as long: strips %.4f, plate %.4f", ratio, strips, plate)
		}
	}
	if got := mechanics.StripShare(400*unit.Millimetre, 400*unit.Millimetre, e, e); got != 0.5 {
		t.Errorf("a square panel, alike both ways: %v", got)
	}
	// Three times as stiff along the span: 3 / (3 + 1). Half as far the other way: 1 / (1 + 16).
	for want, got := range map[float64]mechanics.Ratio{
		0.75:     mechanics.StripShare(400*unit.Millimetre, 400*unit.Millimetre, 3*e, e),
		1.0 / 17: mechanics.StripShare(400*unit.Millimetre, 200*unit.Millimetre, e, e),
		1:        mechanics.StripShare(400*unit.Millimetre, 0, e, e),
	} {
		if math.Abs(float64(got)-want) > 1e-12 {
			t.Errorf("%v, want %v", got, want)
		}
	}
}
