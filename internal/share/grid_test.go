package share

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/unit"
)

func mms(of ...float64) []unit.Length {
	out := make([]unit.Length, len(of))
	for i, x := range of {
		out[i] = unit.FromMillimetres(x)
	}
	return out
}

// TestBottles: 24 bottles of 25 in 6 by 4 cells of 27 with dividers of 5 and half
// a millimetre around. By hand: 6 · 27 + 5 · 5 + 1 = 188; 4 · 27 + 3 · 5 + 1 = 124.
// They are 58 tall and stand on 2 of felt with 1 over them: 61; dividers that
// reach 40 leave 20 of the cap.
func TestBottles(t *testing.T) {
	g, err := Grid{Columns: 6, Cell: [2]unit.Length{unit.MM(27), unit.MM(27)}, Divider: unit.MM(5), Around: 500 * um}.For(24)
	if err != nil || g.Rows != 4 || g.Inside() != [2]unit.Length{unit.MM(188), unit.MM(124)} {
		t.Errorf("%+v %v: %v", g, err, g.Inside())
	}
	row, err := g.Row(0)
	if err != nil || row.Width != unit.MM(188) || len(row.Slots) != 6 {
		t.Errorf("%+v %v", row, err)
	}
	s := Stand{Thing: unit.MM(58), Stack: 1, Lining: unit.MM(2), Above: unit.MM(1)}
	if s.High() != unit.MM(61) || s.Proud(unit.MM(40)) != unit.MM(20) {
		t.Errorf("%v high, %v proud", s.High(), s.Proud(unit.MM(40)))
	}
}

// TestCrossing: the dividers of that box, 38 high and measured 5. By hand: centres
// from a divider's own end 27 + 2.5 = 29.5 and every 32 after it, from the wall
// half a millimetre more; 3 · 5 + 5 · 3 = 30 slots; three settings of the stop when
// each is turned end for end; slots 5.2 wide, 38 / 2 + 0.5 = 19.5 deep; with a
// blade of 3 the near edges lie at 29.5 - 2.6 = 26.9 and so on, and the second cut
// is shifted by 2.2.
func TestCrossing(t *testing.T) {
	g := Grid{Columns: 6, Rows: 4, Cell: [2]unit.Length{unit.MM(27), unit.MM(27)}, Divider: unit.MM(5), Around: 500 * um}
	c := Crossing{Grid: g, Measured: unit.MM(5), High: unit.MM(38)}
	if got := c.Centres(0); !slices.Equal(got, mms(29.5, 61.5, 93.5, 125.5, 157.5)) {
		t.Errorf("long: %v", got)
	}
	if got := c.Centres(1); !slices.Equal(got, mms(29.5, 61.5, 93.5)) {
		t.Errorf("short: %v", got)
	}
	if got := c.Stops(); !slices.Equal(got, mms(29.5, 61.5, 93.5)) {
		t.Errorf("stops: %v", got)
	}
	if c.Slots() != 30 || c.Width().Value != 5200*um || c.Depth().Value != 19500*um {
		t.Errorf("%d slots %v wide, %v deep", c.Slots(), c.Width().Value, c.Depth().Value)
	}
	if near, shift := c.Stops()[0]-c.Width().Value/2, c.Width().Value-unit.MM(3); near != 26900*um || shift != 2200*um {
		t.Errorf("near edge %v, shift %v", near, shift)
	}
	if got := c.Centres(0)[0] + g.Around; got != unit.MM(30) {
		t.Errorf("from the wall %v", got)
	}
}

// TestJars: 24 jars of 44 in cells of 46 without dividers and 2 around. By hand:
// 6 · 46 + 4 = 280 and 4 · 46 + 4 = 188; in 96 places of 280 by 188 there is room
// for no seventh column.
func TestJars(t *testing.T) {
	g := Grid{Columns: 6, Rows: 4, Cell: [2]unit.Length{unit.MM(46), unit.MM(46)}, Around: unit.MM(2)}
	if g.Inside() != [2]unit.Length{unit.MM(280), unit.MM(188)} {
		t.Errorf("%v", g.Inside())
	}
	fit, left, err := g.FitIn([2]unit.Length{unit.MM(300), unit.MM(190)})
	if err != nil || fit.Columns != 6 || fit.Rows != 4 || left != [2]unit.Length{unit.MM(20), unit.MM(2)} {
		t.Errorf("%+v %v %v", fit, left, err)
	}
	if fit, _, err := g.FitIn([2]unit.Length{unit.MM(49), unit.MM(190)}); err != nil || fit.Columns != 0 {
		t.Errorf("%+v %v", fit, err)
	}
}

// TestRecords: sleeves of 4 mm. By hand: 300 and 30 % more are 390, 1560 mm;
// 1664.8 in four bays of 416.2 takes 4 · 104 = 416 of them tight, and with 5 % to
// flip through, 4.2 each, 4 · 99 = 396.
func TestRecords(t *testing.T) {
	if n, err := Grown(300, big.NewRat(3, 10)); err != nil || n != 390 {
		t.Errorf("%d %v", n, err)
	}
	if n, err := Grown(7, big.NewRat(1, 10)); err != nil || n != 8 {
		t.Errorf("7 and a tenth are %d %v", n, err)
	}
	for size, want := range map[unit.Length]int{unit.MM(4): 416, 4200 * um: 396} {
		if n, err := HowMany(size, 0, 416200*um); err != nil || 4*n != want {
			t.Errorf("%v: %d %v", size, 4*n, err)
		}
	}
	for _, bad := range []*big.Rat{nil, big.NewRat(-1, 2), big.NewRat(5000, 1)} {
		if _, err := Grown(5, bad); err == nil {
			t.Errorf("growth %v is taken", bad)
		}
	}
}

// TestCutleryBays: needs of 70, 75, 85 and 130 in 442 less two walls and three
// dividers of 8 each. By hand: 402 - 360 = 42 are spare, 10.5 each.
func TestCutleryBays(t *testing.T) {
	got, err := SpreadOver(mms(70, 75, 85, 130), unit.MM(402))
	if err != nil || !slices.Equal(got, mms(80.5, 85.5, 95.5, 140.5)) {
		t.Errorf("%v %v", got, err)
	}
	_, err = SpreadOver(mms(70, 75, 85, 130), unit.MM(350))
	wantKey(t, err, "share.row-too-wide")
	_, err = SpreadOver(nil, unit.MM(350))
	wantKey(t, err, "share.nothing-to-spread")
}

// TestTooFew: 3 by 7 cells do not hold 24; 4 columns or 8 rows do.
func TestTooFew(t *testing.T) {
	_, err := Grid{Columns: 3, Rows: 7}.For(24)
	wantKey(t, err, "share.too-few-cells")
	for things, want := range map[int][2]int{1: {1, 1}, 2: {2, 1}, 5: {3, 2}, 24: {5, 5}, 25: {5, 5}, 26: {6, 5}} {
		if g, err := (Grid{}).For(things); err != nil || [2]int{g.Columns, g.Rows} != want {
			t.Errorf("%d: %d by %d %v", things, g.Columns, g.Rows, err)
		}
	}
	if g, err := (Grid{Rows: 2}).For(5); err != nil || g.Columns != 3 {
		t.Errorf("%+v %v", g, err)
	}
	for _, n := range []int{0, -3, MaxThings + 1} {
		if _, err := (Grid{}).For(n); err == nil {
			t.Errorf("%d things are taken", n)
		}
	}
}

// TestGridLaws: what a grid needs is what it fits in, and a nanometre less is not.
func TestGridLaws(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewPCG(seed, 2))
	for range 2000 {
		g := Grid{1 + r.IntN(20), 1 + r.IntN(20), [2]unit.Length{1 + unit.Length(r.Int64N(1e8)), 1 + unit.Length(r.Int64N(1e8))}, unit.Length(r.Int64N(1e7)), unit.Length(r.Int64N(1e7))}
		need := g.Inside()
		fit, left, err := g.FitIn(need)
		if err != nil || fit.Columns != g.Columns || fit.Rows != g.Rows || left != [2]unit.Length{} {
			t.Fatalf("seed %d: %+v: %+v %v %v", seed, g, fit, left, err)
		}
		need[0]--
		if fit, _, _ := g.FitIn(need); fit.Columns != g.Columns-1 {
			t.Fatalf("seed %d: %+v fits in less", seed, g)
		}
		for axis := range 2 {
			row, err := g.Row(axis)
			sum := unit.Length(0)
			for _, term := range row.Terms() {
				sum += term.Length
			}
			if err != nil || sum != g.Inside()[axis] {
				t.Fatalf("seed %d: %+v: %v %v", seed, g, sum, err)
			}
		}
	}
	for _, g := range []Grid{{0, 1, [2]unit.Length{1, 1}, 0, 0}, {100, 100, [2]unit.Length{1, 1}, 0, 0}, {1, 1, [2]unit.Length{0, 1}, 0, 0}, {1, 1, [2]unit.Length{1, 1}, -1, 0}} {
		if _, err := g.Row(0); err == nil {
			t.Errorf("%+v is taken", g)
		}
	}
}

// TestSwing: a lid whose front wall's inner edge is 134 from the hinge line (144
// deep outside, walls of 10). By hand: 20 above the rim it passes at
// sqrt(134² - 20²) = 132.5; a cap that reaches 10 + 0.5 + 3 · 32 + 13.5 + 10 + 1 =
// 131 clears it by 1.5. A shoulder that reaches 120 + 12.5 + 1 = 133.5 may stand
// sqrt(134² - 133.5²) = 11.56 above the rim: with a base of 40 inside and 2 of
// felt, bottles with shoulders up to 49.5.
func TestSwing(t *testing.T) {
	s := Swing{Arm: unit.MM(134)}
	near(t, "passes at", s.At(unit.MM(20)), 132.499, 0.001)
	near(t, "cap clears", s.Clears(unit.MM(131), unit.MM(20)), 1.499, 0.001)
	near(t, "shoulder under", s.Under(133500*um), 11.565, 0.001)
	// 3-4-5 exactly, and the ends.
	if (Swing{unit.MM(5)}).At(unit.MM(4)) != unit.MM(3) || s.At(unit.MM(134)) != 0 || s.At(unit.MM(200)) != 0 || s.At(-5) != s.Arm {
		t.Error("the circle is wrong")
	}
	const seed = 3
	r := rand.New(rand.NewPCG(seed, 3))
	for range 1000 {
		arm, h := 1+unit.Length(r.Int64N(1e9)), unit.Length(r.Int64N(1e9))
		at := Swing{arm}.At(h)
		if h < arm && (Swing{arm}.At(h+1) > at || times(at, at).over(times(arm, arm).less(times(h, h)))) {
			t.Fatalf("seed %d: arm %d, height %d: %d", seed, arm, h, at)
		}
	}
}

// TestPasses: a thing turns to pass an opening with its two least sizes.
func TestPasses(t *testing.T) {
	for _, c := range []struct {
		thing   [3]float64
		opening [2]float64
		over    float64
	}{
		{[3]float64{250, 180, 8}, [2]float64{185, 10}, 0},
		{[3]float64{250, 180, 8}, [2]float64{10, 185}, 0},
		{[3]float64{250, 180, 8}, [2]float64{175, 10}, 5},
		{[3]float64{250, 180, 8}, [2]float64{175, 5}, 5},
		{[3]float64{30, 30, 30}, [2]float64{100, 28}, 2},
	} {
		got, err := Passes([3]unit.Length(mms(c.thing[:]...)), [2]unit.Length(mms(c.opening[:]...)))
		if err != nil || got != unit.FromMillimetres(c.over) {
			t.Errorf("%v: %v %v", c, got, err)
		}
	}
	if _, err := Passes([3]unit.Length{1, 1, 0}, [2]unit.Length{1, 1}); err == nil {
		t.Error("nothing passes")
	}
	if n, err := HowMany(0, 0, 5); err == nil {
		t.Error(n)
	}
	if n, err := HowMany(5, -1, 5); err == nil {
		t.Error(n)
	}
}
