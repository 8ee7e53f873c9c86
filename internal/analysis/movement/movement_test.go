package movement_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/movement"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Coefficients for a change of 1 % in moisture content, tangential and radial: Wood
// Handbook FPL-GTR-190 (2010), Table 13-5.
const (
	cherryFlat, cherryQuarter = 0.00248, 0.00126
	poplarFlat                = 0.00289
	mapleFlat                 = 0.00353
)

// names of these woods in the catalogue.
const cherry, poplar, maple = "Cherry, black", "Yellow-poplar", "Maple, sugar (hard)"

// drawer is a drawer that moves in an opening: a front 60 high and 200 long, a side
// 60 high and 380 long, a bottom of ply.
func drawer(species, cut string) *trial.Builder {
	b := trial.New()
	b.Ledger.Learn(movement.Functions())
	b.Part("drawer.front", trial.Front, 0, 2000, 0, 140, 0, 600).Material = "front"
	b.Part("drawer.side", trial.SideLow, 0, 100, 140, 3800, 0, 600).Material = "side"
	b.Part("drawer.bottom", trial.GrainBack, 50, 1950, 100, 3750, 80, 118).Material = "ply"
	b.Piece.Materials = []piece.Material{
		{Name: "front", Species: species, Cut: cut}, {Name: "side", Species: species, Cut: cut}, {Name: "ply", Species: "birch plywood", Sheet: true},
	}
	b.Piece.Fits = []piece.Fit{{Address: "fit.drawer", Moves: "drawer", Inside: "opening", Sides: b.Fig("sides", 8), Above: b.Fig("above", 20), Behind: b.Fig("behind", 80)}}
	return b
}

var season = timber.Season{Now: 8.5, Dry: 7, Wet: 11}

func derive(t testing.TB, b *trial.Builder, s timber.Season) []plan.Clearance {
	t.Helper()
	out := movement.Derive(&b.Piece, s, b.Ledger)
	for _, c := range out {
		for _, f := range []piece.Figure{c.Size, c.GrowsWet, c.ShrinksDry, c.Leave, c.AtWet, c.AtDry} {
			if err := b.Ledger.VerifyFigure(f); err != nil {
				t.Errorf("%s: %v", c.Across, err)
			}
		}
	}
	for _, d := range b.Ledger.Verify() {
		t.Error(d)
	}
	return out
}

// near reports whether a figure is so many millimetres, to the nanometre.
func near(f piece.Figure, mm float64) bool {
	return math.Abs(f.Nm.Millimetres()-mm) < 1.1e-6
}

// TestHandSums: a size of 60 from 8.5 to 11 and to 7 %, by Equation 13-1 (size ×
// coefficient × points), and to 17 % by Equation 13-2, size × points over 1/C - 10 +
// Mi, as 13-1 holds from 6 to 14 % only.
func TestHandSums(t *testing.T) {
	const size = 60
	far := timber.Season{Now: 8, Dry: 7, Wet: 17}
	for _, c := range []struct {
		species, cut  string
		season        timber.Season
		grows, shrink float64
	}{
		{cherry, "flat", season, size * cherryFlat * 2.5, size * cherryFlat * 1.5},
		{cherry, "quarter", season, size * cherryQuarter * 2.5, size * cherryQuarter * 1.5},
		{cherry, "", season, size * cherryFlat * 2.5, size * cherryFlat * 1.5}, // unknown: the worse
		{poplar, "flat", season, size * poplarFlat * 2.5, size * poplarFlat * 1.5},
		{maple, "flat", season, size * mapleFlat * 2.5, size * mapleFlat * 1.5},
		{cherry, "flat", timber.Season{Now: 9, Dry: 9, Wet: 9}, 0, 0},
		{cherry, "flat", timber.Season{Now: 12, Dry: 7, Wet: 11}, 0, size * cherryFlat * 5}, // damper today than ever
		{cherry, "flat", far, size * 9 / (1/cherryFlat - 10 + 8), size * 1 / (1/cherryFlat - 10 + 8)},
	} {
		got := derive(t, drawer(c.species, c.cut), c.season)
		if len(got) != 1 {
			t.Errorf("%s %s: %d lines", c.species, c.cut, len(got))
			continue
		}
		x := got[0]
		if x.Across != "above" || x.Moves != "drawer.front" || x.Size.Nm != unit.MM(size) || !near(x.GrowsWet, c.grows) || !near(x.ShrinksDry, c.shrink) {
			t.Errorf("%s %s %v: grows %v, shrinks %v, want %f and %f", c.species, c.cut, c.season, x.GrowsWet.Nm, x.ShrinksDry.Nm, c.grows, c.shrink)
		}
		if x.AtWet.Nm != unit.MM(2)-x.GrowsWet.Nm || x.AtDry.Nm != unit.MM(2)+x.ShrinksDry.Nm {
			t.Errorf("%s: at wet %v, at dry %v", c.species, x.AtWet.Nm, x.AtDry.Nm)
		}
	}
}

// TestSpiceChest: fronts of cherry 114 high over five points move 1.4, sides of
// yellow-poplar 1.65 (the coefficients of Table 13-5): both are told, each wood by
// itself, and 2 above are enough.
func TestSpiceChest(t *testing.T) {
	b := drawer(cherry, "flat")
	for i, name := range []string{"drawer.front", "drawer.side"} {
		p := b.Find(name)
		p.Extent[piece.Up].High = b.Fig("high", 1140)
		p.Width = b.Ledger.Less("size", p.Extent[piece.Up].High, p.Extent[piece.Up].Low)
		b.Piece.Materials[i].Species = []string{cherry, poplar}[i]
	}
	got := derive(t, b, timber.Season{Now: 7, Dry: 7, Wet: 12})
	if len(got) != 2 || !near(got[0].GrowsWet, 114*cherryFlat*5) || !near(got[1].GrowsWet, 114*poplarFlat*5) {
		t.Fatalf("%+v", got)
	}
	for i, want := range []string{"1.41", "1.65"} {
		if s := fmt.Sprintf("%.2f", got[i].GrowsWet.Nm.Millimetres()); s != want || got[i].AtWet.Nm < 0 {
			t.Errorf("%s moves %s, want %s; at wet %v", got[i].Species, s, want, got[i].AtWet.Nm)
		}
	}
}

// TestWhatMoves: only wood across its grain, and only where it reaches the end of
// what moves.
func TestWhatMoves(t *testing.T) {
	grainUp := piece.Frame{Length: piece.ToUp, Width: piece.ToRight, Thickness: piece.ToFront}
	for _, c := range []struct {
		name   string
		change func(b *trial.Builder)
		want   string
	}{
		{"as it is", func(*trial.Builder) {}, "[above drawer.front 60]"},
		{"a lower part leaves more anyway", func(b *trial.Builder) {
			b.Part("drawer.back", trial.Front, 0, 2000, 3700, 3800, 0, 500).Material = "side"
		}, "[above drawer.front 60]"},
		{"a part that ends at the top and is shorter", func(b *trial.Builder) {
			b.Part("drawer.back", trial.Front, 0, 2000, 3700, 3800, 100, 600).Material = "side"
		}, "[above drawer.front 60 above drawer.back 50]"},
		{"a front with its grain upright moves from side to side", func(b *trial.Builder) {
			p := b.Find("drawer.front")
			p.Frame, p.Length, p.Width = grainUp, p.Width, p.Length
		}, "[above drawer.side 60 sides drawer.front 200]"},
		{"and not if it does not reach both sides", func(b *trial.Builder) {
			p := b.Find("drawer.front")
			p.Frame, p.Length, p.Width = grainUp, p.Width, p.Length
			p.Extent[piece.Right].High = b.Fig("high", 1000)
		}, "[above drawer.side 60]"},
		{"a lid with its grain from left to right moves to the back", func(b *trial.Builder) {
			b.Piece.Parts = nil
			b.Part("drawer.lid", trial.GrainRight, 0, 2000, 0, 3800, 0, 100).Material = "front"
		}, "[behind drawer.lid 380]"},
		{"plywood does not move", func(b *trial.Builder) { b.Piece.Materials[0].Sheet, b.Piece.Materials[1].Sheet = true, true }, "[]"},
		{"a wood that nobody knows", func(b *trial.Builder) {
			b.Piece.Materials[0].Species, b.Piece.Materials[1].Species = "unobtainium", "unobtainium"
		}, "[]"},
		{"another piece does not count", func(b *trial.Builder) {
			b.Part("case.top", trial.GrainRight, 0, 2000, 0, 3800, 620, 800).Material = "front"
		}, "[above drawer.front 60]"},
	} {
		b := drawer(cherry, "flat")
		c.change(b)
		var got []any
		for _, x := range derive(t, b, season) {
			got = append(got, x.Across, x.Moves, int64(x.Size.Nm/unit.Millimetre))
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}

// TestWalls: behind a drawer in a case with its grain upright the sides shrink over
// the depth of the space: 380 × 0.00248 × 1.5 = 1.41 nearer at the dry end, and 380 ×
// 0.00248 × 2.5 farther at the wet one.
func TestWalls(t *testing.T) {
	b := drawer(cherry, "flat")
	b.Part("case.left", trial.LeftSide, -144, -4, 0, 3940, 0, 620).Material = "front"
	b.Part("case.right", trial.RightSide, 2004, 2144, 0, 3940, 0, 620).Material = "front"
	b.Part("case.divider", trial.GrainRight, -4, 2004, 0, 3880, 620, 760).Material = "front"
	b.Space("opening", -4, 2004, 0, 3800, 0, 620)
	b.Piece.Spaces[0].Bounds = [6]string{"case.left.right", "case.right.left", "", "case.panel.front", "", "case.divider.bottom"}
	got := derive(t, b, season)
	if len(got) != 2 {
		t.Fatalf("%+v", got)
	}
	x := got[1]
	if x.Across != "behind" || x.Moves != "case.left" || x.Size.Nm != unit.MM(380) || !near(x.AtDry, 8-380*cherryFlat*1.5) || !near(x.AtWet, 8+380*cherryFlat*2.5) {
		t.Errorf("%+v", x)
	}
	// Nothing at the back, nothing comes nearer.
	b.Piece.Spaces[0].Bounds[3] = ""
	if got = derive(t, b, season); len(got) != 1 {
		t.Errorf("%+v", got)
	}
}

// TestLaws, over random sizes and seasons: nothing shrinks by growing, more wood
// moves more, and twice the wood twice as much to a nanometre.
func TestLaws(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 10))
		s := timber.Season{Now: timber.Moisture(6 + 8*r.Float64())}
		s.Dry, s.Wet = timber.Moisture(5+3*r.Float64()), timber.Moisture(9+8*r.Float64())
		high := 100 + r.Int64N(3000)
		move := func(high int64) plan.Clearance {
			b := drawer([]string{cherry, poplar, maple}[seed%3], "flat")
			p := b.Find("drawer.front")
			p.Extent[piece.Up].High = b.Fig("high", high)
			p.Width = b.Ledger.Less("size", p.Extent[piece.Up].High, p.Extent[piece.Up].Low)
			b.Piece.Parts = b.Piece.Parts[:1]
			return derive(t, b, s)[0]
		}
		one, two := move(high), move(2*high)
		for _, x := range [][2]piece.Figure{{one.GrowsWet, two.GrowsWet}, {one.ShrinksDry, two.ShrinksDry}} {
			if x[0].Nm < 0 || (x[1].Nm-2*x[0].Nm).Abs() > 1 {
				t.Errorf("seed %d: %v and %v", seed, x[0].Nm, x[1].Nm)
			}
		}
		if (s.Now >= s.Wet) != (one.GrowsWet.Nm == 0) || (s.Now <= s.Dry) != (one.ShrinksDry.Nm == 0) {
			if math.Abs(float64(s.Now-s.Wet)) > 0.02 && math.Abs(float64(s.Now-s.Dry)) > 0.02 { // moisture counts in hundredths
				t.Errorf("seed %d: %v grows %v and shrinks %v", seed, s, one.GrowsWet.Nm, one.ShrinksDry.Nm)
			}
		}
	}
}

// TestFunctions: the functions behind the ledger refuse what they cannot take.
func TestFunctions(t *testing.T) {
	good := []unit.Value{unit.OfText(cherry), unit.OfText("flat-sawn"), unit.OfLength(unit.MM(60)), unit.OfCount(8), unit.OfCount(7), unit.OfCount(11)}
	for name, f := range movement.Functions() {
		if _, err := f(good); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for what, bad := range map[string][]unit.Value{
			"too few": good[:5], "no such wood": append([]unit.Value{unit.OfText("x")}, good[1:]...),
			"no length": {good[0], good[1], unit.OfCount(3), good[3], good[4], good[5]},
			"reversed":  {good[0], good[1], good[2], good[3], good[5], good[4]},
		} {
			if v, err := f(bad); err == nil {
				t.Errorf("%s, %s: %v", name, what, v)
			}
		}
	}
}

func TestSawn(t *testing.T) {
	for word, want := range map[string]timber.Sawn{"flat": timber.FlatSawn, "quarter": timber.QuarterSawn, "": timber.SawnUnknown, "rift": timber.SawnUnknown} {
		if movement.Sawn(word) != want {
			t.Errorf("%q is %q", word, movement.Sawn(word))
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	x := drawer(cherry, "flat")
	part := x.Piece.Parts
	for i := range 300 {
		for _, p := range part {
			p.Address, p.Group = address.Address(fmt.Sprintf("drawers[%d].%s", i+1, p.Name)), address.Address(fmt.Sprintf("drawers[%d]", i+1))
			x.Piece.Parts = append(x.Piece.Parts, p)
		}
		f := x.Piece.Fits[0]
		f.Moves = address.Address(fmt.Sprintf("drawers[%d]", i+1))
		x.Piece.Fits = append(x.Piece.Fits, f)
	}
	for b.Loop() {
		movement.Derive(&x.Piece, season, x.Ledger)
	}
	b.ReportMetric(float64(len(x.Piece.Parts)), "parts")
}
