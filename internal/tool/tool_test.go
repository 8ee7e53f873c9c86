package tool

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

const um = unit.Micrometre

// TestWorkedExamples: rim speed and feed per tooth, arithmetic on definitions.
func TestWorkedExamples(t *testing.T) {
	text, err := os.ReadFile("testdata/worked_examples.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, row := range figure.MustTable("worked_examples.csv", string(text)).Rows() {
		var in map[string]float64
		want, _ := row.Number("expected")
		tolerance, _ := row.Number("tolerance")
		if err := json.Unmarshal([]byte(row.Text("inputs_json")), &in); err != nil || row.Err() != nil {
			t.Fatal(err, row.Err())
		}
		var got float64
		switch id := row.Text("id"); {
		case strings.HasPrefix(id, "rim-3in"):
			got = float64(RimSpeedOf(3*unit.Inch, Speed(in["rpm"]))) * 60 / 0.3048
		case id == "rim-889-12000":
			got = float64(RimSpeedOf(unit.FromMillimetres(in["d"]), Speed(in["rpm"])))
		case id == "feed-tooth":
			got = FeedPerTooth(FeedRate(unit.FromMillimetres(1000*in["v_m_min"])), Speed(in["rpm"]), int(in["z"])).Millimetres()
		default:
			t.Errorf("%s: no test knows this row", id)
			continue
		}
		rows++
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s: %g, want %g (%s)", row.Text("id"), got, want, row.Text("source"))
		}
	}
	if rows != 4 {
		t.Errorf("%d rows, want 4", rows)
	}
}

// TestSpeeds: a 25.4 round-nose has 22 000 at most and starts at 16 000 (the two
// router tables and the guide to two makers' charts); the mark goes before.
func TestSpeeds(t *testing.T) {
	bit := Cutter{Name: "core-box 25.4", Shape: RoundNose, Diameter: unit.Inch}
	for _, c := range []struct {
		diameter             unit.Length
		mark, greatest, from Speed
	}{
		{unit.Inch, 0, 22000, 16000},
		{unit.Inch, 20000, 20000, 16000},
		{unit.Inch, 12000, 12000, 12000},
		{unit.Inch, 30000, 22000, 16000},
		{unit.Inch + 1, 0, 18000, 14000},
		{3175 * um, 0, 22000, 22000},
		{2 * unit.Inch, 0, 18000, 10000},
		{80 * unit.Millimetre, 0, 8000, 8000},
	} {
		bit.Diameter, bit.Greatest = c.diameter, c.mark
		s, err := SpeedsOf(bit)
		if err != nil || s.Greatest.Value != c.greatest || s.Start.Value != c.from {
			t.Errorf("%g mm marked %d: at most %d from %d (%v), want %d and %d", c.diameter.Millimetres(), c.mark, s.Greatest.Value, s.Start.Value, err, c.greatest, c.from)
		}
	}
	bit.Diameter = 90 * unit.Millimetre
	wantKey(t, second(SpeedsOf(bit)), "tool.too-big-for-router")
	wantKey(t, second(SpeedsOf(Cutter{Shape: Drill, Diameter: unit.MM(6)})), "tool.speed-unknown")
	m := Machine{Name: "old router", LeastSpeed: 25000, GreatestSpeed: 25000}
	wantKey(t, second(m.Speed(Cutter{Shape: Straight, Diameter: 2 * unit.Inch})), "tool.spindle-too-fast")
	m.LeastSpeed, m.GreatestSpeed = 10000, 15000
	if s, err := m.Speed(Cutter{Shape: Straight, Diameter: unit.MM(6)}); err != nil || s != 15000 {
		t.Errorf("speed %d, %v", s, err)
	}
}

// TestSpeedFalls: a bigger cutter never turns faster, and the start is never
// above the greatest.
func TestSpeedFalls(t *testing.T) {
	last := Speeds{Greatest: figure.Of[Speed]{Value: 99999}, Start: figure.Of[Speed]{Value: 99999}}
	for d := unit.MM(1); d <= 88*unit.Millimetre; d += 500 * um {
		s, err := SpeedsOf(Cutter{Shape: Straight, Diameter: d})
		if err != nil || s.Greatest.Value > last.Greatest.Value || s.Start.Value > last.Start.Value || s.Start.Value > s.Greatest.Value {
			t.Fatalf("%g mm: %+v after %+v (%v)", d.Millimetres(), s, last, err)
		}
		last = s
	}
}

func second[T any](_ T, err error) error { return err }

func wantKey(t *testing.T, err error, key string) {
	t.Helper()
	var r *figure.Refusal
	if !errors.As(err, &r) || r.Text.Key != key {
		t.Errorf("error %v, want %s", err, key)
	}
}

func TestPasses(t *testing.T) {
	got, err := Passes(unit.MM(8), unit.MM(3))
	if err != nil || !slices.Equal(got, []unit.Length{unit.MM(3), unit.MM(6), unit.MM(8)}) {
		t.Errorf("8 by 3: %v %v", got, err)
	}
	if got, _ := Passes(unit.MM(6), unit.MM(3)); len(got) != 2 {
		t.Errorf("6 by 3: %v", got)
	}
	if got, err := Passes(0, unit.MM(3)); got != nil || err != nil {
		t.Errorf("no depth: %v %v", got, err)
	}
	wantKey(t, second(Passes(unit.Metre, unit.MM(1))), "tool.too-many-passes")
	wantKey(t, second(Passes(1, 0)), "tool.too-many-passes")
	const seed = 5
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 500 {
		depth, per := unit.Length(rng.Int64N(1e8))+1, unit.Length(rng.Int64N(1e7))+1e6
		at, err := Passes(depth, per)
		if err != nil {
			t.Fatal(seed, err)
		}
		last := unit.Length(0)
		for _, d := range at {
			if d <= last || d-last > per {
				t.Fatalf("seed %d: %v by %d", seed, at, per)
			}
			last = d
		}
		if last != depth {
			t.Fatalf("seed %d: ends at %d, not %d", seed, last, depth)
		}
	}
}

func TestDepthPerPass(t *testing.T) {
	house := figure.Exactly(unit.MM(2), figure.Source{Key: "shop.depth", Status: figure.Stated})
	for _, c := range []struct {
		name   string
		cutter Cutter
		house  figure.Of[unit.Length]
		want   unit.Length
		status figure.Status
	}{
		{"rule", Cutter{Shape: Straight, Diameter: unit.MM(12)}, figure.Of[unit.Length]{}, unit.MM(3), figure.Practice},
		{"thin", Cutter{Shape: RoundNose, Diameter: 3200 * um}, figure.Of[unit.Length]{}, 1600 * um, figure.Practice},
		{"1/8 in", Cutter{Shape: RoundNose, Diameter: 3175 * um}, figure.Of[unit.Length]{}, 1500 * um, figure.Practice},
		{"house", Cutter{Shape: Straight, Diameter: unit.MM(12)}, house, unit.MM(2), figure.Stated},
		{"house, thin", Cutter{Shape: Straight, Diameter: unit.MM(2)}, house, unit.MM(1), figure.Practice},
		{"stated", Cutter{Shape: Straight, Diameter: unit.MM(2), PassDepth: 700 * um}, house, 700 * um, figure.Stated},
	} {
		got := DepthPerPass(c.cutter, c.house)
		if got.Value != c.want || got.Source.Status != c.status || got.Low > got.Value || got.High < got.Value {
			t.Errorf("%s: %+v, want %d %s", c.name, got, c.want, c.status)
		}
	}
}

// TestForWidth: a 17.7 housing with a 12.7 cutter is two passes 5.0 apart.
func TestForWidth(t *testing.T) {
	shop := []Cutter{{Name: "12.7", Shape: Straight, Diameter: 12700 * um}, {Name: "6.35", Shape: Straight, Diameter: 6350 * um, CuttingLength: unit.MM(5)}, {Name: "nose", Shape: RoundNose, Diameter: unit.MM(17)}}
	got, err := ForWidth(shop, 17700*um, unit.MM(6))
	if err != nil || got.Cutter.Name != "12.7" || got.Shift != unit.MM(5) || got.Passes != 2 {
		t.Errorf("17.7: %+v %v", got, err)
	}
	if got, err := ForWidth(shop, 12700*um, unit.MM(6)); err != nil || got.Shift != 0 || got.Passes != 1 {
		t.Errorf("12.7: %+v %v", got, err)
	}
	wantKey(t, second(ForWidth(shop, unit.MM(8), unit.MM(6))), "tool.no-straight-cutter")
	wantKey(t, second(ForWidth(nil, unit.MM(8), unit.MM(6))), "tool.no-straight-cutter")
	if got, err := ForWidth(shop, unit.MM(60), unit.MM(6)); err != nil || got.Passes != 6 {
		t.Errorf("60: %+v %v", got, err) // 47.3 to shift in steps of at most 11.43
	}
}

func TestMachineLimits(t *testing.T) {
	planer := Machine{Name: "planer", Kind: ThicknessPlaner, Greatest: Limits{Width: Stated("greatest_width", unit.MM(300))}}.Completed()
	if got := planer.Check(Size{unit.MM(400), unit.MM(250), unit.MM(20)}); len(got) != 0 {
		t.Errorf("a good board: %+v", got)
	}
	if got := planer.Check(Size{unit.MM(305), unit.MM(300), 4800 * um}); len(got) != 0 {
		t.Errorf("a board of just the limits: %+v", got)
	}
	got := planer.Check(Size{unit.MM(218), unit.MM(406), unit.MM(3)})
	if len(got) != 3 {
		t.Fatalf("%d limits broken, want 3: %+v", len(got), got)
	}
	for i, want := range []string{"tool.workpiece-too-short", "tool.workpiece-too-wide", "tool.workpiece-too-thin"} {
		if got[i].Message().Key != want {
			t.Errorf("%s, want %s", got[i].Message().Key, want)
		}
	}
	if got[0].By() != unit.MM(87) || !got[0].Disputed() || got[2].Disputed() {
		t.Errorf("by %d, disputed %v and %v", got[0].By(), got[0].Disputed(), got[2].Disputed())
	}
	planer.Least.Length = Stated("least_length", unit.MM(200))
	if got := planer.Completed().Check(Size{Length: unit.MM(218)}); len(got) != 0 {
		t.Errorf("the maker's own limit does not go before the table's: %+v", got)
	}
	for _, k := range Kinds() {
		if m := Usual(k); m.Kind != k || m.Name == "" {
			t.Errorf("%s: %+v", k, m)
		}
	}
	for kind := range machinesOnce() {
		if !slices.Contains(Kinds(), kind) {
			t.Errorf("the table knows a machine %q that the package does not", kind)
		}
	}
	if l := Usual(Jointer).Least.Length; l.Value != unit.MM(305) || l.Source.Status != figure.Read {
		t.Errorf("jointer %+v", l)
	}
}

func TestCutterFaults(t *testing.T) {
	if err := (Cutter{Shape: Straight, Diameter: unit.MM(6)}).Check(); err != nil {
		t.Error(err)
	}
	wantKey(t, Cutter{Shape: "spoon", Diameter: unit.MM(6)}.Check(), "tool.unknown-shape")
	wantKey(t, Cutter{Shape: Straight}.Check(), "figure.length-range")
	wantKey(t, Cutter{Shape: Straight, Diameter: unit.MM(6), Shank: unit.MM(60)}.Check(), "figure.length-range")
	m := Machine{Name: "table", Collets: []unit.Length{6350 * um}}
	wantKey(t, m.Takes(Cutter{Shank: 12700 * um}), "tool.no-collet")
	if m.Takes(Cutter{Shank: 6350 * um}) != nil || (Machine{}).Takes(Cutter{Shank: 1}) != nil {
		t.Error("a fitting shank was refused")
	}
	if got := LeastBlade(unit.MM(250)); got.Value != unit.MM(150) {
		t.Errorf("least blade %v", got)
	}
}
