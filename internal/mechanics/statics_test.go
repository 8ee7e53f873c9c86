package mechanics_test

import (
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

func near(got, want, by float64) bool { return math.Abs(got-want) <= by }

// TestTippingByHand: a chest of 20 kg, 400 deep and 800 high, its centre 200 behind
// the front feet; two drawers of 4 kg whose centres are 180 behind. Shut: 20 x 200 +
// 8 x 180 = 5440 kg mm = 53.35 N m. One out by 350: 4 x (180-350) = -680, so 4000 +
// 720 - 680 = 4040; both out: 4000 - 1360 = 2640; three times as heavy, 12 kg each:
// 4000 - 24 x 170 = -80: it falls.
func TestTippingByHand(t *testing.T) {
	load := func(kg float64, behind, high int64) mechanics.Load {
		return mechanics.Load{Mass: mechanics.Mass(kg), Behind: unit.MM(behind), High: unit.MM(high)}
	}
	body := load(20, 200, 400)
	for _, c := range []struct {
		name  string
		loads []mechanics.Load
		kgmm  float64
	}{
		{"shut", []mechanics.Load{body, load(4, 180, 300), load(4, 180, 500)}, 5440},
		{"one out", []mechanics.Load{body, load(4, 180, 300), load(4, -170, 500)}, 4040},
		{"both out", []mechanics.Load{body, load(4, -170, 300), load(4, -170, 500)}, 2640},
		{"both out, loaded", []mechanics.Load{body, load(12, -170, 300), load(12, -170, 500)}, -80},
	} {
		s := mechanics.Stand(c.loads)
		want := c.kgmm * 9.80665
		if !near(float64(s.Holds), want, 1e-6) {
			t.Errorf("%s: holds by %g, want %g", c.name, s.Holds, want)
		}
		if got := float64(s.Pull(unit.MM(700))); !near(got, max(0, want)/700, 1e-9) {
			t.Errorf("%s: pull %g", c.name, got)
		}
		if got := float64(s.Press(unit.MM(350))); !near(got, max(0, want)/350, 1e-9) {
			t.Errorf("%s: press %g", c.name, got)
		}
	}
	// 20 kg alone leans until its centre stands over the feet: atan(200/400).
	if got := float64(mechanics.Stand([]mechanics.Load{body}).Lean()); !near(got, 26.565, 0.001) {
		t.Errorf("leans %g", got)
	}
}

// TestJamByHand takes a drawer apart: length 400 in its opening, pulled at e off the
// middle. The couple P e needs corner forces N = P e/400; they rub with 2 mu N = mu
// P e/200. At mu 0.4 and e 500 that is P itself: it stands still. At 499 a little of
// the pull is left.
func TestJamByHand(t *testing.T) {
	const length, mu = 400.0, 0.4
	limit := mechanics.JamsBeyond(unit.MM(400), mu).Millimetres()
	for _, e := range []float64{limit - 1, limit, limit + 1} {
		left := 1 - 2*mu*(e/length) // of a pull of one
		if (e < limit) != (left > 1e-12) {
			t.Errorf("at %g off the middle %g of the pull is left", e, left)
		}
	}
	// A drawer 900 wide, 400 long: pulled at the corner (450 off) it runs at 0.4, and
	// sticks at 0.5, where the limit is 400.
	if !mechanics.NeverJams(unit.MM(900), unit.MM(400), 0.4) || mechanics.NeverJams(unit.MM(900), unit.MM(400), 0.5) {
		t.Error("corner pull")
	}
	// At 0.4 it needs 360 of its length in the opening.
	if got := mechanics.SticksAt(unit.MM(900), 0.4); got != unit.MM(360) {
		t.Errorf("sticks at %v", got)
	}
	if got := mechanics.Wobble(unit.MM(1), unit.MM(250), unit.MM(200)); got != 800*unit.Micrometre {
		t.Errorf("wobble %v", got)
	}
}

// TestRackingByHand: a bookcase 1000 high pushed by 120 N at its top has 120 N m to
// carry; four corners and two fixed shelves (four ends) carry 15 N m each.
func TestRackingByHand(t *testing.T) {
	if got := mechanics.RackingMoment(120, unit.MM(1000), 8); got != 15000 {
		t.Errorf("%g N mm", got)
	}
	// A ply back 6 thick, 800 wide, G 700 MPa: 120 x 1000 / (700 x 6 x 800) = 0.0357.
	if got := mechanics.PanelShift(120, unit.MM(800), unit.MM(1000), unit.MM(6), 700); !near(got.Millimetres(), 0.035714, 1e-6) {
		t.Errorf("shift %v", got)
	}
	// Pins 100 apart: 120/800 x 100 = 15 N each.
	if got := mechanics.PanelFasteners(120, unit.MM(800), unit.MM(100)); !near(float64(got), 15, 1e-9) {
		t.Errorf("%g N", got)
	}
}

// TestDowelsByHand: two dowels 20 and 60 from the pressed edge, 3000 N each: the far
// one pulls 3000, the near one 1000: 3000 x 60 + 1000 x 20 = 200 N m.
func TestDowelsByHand(t *testing.T) {
	if got := mechanics.DowelMoment(3000, []unit.Length{unit.MM(20), unit.MM(60)}); !near(float64(got), 200000, 1e-6) {
		t.Errorf("%g", got)
	}
}

// TestFlattenByHand: the weight that flattens a cup, put on the cupped strip as a
// beam, bends it by the cup's own rise.
func TestFlattenByHand(t *testing.T) {
	k := mechanics.Curvature(2e-4)
	w, l, h := unit.MM(300), unit.MM(400), unit.MM(12)
	force := mechanics.WeightToFlatten(k, w, l, h, 900)
	sag, err := mechanics.Beam{Span: w, Width: l, Thickness: h, Stiff: 900, Loading: mechanics.Spread, Ends: mechanics.Supported}.Sag(force)
	if err != nil || !near(sag.Whole().Millimetres(), k.Rise(w).Millimetres(), 1e-5) {
		t.Errorf("%g N: sag %v, rise %v (%v)", force, sag.Whole(), k.Rise(w), err)
	}
}

// TestLoadsInUse: factors are taken out as they say, and what lacks a datum refuses.
func TestLoadsInUse(t *testing.T) {
	a := mechanics.Allowable(600)
	if a.Value != 120 || a.Low != 100 || a.High != 120 {
		t.Errorf("%+v", a)
	}
	if f, err := mechanics.FrictionOf(mechanics.DryWood); err != nil || f.Low != 0.25 || f.High != 0.5 {
		t.Errorf("%+v %v", f, err)
	}
	if _, err := mechanics.FrictionOf("ice"); err == nil {
		t.Error("ice")
	}
	if k, err := mechanics.Creep(mechanics.CreepSolid, mechanics.Dry); err != nil || k.Value != 0.6 || k.High != 1 {
		t.Errorf("%+v %v", k, err)
	}
	if _, err := mechanics.Creep(mechanics.CreepHardboard, mechanics.Outdoors); err == nil {
		t.Error("hardboard out of doors")
	}
	if _, err := (mechanics.Beam{}).Sag(1); err == nil {
		t.Error("no beam")
	}
	if _, err := (mechanics.TwoLayer{}).Bow(); err == nil {
		t.Error("no layers")
	}
	if _, err := mechanics.SpanFor(0, 1, 1, 1); err == nil {
		t.Error("no stiffness")
	}
}
