package share

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/unit"
)

func near(t *testing.T, what string, got unit.Length, want, within float64) {
	t.Helper()
	if math.Abs(got.Millimetres()-want) > within {
		t.Errorf("%s: %.4f, want %.4f", what, got.Millimetres(), want)
	}
}

// TestOctagonInChannel: an octagonal handle, 25 across corners, in a channel of a
// 25.4 cutter 8 deep. By hand: across flats 25 cos 22.5° = 23.097. A corner down
// lies on the bottom, 8 deep, and 25 - 8 = 17.0 stands proud. On a flat its two
// corners, 12.5 sin 22.5° = 4.784 beside the axis, meet the round
// 12.7 - sqrt(12.7² - 4.784²) = 0.935 above its bottom: it sinks 7.065, and
// 23.097 - 7.065 = 16.03 stands proud. The mouth is 2 sqrt(8 · 17.4) = 23.6.
func TestOctagonInChannel(t *testing.T) {
	g, p := Groove{Radius: 12700 * um, Depth: unit.MM(8)}, Prism{8, unit.MM(25)}
	near(t, "mouth", g.Mouth(), 23.597, 0.001)
	near(t, "flats", p.Flats(), 23.097, 0.0005)
	for _, c := range []struct {
		turn       Turn
		sit, proud float64
	}{{CornerDown, 8, 17}, {FlatDown, 7.065, 16.032}} {
		s, err := g.SeatPrism(p, c.turn)
		if err != nil || s.Rides {
			t.Errorf("%+v %v", s, err)
		}
		near(t, "sit", s.Sit, c.sit, 0.001)
		near(t, "proud", s.Proud, c.proud, 0.001)
	}
	back, err := PrismOfFlats(8, p.Flats())
	if err != nil || (back.Corners-p.Corners).Abs() > 2 {
		t.Errorf("back from flats: %+v %v", back, err)
	}
}

// TestLined: with 1 mm of felt the same channel is one of radius 11.7, 7 deep. A
// round handle of 25 rides on its edges: mouth 2 sqrt(7 · 16.4) = 21.429, sinks
// 12.5 - sqrt(12.5² - 10.714²) = 6.06 instead of 8. The cutter that takes it lies
// at 25 + 2 · 1 + 0.4 = 27.4; unlined 25.4. The octagon, corner down, stops where
// its corners at 45° (8.839 beside, 3.661 up) meet the round, which is 4.034 up
// there: 7 + 3.661 - 4.034 = 6.627. On a flat its sides (4.784 beside and 0 up to
// 11.548 beside and 6.765 up) meet the edges of the mouth: (10.714 - 4.784) up.
func TestLined(t *testing.T) {
	g, err := Groove{Radius: 12700 * um, Depth: unit.MM(8)}.Lined(unit.MM(1))
	if err != nil {
		t.Fatal(err)
	}
	s, err := g.Seat(unit.MM(25))
	if err != nil || !s.Rides {
		t.Errorf("%+v %v", s, err)
	}
	near(t, "round", s.Sit, 6.062, 0.001)
	s, _ = g.SeatPrism(Prism{8, unit.MM(25)}, CornerDown)
	near(t, "corner down", s.Sit, 6.627, 0.001)
	s, _ = g.SeatPrism(Prism{8, unit.MM(25)}, FlatDown)
	near(t, "on a flat", s.Sit, 5.930, 0.001)
	if !s.Rides {
		t.Error("on a flat it rides on the edges")
	}
	for lining, want := range map[int64]int64{0: 25400, 1: 27400} {
		if l, err := LeastRound(unit.MM(25), unit.MM(lining)); err != nil || l.Value != unit.Length(want)*um || l.Source.Status != "practice" {
			t.Errorf("lining %d: %+v %v", lining, l, err)
		}
	}
}

// TestManySides: a prism of many sides lies as the round rod does, less the
// sagitta of a side; and a law over random prisms and channels: where it lies, it
// touches, and none of its corners below the surface is outside the channel.
func TestManySides(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, 1))
	for range 2000 {
		g := Groove{unit.Length(1+r.Int64N(2000)) * 10 * um, unit.Length(1+r.Int64N(2500)) * 10 * um}
		rod := unit.Length(10+r.Int64N(5000)) * 10 * um
		for _, sides := range []int{4, 6, 8, 12, 16} {
			for _, turn := range []Turn{CornerDown, FlatDown} {
				p := Prism{sides, rod}
				s, err := g.SeatPrism(p, turn)
				if err != nil {
					t.Fatal(err)
				}
				if s.Sit < 0 || s.Sit > g.Depth || s.Sit+s.Proud != p.Height(turn) {
					t.Fatalf("seed %d: %+v %+v %d: %+v", seed, g, p, turn, s)
				}
				if worst := deepest(g, p, turn, s.Sit); worst > 2e-5 || worst < -2e-5 && !s.Rides {
					t.Fatalf("seed %d: %+v %+v %d: %+v goes %g into the wood", seed, g, p, turn, s, worst)
				}
				if w, m := widthAt(p, turn, s.Sit), g.Mouth().Millimetres(); s.Rides && s.Sit > 0 && (w > m+2e-5 || w < m-2e-5) {
					t.Fatalf("seed %d: %+v %+v %d: %+v is %g wide in a mouth of %g", seed, g, p, turn, s, w, m)
				}
			}
		}
		round, _ := g.Seat(rod)
		fine, _ := g.SeatPrism(Prism{16, rod}, CornerDown)
		if d := (fine.Sit - round.Sit).Millimetres(); d < -1e-5 || d > 0.05*rod.Millimetres() && !round.Rides {
			t.Fatalf("seed %d: %+v rod %v: round %v, 16 sides %v", seed, g, rod, round.Sit, fine.Sit)
		}
	}
}

// deepest returns how far the outline of a prism that sinks so far goes into the
// wood at most, in millimetres; it is measured at many points of each side and not
// as the seat is found.
func deepest(g Groove, p Prism, turn Turn, sit unit.Length) float64 {
	worst := math.Inf(-1)
	all := p.corners(turn)
	if all[0].beside > 0 { // the flat
		all = append([]corner{{0, all[0].above}}, all...)
	}
	R, h, m := g.Radius.Millimetres(), g.Depth.Millimetres(), g.Mouth().Millimetres()/2
	for i := 1; i < len(all); i++ {
		for k := range 401 {
			f := float64(k) / 400
			x := all[i-1].beside + f*(all[i].beside-all[i-1].beside)
			y := all[i-1].above + f*(all[i].above-all[i-1].above) - sit.Millimetres() // above the surface
			switch {
			case y > 0:
				continue
			case x > m: // in the wood beside the mouth
				worst = max(worst, min(x-m, -y))
			default:
				worst = max(worst, R-math.Sqrt(math.Max(0, R*R-x*x))-(y+h))
			}
		}
	}
	if worst < 0 && worst > -0.02*p.Corners.Millimetres() {
		return 0 // the points on a side do not meet its corner or the edge exactly
	}
	return worst
}

// widthAt returns how wide the prism is at a height over its lowest line.
func widthAt(p Prism, turn Turn, height unit.Length) float64 {
	all, y := p.corners(turn), height.Millimetres()
	for i := 1; i < len(all); i++ {
		if a, b := all[i-1], all[i]; y <= b.above {
			return 2 * (a.beside + (b.beside-a.beside)*(y-a.above)/(b.above-a.above))
		}
	}
	return 0
}

func TestPrismRefusals(t *testing.T) {
	g := Groove{unit.MM(5), unit.MM(5)}
	for _, p := range []Prism{{3, unit.MM(5)}, {7, unit.MM(5)}, {18, unit.MM(5)}, {8, 0}, {8, unit.MM(20000)}} {
		if _, err := g.SeatPrism(p, CornerDown); err == nil {
			t.Errorf("%+v is taken", p)
		}
		if _, err := PrismOfFlats(p.Sides, p.Corners); err == nil {
			t.Errorf("%+v is taken across flats", p)
		}
	}
	if _, err := (Groove{}).SeatPrism(Prism{8, unit.MM(5)}, FlatDown); err == nil {
		t.Error("no groove is taken")
	}
	if _, err := LeastRound(0, 0); err == nil {
		t.Error("no rod is taken")
	}
	if _, err := LeastRound(unit.MM(5), -1); err == nil {
		t.Error("a lining below nought is taken")
	}
}

func BenchmarkSeatPrism(b *testing.B) {
	g, p := Groove{12700 * um, unit.MM(8)}, Prism{8, unit.MM(25)}
	for b.Loop() {
		if _, err := g.SeatPrism(p, FlatDown); err != nil {
			b.Fatal(err)
		}
	}
}
