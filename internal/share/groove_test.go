package share

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/tool"
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

// TestGrooveKnown: closed forms and check values of the trade.
func TestGrooveKnown(t *testing.T) {
	for _, c := range []struct {
		name   string
		groove Groove
		rod    unit.Length
		mouth  float64 // mm
		sit    float64 // mm
		rides  bool
		within float64
	}{
		{"sunk to the radius", Groove{unit.MM(5), unit.MM(5)}, unit.MM(10), 10, 5, false, 0},
		{"3/8 in sunk to its radius", Groove{4762500, 4762500}, 9525 * um, 9.525, 4.7625, false, 0},
		{"thinner rod lies on the bottom", Groove{unit.MM(5), unit.MM(3)}, unit.MM(2), 2 * math.Sqrt(21), 3, false, 1e-6},
		{"deeper than the radius", Groove{unit.MM(5), unit.MM(9)}, unit.MM(10), 10, 9, false, 0},
		{"3-4-5: R 5, h 2", Groove{unit.MM(5), unit.MM(2)}, unit.MM(10), 8, 2, false, 0},
		{"3-4-5: rod of radius 5 on a mouth of 6", Groove{unit.MM(3), unit.MM(3)}, unit.MM(10), 6, 1, true, 0},
		{"30 rod on a 25.4 groove 8 deep", Groove{12700 * um, unit.MM(8)}, unit.MM(30), 2 * math.Sqrt(8*17.4), 5.7, true, 0.05},
		{"gouge handle 25 in a 25.4 groove 8 deep", Groove{12700 * um, unit.MM(8)}, unit.MM(25), 23.6, 8, false, 0.005},
	} {
		seat, err := c.groove.Seat(c.rod)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if off := math.Abs(c.groove.Mouth().Millimetres() - c.mouth); off > c.within {
			t.Errorf("%s: mouth %v, want %v", c.name, c.groove.Mouth().Millimetres(), c.mouth)
		}
		if off := math.Abs(seat.Sit.Millimetres() - c.sit); off > c.within || seat.Rides != c.rides || seat.Sit+seat.Proud != c.rod {
			t.Errorf("%s: %+v, want sit %v", c.name, seat, c.sit)
		}
	}
	land := unit.MM(10) - Groove{4762500, 4762500}.Mouth()
	if land != 475*um {
		t.Errorf("land of 3/8 in channels at pitch 10: %d, want 0.475 mm", land)
	}
	if least := LeastLand(4762500); land >= least.Value {
		t.Errorf("that land passes: least is %v", least)
	}
}

// TestLining: with 1 mm of felt the 25 handle sinks 6.1, not 8; a cutter of 27.4
// gives it its depth.
func TestLining(t *testing.T) {
	lined, err := Groove{12700 * um, unit.MM(8)}.Lined(unit.MM(1))
	if err != nil {
		t.Fatal(err)
	}
	if seat, _ := lined.Seat(unit.MM(25)); !seat.Rides || math.Abs(seat.Sit.Millimetres()-6.1) > 0.05 {
		t.Errorf("lined: %+v, want about 6.1", seat)
	}
	lined, _ = Groove{13700 * um, unit.MM(9)}.Lined(unit.MM(1))
	if seat, _ := lined.Seat(unit.MM(25)); seat.Rides || seat.Sit != unit.MM(8) {
		t.Errorf("lined in 27.4: %+v, want 8", seat)
	}
	wantKey(t, second(Groove{unit.MM(5), unit.MM(2)}.Lined(unit.MM(2))), "share.lining-fills-groove")
}

// TestGrooveLaws: against arithmetic in 200 bits, and the laws of the circle.
func TestGrooveLaws(t *testing.T) {
	const seed = 30
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 4000 {
		g := Groove{1 + unit.Length(rng.Int64N(3e7)), 1 + unit.Length(rng.Int64N(4e7))}
		rod := 1 + unit.Length(rng.Int64N(8e7))
		seat, err := g.Seat(rod)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		half, want := exactSeat(g, rod)
		if diff := math.Abs(float64(g.Mouth()) - 2*half); diff > 1.0001 {
			t.Fatalf("seed %d step %d: %+v mouth %d, exactly %f", seed, i, g, g.Mouth(), 2*half)
		}
		if diff := math.Abs(float64(seat.Sit) - want); diff > 1.0001 {
			t.Fatalf("seed %d step %d: %+v rod %d sits %d, exactly %f", seed, i, g, rod, seat.Sit, want)
		}
		if g.Mouth() > 2*g.Radius || seat.Sit > g.Depth || (seat.Rides && seat.Sit > g.Radius) {
			t.Fatalf("seed %d step %d: %+v %+v", seed, i, g, seat)
		}
		if thicker, _ := g.Seat(rod + 1000); thicker.Sit > seat.Sit {
			t.Fatalf("seed %d step %d: a thicker rod sits deeper", seed, i)
		}
		if g.Depth < g.Radius {
			if deeper := (Groove{g.Radius, g.Depth + 1}); deeper.Mouth() < g.Mouth() {
				t.Fatalf("seed %d step %d: a deeper groove has a narrower mouth", seed, i)
			}
		}
		mouth := unit.Length(rng.Int64N(int64(2*g.Radius) + 10))
		if d := DepthForMouth(g.Radius, mouth); d > 0 && (Groove{g.Radius, d}).Mouth() > mouth {
			t.Fatalf("seed %d step %d: depth %d for mouth %d opens %d", seed, i, d, mouth, Groove{g.Radius, d}.Mouth())
		} else if d < g.Radius && (Groove{g.Radius, d + 2}).Mouth() <= mouth-4 {
			t.Fatalf("seed %d step %d: depth %d for mouth %d could be more", seed, i, d, mouth)
		}
	}
}

// exactSeat computes half the mouth and the sit in 200-bit floats.
func exactSeat(g Groove, rod unit.Length) (halfMouth, sit float64) {
	f := func(l unit.Length) *big.Float { return new(big.Float).SetPrec(200).SetInt64(int64(l)) }
	h := min(g.Depth, g.Radius)
	c2 := f(h)
	c2.Mul(c2, f(2*g.Radius-h))
	c := new(big.Float).SetPrec(200).Sqrt(c2)
	halfMouth, _ = c.Float64()
	if rod <= 2*g.Radius {
		return halfMouth, float64(g.Depth)
	}
	r := f(rod)
	r.Quo(r, f(2))
	level := new(big.Float).SetPrec(200).Mul(r, r)
	level.Sub(level, c2)
	level.Sqrt(level)
	sit, _ = r.Sub(r, level).Float64()
	return halfMouth, sit
}

func TestRoot(t *testing.T) {
	for _, l := range []unit.Length{0, 1, 2, 3, 1e6, 1e12, 1<<31 - 1, 1<<40 + 1, 3e18} {
		if got := times(l, l).root(); got != l {
			t.Errorf("root of the square of %d is %d", l, got)
		}
		if l > 1 {
			if got := times(l, l).less(product{0, 1}).root(); got != l {
				t.Errorf("root of %d squared less one is %d", l, got)
			}
		}
	}
}

func TestGrooveRefusals(t *testing.T) {
	for _, g := range []Groove{{}, {1, 0}, {0, 1}, {-1, 1}, {20 * unit.Metre, 1}} {
		wantKey(t, second(g.Seat(unit.MM(5))), "figure.length-range")
	}
	wantKey(t, second(Groove{1, 1}.Seat(0)), "figure.length-range")
}

var noses = []tool.Cutter{
	{Name: "nose 12.7", Shape: tool.RoundNose, Diameter: 12700 * um},
	{Name: "nose 3.2", Shape: tool.RoundNose, Diameter: 3200 * um, CuttingLength: unit.MM(6)},
	{Name: "straight 6", Shape: tool.Straight, Diameter: unit.MM(6)},
	{Name: "nose 6.35", Shape: tool.RoundNose, Diameter: 6350 * um},
}

// TestChannelFor: half of each needle by the least cutter that takes it.
func TestChannelFor(t *testing.T) {
	for rod, want := range map[unit.Length]string{
		unit.MM(2): "nose 3.2", unit.MM(3): "nose 3.2", 3200 * um: "nose 3.2", 3500 * um: "nose 6.35",
		unit.MM(6): "nose 6.35", unit.MM(7): "nose 12.7", unit.MM(10): "nose 12.7",
	} {
		c, err := ChannelFor(rod, noses, 0)
		if err != nil || c.Cutter.Name != want || !c.Half() || c.Rides {
			t.Errorf("rod %v: %+v %v, want %s to half", rod.Millimetres(), c, err, want)
		}
	}
	fat, err := ChannelFor(unit.MM(20), noses, 0)
	if err != nil || fat.Cutter.Name != "nose 12.7" || !fat.Rides || fat.Half() || fat.Groove.Depth != 6350*um {
		t.Errorf("rod 20: %+v %v", fat, err)
	}
	narrow, err := ChannelFor(unit.MM(10), noses, unit.MM(10))
	if err != nil || narrow.Mouth > unit.MM(10) || narrow.Half() {
		t.Errorf("rod 10 with a mouth of 10: %+v %v", narrow, err)
	}
	wantKey(t, second(ChannelFor(unit.MM(10), noses[2:3], 0)), "share.no-round-nose")
	wantKey(t, second(ChannelFor(0, noses, 0)), "figure.length-range")
	wantKey(t, second(WithCutter(noses[2], 5, 5)), "share.not-round-nose")
	wantKey(t, second(WithCutter(noses[1], unit.MM(7), unit.MM(3))), "share.cutter-too-short")
	if c, err := WithCutter(noses[0], unit.MM(8), unit.MM(10)); err != nil || c.Sit != unit.MM(8) {
		t.Errorf("12.7 sunk 8: %+v %v", c, err)
	}
}

// TestChannelLaws: no cutter of the shop lets the rod lie deeper within the mouth.
func TestChannelLaws(t *testing.T) {
	const seed = 31
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 1500 {
		rod := unit.MM(1) + unit.Length(rng.Int64N(3e7))
		widest := unit.Length(0)
		if rng.IntN(3) > 0 {
			widest = unit.MM(2) + unit.Length(rng.Int64N(3e7))
		}
		c, err := ChannelFor(rod, noses, widest)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		if c.Sit > rod/2 || (widest > 0 && c.Mouth > widest) || c.Mouth != c.Groove.Mouth() {
			t.Fatalf("seed %d step %d: %+v", seed, i, c)
		}
		for _, other := range noses {
			depth := unit.Length(rng.Int64N(int64(rod/2))) + 1
			depth = depth.Round(depthStep, unit.Down)
			if depth == 0 || (other.CuttingLength > 0 && depth > other.CuttingLength) || depth > other.NoseRadius() {
				continue
			}
			rival, err := WithCutter(other, depth, rod)
			if err == nil && (widest == 0 || rival.Mouth <= widest) && rival.Sit > c.Sit {
				t.Fatalf("seed %d step %d: rod %d: %+v beats %+v", seed, i, rod, rival, c)
			}
		}
	}
}

func TestTroughDepth(t *testing.T) {
	if got := TroughDepth(unit.MM(12), unit.MM(4), unit.MM(2), 0); got != unit.MM(6) {
		t.Errorf("head 12 on a half-sunk rod: %v, want its radius", got)
	}
	if got := TroughDepth(unit.MM(12), unit.MM(10), unit.MM(3), unit.MM(1)); got != unit.MM(5) {
		t.Errorf("rod 10 sitting 3: %v, want 5", got)
	}
	if got := TroughDepth(unit.MM(4), unit.MM(20), unit.MM(1), 0); got != 0 {
		t.Errorf("a head above the surface: %v", got)
	}
}

func TestPlay(t *testing.T) {
	p, err := PlayAlong(unit.MM(180))
	if err != nil || p.Value != unit.MM(2) || p.High != unit.MM(3) {
		t.Errorf("a rod of 180 gets %+v, want 2 to 3 more", p)
	}
	if p, _ := PlayAlong(unit.MM(350)); p.Value != unit.MM(3) {
		t.Errorf("a needle of 350 gets %v", p.Value)
	}
	wantKey(t, second(PlayAlong(0)), "figure.length-range")
	h, err := FingerHollow(unit.MM(5))
	if err != nil || h.Along.Value != unit.MM(32) || h.Depth.Value != unit.MM(8) {
		t.Errorf("hollow %+v %v", h, err)
	}
	if LeastFloor(unit.MM(8)).Value != unit.MM(8) || LeastFloor(unit.MM(1)).Value != unit.MM(3) {
		t.Error("least floor")
	}
}
