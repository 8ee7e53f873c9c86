package mechanics_test

import (
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// tray is a board of cherry 12 thick, 180 wide, with channels 5 deep on half its
// width; its core stands at the points given, the room at 8.
func tray(core mechanics.Points) mechanics.Slab {
	return mechanics.Slab{
		Thickness: unit.MM(12), Spreads: 1.2e-10, Film: mechanics.FilmOf.Value, Core: core, Shell: core, Air: 8,
		Machined: mechanics.Face{Deep: unit.MM(5)}, Cut: 0.5, Land: unit.MM(10),
	}
}

const perPoint = 0.00248 // flat-sawn cherry, Wood Handbook FPL-GTR-190, Table 13-5

func cups(t *testing.T, s mechanics.Slab, k mechanics.Keeping) ([]mechanics.CupDay, mechanics.CupDay, mechanics.Hours) {
	t.Helper()
	each, worst, at, err := s.CupDays(k, unit.MM(180), perPoint, 14)
	if err != nil {
		t.Fatal(err)
	}
	return each, worst, at
}

// TestCupsWithinDays: a channelled board whose core is wetter than the room goes
// hollow on the channelled face within days, by a visible amount; drier, the other
// way and by as much (common practice, no source).
func TestCupsWithinDays(t *testing.T) {
	_, wet, at := cups(t, tray(10), mechanics.FlatOnBench)
	if wet.Bend.Way() != mechanics.HollowMachined || wet.Rise < 200*unit.Micrometre || at > 4*24 || at < 2 {
		t.Errorf("wetter: %v after %g h, %s", wet.Rise, at, wet.Bend.Way())
	}
	_, dry, _ := cups(t, tray(6), mechanics.FlatOnBench)
	if dry.Bend.Way() != mechanics.HollowBack || math.Abs(float64(dry.Rise+wet.Rise)) > 1000 {
		t.Errorf("drier: %v, wetter %v", dry.Rise, wet.Rise)
	}
	if _, even, _ := cups(t, tray(8), mechanics.FlatOnBench); even.Bend.Way() != mechanics.StaysFlat {
		t.Errorf("as dry as the room: %v", even.Rise)
	}
	t.Logf("2 points wetter, flat on the bench: %v after %g hours", wet.Rise, at)
}

// TestKeeping: standing on edge or stickered cups less than lying flat, machining
// both faces alike not at all; a day makes a difference that two weeks undo.
func TestKeeping(t *testing.T) {
	_, flat, _ := cups(t, tray(10), mechanics.FlatOnBench)
	_, edge, _ := cups(t, tray(10), mechanics.OnEdge)
	_, both, _ := cups(t, tray(10), mechanics.BothMachined)
	if edge.Rise.Abs() >= flat.Rise.Abs()*7/10 || both.Rise.Abs() > 10*unit.Micrometre {
		t.Errorf("flat %v, on edge %v, both machined %v", flat.Rise, edge.Rise, both.Rise)
	}
	each, weighted, _ := cups(t, tray(10), mechanics.Weighted)
	if last := each[14].Rise.Abs(); last > weighted.Rise.Abs()/4 {
		t.Errorf("let go after two weeks %v, at worst %v", last, weighted.Rise)
	}
	t.Logf("flat %v, on edge %v, both %v; weighted, let go after a week %v", flat.Rise, edge.Rise, both.Rise, each[7].Rise)
}

// TestPlanedUnequally: a thick board, dry outside and wet within, planed from one
// face only: the fresh face is wetter, dries, and goes hollow.
func TestPlanedUnequally(t *testing.T) {
	s := mechanics.Slab{Thickness: unit.MM(18), Off: unit.MM(7), Spreads: 1.2e-10, Film: mechanics.FilmOf.Value, Core: 11, Shell: 8, Air: 8}
	each, worst, _ := cups(t, s, mechanics.Stickered)
	// On day nought it is taken as planed flat; what counts is the change from then.
	change := each[14].Rise - each[0].Rise
	if change < 100*unit.Micrometre {
		t.Errorf("changes by %v (worst %v)", change, worst.Rise)
	}
}

// TestSymmetry: a plain board dries alike on both faces and stays flat.
func TestSymmetry(t *testing.T) {
	s := tray(11)
	s.Machined = mechanics.Face{}
	if _, worst, _ := cups(t, s, mechanics.OnEdge); worst.Rise.Abs() > unit.Micrometre {
		t.Errorf("%v", worst.Rise)
	}
	if _, worst, _ := cups(t, s, mechanics.FlatOnBench); worst.Bend.Way() != mechanics.HollowMachined {
		t.Errorf("flat: %v", worst.Rise)
	}
	_, face, _ := cups(t, s, mechanics.FaceDown)
	if face.Bend.Way() != mechanics.HollowBack {
		t.Errorf("face down: %v", face.Rise)
	}
	for _, bad := range []mechanics.Slab{{}, {Thickness: unit.MM(10), Spreads: 1}, {Thickness: unit.MM(10), Spreads: 1e-10, Machined: mechanics.Face{Deep: unit.MM(11)}}} {
		if _, _, _, err := bad.CupDays(mechanics.OnEdge, unit.MM(100), perPoint, 3); err == nil {
			t.Errorf("%+v", bad)
		}
	}
	if _, err := tray(9).Follow(24, 5000); err == nil {
		t.Error("too many states")
	}
}

func BenchmarkCupDays(b *testing.B) {
	s := tray(10)
	for b.Loop() {
		if _, _, _, err := s.CupDays(mechanics.FlatOnBench, unit.MM(180), perPoint, 14); err != nil {
			b.Fatal(err)
		}
	}
}
