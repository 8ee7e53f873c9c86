package mechanics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// strips finds the curvature of a stack of thin strips glued face to face, each with
// its own modulus and free strain, by balancing force and moment strip by strip: an
// independent way to the two-layer formula.
func strips(thick, stiff, free []float64) float64 {
	const each = 4000
	var ea, es, ei, n, m, z float64
	for i := range thick {
		dz := thick[i] / each
		for range each {
			mid := z + dz/2
			ea += stiff[i] * dz
			es += stiff[i] * dz * mid
			ei += stiff[i] * (dz*mid*mid + dz*dz*dz/12)
			n += stiff[i] * dz * free[i]
			m += stiff[i] * dz * free[i] * mid
			z += dz
		}
	}
	return (m*ea - n*es) / (ei*ea - es*es)
}

// TestBowAgainstStrips: Timoshenko's two-layer formula against the strips, over
// random thicknesses, moduli and strains.
func TestBowAgainstStrips(t *testing.T) {
	worst := 0.0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 5))
		t1, t2 := 0.5+20*r.Float64(), 0.5+20*r.Float64()
		e1, e2 := 200+14000*r.Float64(), 200+14000*r.Float64()
		apart := (r.Float64() - 0.5) * 0.02
		pair := mechanics.TwoLayer{First: unit.FromMillimetres(t1), Second: unit.FromMillimetres(t2),
			StiffFirst: mechanics.Stress(e1), StiffSecond: mechanics.Stress(e2), Apart: mechanics.Strain(apart)}
		k, err := pair.Bow()
		if err != nil {
			t.Fatal(err)
		}
		want := strips([]float64{t1, t2}, []float64{e1, e2}, []float64{0, apart})
		off := math.Abs(float64(k)-want) / math.Abs(want)
		worst = max(worst, off)
		if off > 1e-5 {
			t.Errorf("seed %d: %g, strips %g", seed, k, want)
		}
	}
	t.Logf("worst relative difference %.2g", worst)
}

// TestEvenBowAgainstStrips: a free strain that changes evenly, in 100 strips.
func TestEvenBowAgainstStrips(t *testing.T) {
	var thick, stiff, free []float64
	for i := range 100 {
		thick, stiff, free = append(thick, 0.18), append(stiff, 900), append(free, 0.0073*(float64(i)+0.5)/100)
	}
	got, want := float64(mechanics.EvenBow(0.0073, unit.MM(18))), strips(thick, stiff, free)
	if math.Abs(got-want) > 2e-4*want {
		t.Errorf("%g, strips %g", got, want)
	}
}

// series is the moisture of a slab that starts at 1 with both faces held at 0: the
// classical solution, sum of 4/(pi n) sin(n pi x/h) exp(-n2 pi2 D t/h2), n odd.
func series(x, fourier float64) float64 {
	sum := 0.0
	for n := 1; n < 400; n += 2 {
		k := float64(n) * math.Pi
		sum += 4 / k * math.Sin(k*x) * math.Exp(-k*k*fourier)
	}
	return sum
}

// TestSlabAgainstSeries: both faces open without hindrance, and one face shut, which
// is half of a slab of twice the thickness.
func TestSlabAgainstSeries(t *testing.T) {
	const h, d = 20.0, 1e-10
	for _, shut := range []bool{false, true} {
		s := mechanics.Slab{Thickness: unit.MM(20), Spreads: d, Machined: mechanics.Face{Open: true}, Back: mechanics.Face{Open: !shut}, Core: 1, Shell: 1}
		states, err := s.Follow(1, 15*24)
		if err != nil {
			t.Fatal(err)
		}
		whole := h
		if shut {
			whole = 2 * h
		}
		worst := 0.0
		for _, m := range states[24:] {
			fourier := d * 1e6 * float64(m.After) * 3600 / (whole * whole)
			for i := range 20 { // the middles of the layers
				x := (float64(i) + 0.5) / 20
				worst = max(worst, math.Abs(float64(m.At(mechanics.Ratio(x)))-series(x*h/whole, fourier)))
			}
		}
		t.Logf("shut %v: worst difference %.4f of the step, from 1 to 15 days", shut, worst)
		if worst > 0.008 {
			t.Error("the layers leave the series solution")
		}
	}
	if tau := mechanics.TimeConstant(unit.MM(20), d) / 24; math.Abs(float64(tau)-4.69) > 0.01 {
		t.Errorf("time constant %g days", tau)
	}
}

// TestSlabWeighs: what a slab loses passed through its faces, and it comes to the
// air's moisture content at last; with finish on (no open face) nothing moves.
func TestSlabWeighs(t *testing.T) {
	s := mechanics.Slab{Thickness: unit.MM(8), Spreads: 3e-10, Film: 2e-7, Machined: mechanics.Face{Open: true, Deep: unit.MM(3)}, Cut: 0.4, Land: unit.MM(8), Back: mechanics.Face{Open: true}, Core: 11, Shell: 11, Air: 8}
	states, err := s.Follow(6, 400)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range states {
		if i > 0 && m.Mean() > states[i-1].Mean()+1e-9 {
			t.Fatalf("it takes up moisture from drier air after %g h", m.After)
		}
	}
	if last := states[len(states)-1].Mean(); math.Abs(float64(last)-8) > 0.01 {
		t.Errorf("after 100 days %g", last)
	}
	s.Machined.Open, s.Back.Open = false, false
	states, _ = s.Follow(24, 60)
	if last := states[59].Mean(); math.Abs(float64(last)-11) > 1e-9 {
		t.Errorf("shut in, %g", last)
	}
}

// TestPowers: our own exponential and logarithm against the standard library's.
func TestPowers(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		x := (r.Float64() - 0.5) * 200
		if got, want := mechanics.Exp(x), math.Exp(x); math.Abs(got-want) > 8e-16*want*max(1, math.Abs(x)) {
			t.Errorf("e to the %g: %g, want %g", x, got, want)
		}
		y := math.Exp((r.Float64() - 0.5) * 40)
		if got, want := mechanics.Ln(y), math.Log(y); math.Abs(got-want) > 1e-15*max(1, math.Abs(want)) {
			t.Errorf("ln %g: %g, want %g", y, got, want)
		}
	}
	if mechanics.Exp(800) != math.Inf(1) || mechanics.Exp(-800) != 0 || !math.IsNaN(mechanics.Exp(math.NaN())) || !math.IsNaN(mechanics.Ln(0)) {
		t.Error("ends")
	}
}
