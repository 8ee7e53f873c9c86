package mechanics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// storey is a plywood board 330 wide over 850, as thick as given in tenths, under so many
// newtons, of 9 GPa.
func storey(thick int64, load mechanics.Force) mechanics.Storey {
	return mechanics.Storey{Spread: load, Beam: mechanics.Beam{
		Span: unit.MM(850), Width: unit.MM(330), Thickness: unit.MM(thick) / 10, Stiff: 9000, Ends: mechanics.Supported,
	}}
}

// TestStackByHand: 55.3 kg, 542 N, on 850 of plywood 17.6 thick bend it 5 W L3/(384 E I),
// 3.2 mm (Roark's Formulas for Stress and Strain). Two such rows one above the other with
// an upright between bend 3.2 each: the upright bears nothing, and holds nothing up. It
// cannot be 6.4 below, since the upper board's own row bends it 3.2 and no farther.
// Only over a board that has no stiffness of its own does all come down, 5/8 W in the
// middle, which bends the lower 5/8 / 48 = 5/384 W: as far again, 6.4; and a board that
// does not bend props the upper one with 5/8 W.
func TestStackByHand(t *testing.T) {
	const row = 542.0
	const inertia = 330 * 17.6 * 17.6 * 17.6 / 12
	const alone = 5 * row * 850 * 850 * 850 / (384 * 9000 * inertia)
	for _, c := range []struct {
		name   string
		boards []mechanics.Storey
		sags   []float64
		hands  []float64
	}{
		{"one", []mechanics.Storey{storey(176, row)}, []float64{alone}, []float64{0}},
		{"two alike", []mechanics.Storey{storey(176, row), storey(176, row)}, []float64{alone, alone}, []float64{0, 0}},
		{"a top that carries nothing", []mechanics.Storey{storey(176, row), storey(176, row), storey(176, 0)}, []float64{alone, alone, 0}, []float64{0, 0, 0}},
		{"twice the load above", []mechanics.Storey{storey(176, row), storey(176, 2*row)}, []float64{1.5 * alone, 1.5 * alone}, []float64{row * 5 / 16, 0}},
		{"all three heavier upwards", []mechanics.Storey{storey(176, 0), storey(176, row), storey(176, 2*row)}, []float64{alone, alone, alone}, []float64{row * 5 / 8, row * 5 / 8, 0}},
		{"an upper of hardly any stiffness", []mechanics.Storey{storey(176, row), storey(10, row)}, []float64{2 * alone, 2 * alone}, []float64{row * 5 / 8, 0}},
		{"a lower that does not bend", []mechanics.Storey{storey(9000, row), storey(176, row)}, []float64{0, 0}, []float64{row * 5 / 8, 0}},
	} {
		sags, hands, err := mechanics.Stack(c.boards)
		if err != nil {
			t.Fatal(err)
		}
		for i := range c.boards {
			if !near(sags[i].Millimetres(), c.sags[i], 0.003) || !near(float64(hands[i]), c.hands[i], 0.2) {
				t.Errorf("%s, board %d: sags %.4f under %.2f N, by hand %.4f and %.2f", c.name, i, sags[i].Millimetres(), hands[i], c.sags[i], c.hands[i])
			}
		}
	}
	if _, _, err := mechanics.Stack([]mechanics.Storey{{}}); err == nil {
		t.Error("a board without sizes")
	}
}

// TestStackByDifferences: two boards in 40 steps by finite differences, joined in the
// middle by a rod that gives as little as is wanted: the same sags, for any two boards of
// which the upper would bend farther.
func TestStackByDifferences(t *testing.T) {
	const seed = 26
	r := rand.New(rand.NewPCG(seed, seed))
	for range 20 {
		low, high := storey(120+r.Int64N(200), mechanics.Force(r.Float64()*400)), storey(80+r.Int64N(120), mechanics.Force(100+r.Float64()*900))
		sags, _, err := mechanics.Stack([]mechanics.Storey{low, high})
		if err != nil {
			t.Fatal(err)
		}
		wantLow, wantHigh := differences(low, high)
		if math.Abs(sags[0].Millimetres()-wantLow) > 0.004*wantLow+0.001 || math.Abs(sags[1].Millimetres()-wantHigh) > 0.004*wantHigh+0.001 {
			t.Errorf("seed %d: %v and %v, by differences %.4f and %.4f", seed, sags[0], sags[1], wantLow, wantHigh)
		}
	}
}

// differences bends two boards in steps of a fortieth of their span, w”” = q/(E I), ends
// supported, with a force between their middles that is found by halving: as much as
// leaves the upper no lower than the lower.
func differences(low, high mechanics.Storey) (a, b float64) {
	from, to := 0.0, float64(high.Spread)
	for range 60 {
		force := (from + to) / 2
		a, b = bent(low, force), bent(high, -force)
		if b > a {
			from = force
		} else {
			to = force
		}
	}
	return a, b
}

// bent is how far the middle of a board goes down under its spread load and a force there.
func bent(s mechanics.Storey, force float64) float64 {
	const n = 40 // steps; nodes 1 to n-1 are free
	l, w, h := s.Beam.Span.Millimetres(), s.Beam.Width.Millimetres(), s.Beam.Thickness.Millimetres()
	step, ei := l/n, float64(s.Beam.Stiff)*w*h*h*h/12
	// The moment first, M'' = -q, then the sag, w'' = -M/(E I), each by elimination.
	load := make([]float64, n+1)
	for i := 1; i < n; i++ {
		load[i] = float64(s.Spread) / l
	}
	load[n/2] += force / step
	moment := twice(load, step)
	for i := range moment {
		moment[i] /= ei
	}
	return twice(moment, step)[n/2]
}

// twice solves y” = -f with y nought at both ends.
func twice(f []float64, step float64) []float64 {
	n := len(f) - 1
	y, c, d := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for i := 1; i < n; i++ { // -y[i-1] + 2 y[i] - y[i+1] = f step2
		m := 2 + c[i-1]
		c[i], d[i] = -1/m, (f[i]*step*step+d[i-1])/m
	}
	for i := n - 1; i > 0; i-- {
		y[i] = d[i] - c[i]*y[i+1]
	}
	return y
}
