package timber

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

func wood(t testing.TB, name string) Species {
	t.Helper()
	s, err := Default().Find(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestCatalogue(t *testing.T) {
	all := Default().All()
	if len(all) != 105 {
		t.Errorf("%d species, want 105", len(all))
	}
	read, memory := 0, 0
	count := func(s figure.Source) {
		switch {
		case s.Status == figure.Read:
			read++
		case s.Status == figure.Memory:
			memory++
		}
		if s.Status != "" && s.Title == "" {
			t.Errorf("figure without a work: %+v", s)
		}
	}
	for _, s := range all {
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		if s.Kind != Hardwood && s.Kind != Softwood {
			t.Errorf("%s: kind %q", s.Name, s.Kind)
		}
		if s.Radial.Value > s.Tangential.Value {
			t.Errorf("%s moves more radially than tangentially", s.Name)
		}
		for _, f := range []figure.Source{s.Gravity.Source, s.ShrinkRadial.Source, s.ShrinkTangential.Source, s.ShrinkVolume.Source, s.MOE.Source, s.MOR.Source, s.Shear.Source, s.Hardness.Source} {
			count(f)
		}
		if s.CoefficientBasis != ByShrinkage {
			count(s.Radial.Source)
			count(s.Tangential.Source)
		}
	}
	t.Logf("fields read %d, from memory %d", read, memory)
	if read != 475 {
		t.Errorf("%d fields read in their source, want 475 as in the source table", read)
	}
	oak := wood(t, "northern red oak")
	if c := oak.Tangential; !(c.Low < c.Value && c.Value == 0.00369) {
		t.Errorf("red oak's own shrinkage is not in the range of its group's coefficient: %+v", c)
	}
	if c := wood(t, "shagbark hickory").Tangential; c.Source.Status != figure.Memory || math.Abs(float64(c.Value)-0.00378) > 0.00002 {
		t.Errorf("shagbark hickory %+v, want worked out of 10.5 %%", c)
	}
}

func TestNames(t *testing.T) {
	for name, want := range map[string]string{
		"Ash, white": "Ash, white", "white ash": "Ash, white", "American white ash": "Ash, white", "ASH (white) boards": "Ash, white",
		"European ash": "Ash, European", "American black cherry": "Cherry, black", "black cherry": "Cherry, black",
		"American black walnut": "Walnut, black", "American basswood": "Basswood, American", "hard maple": "Maple, sugar (hard)",
		"Prunus serotina": "Cherry, black", "yellow poplar": "Yellow-poplar", "teak": "Teak", "European beech": "Beech, European",
		"American cherry": "Cherry, black", "Sitka spruce": "Spruce, Sitka", "English oak": "Oak, European", "Quercus alba": "Oak, white",
	} {
		if s, err := Default().Find(name); err != nil || s.Name != want {
			t.Errorf("Find(%q) = %q, %v; want %q", name, s.Name, err, want)
		}
	}
	for name, want := range map[string][]string{
		"ash":                  {"Ash, European", "Ash, white"},
		"cherry":               {"Cherry, European", "Cherry, black"},
		"walnut":               {"Walnut, European", "Walnut, black"},
		"sycamore":             {"Maple, sycamore", "Sycamore, American"},
		"poplar":               {"Aspen, quaking", "Cottonwood, eastern", "Yellow-poplar"},
		"mahogany":             {"Khaya (African mahogany)", "Mahogany, true"},
		"redwood":              {"Pine, Scots", "Redwood, old-growth"},
		"Sequoia sempervirens": {"Redwood, old-growth", "Redwood, young-growth"},
		"american ash":         {"Ash, black", "Ash, green", "Ash, white"},
	} {
		_, err := Default().Find(name)
		var which *AmbiguousError
		var text *figure.Refusal
		if !errors.As(err, &which) || !errors.As(err, &text) || text.Text.Key != "timber.ambiguous-name" {
			t.Errorf("Find(%q): %v, want a question", name, err)
			continue
		}
		for _, w := range want {
			if !slices.Contains(which.Candidates, w) {
				t.Errorf("Find(%q) offers %v, want %q among them", name, which.Candidates, w)
			}
		}
	}
	for name, near := range map[string]string{"blak walnutt": "Walnut, black", "chery": "Cherry, black", "": "", "zzzz": "", "unobtainium": ""} {
		_, err := Default().Find(name)
		var unknown *UnknownError
		if !errors.As(err, &unknown) {
			t.Errorf("Find(%q): %v", name, err)
		} else if near != "" && !slices.Contains(unknown.Near, near) {
			t.Errorf("Find(%q) is near %v, want %q among them", name, unknown.Near, near)
		}
	}
}

func TestAliasesExist(t *testing.T) {
	c := Default()
	for alias, names := range c.aliases {
		for _, n := range names {
			if !slices.ContainsFunc(c.species, func(s Species) bool { return s.Name == n }) {
				t.Errorf("%q means %q, which is not in the catalogue", alias, n)
			}
		}
	}
}

func TestShopSpecies(t *testing.T) {
	stated := figure.Source{Key: "shop.species", Status: figure.Stated}
	pear := Species{Name: "Pear", Kind: Hardwood, Radial: figure.Exactly(Coefficient(0.0015), stated), Tangential: figure.Exactly(Coefficient(0.0030), stated), FibreSaturation: figure.Exactly(Moisture(30), stated)}
	c, err := Default().With(pear)
	if err != nil {
		t.Fatal(err)
	}
	if s, err := c.Find("pear"); err != nil || s.Tangential.Value != 0.0030 {
		t.Errorf("pear: %v %v", s, err)
	}
	if _, err := Default().Find("pear"); err == nil {
		t.Error("the embedded catalogue was changed")
	}
	pear.Tangential = figure.Of[Coefficient]{}
	if _, err := Default().With(pear); err == nil {
		t.Error("a wood without movement was taken")
	}
}

// TestSeasonalChecks recomputes what furniture makers report (about 1/8 in for a
// 4 in flat-sawn maple front, 3/32 in cherry and walnut, 0.012 in for a 3/8 in
// quarter-sawn maple side's thickness, from 35 to 80 % humidity).
func TestSeasonalChecks(t *testing.T) {
	dry, _ := EMC(Air{35, 21.11})
	wet, _ := EMC(Air{80, 21.11})
	for _, c := range []struct {
		wood     string
		sawn     Sawn
		across   Across
		size     unit.Length
		in, near float64
	}{
		{"hard maple", FlatSawn, Width, 4 * unit.Inch, 0.125, 0.008},
		{"black cherry", FlatSawn, Width, 4 * unit.Inch, 0.09375, 0.008},
		{"black walnut", FlatSawn, Width, 4 * unit.Inch, 0.09375, 0.008},
		{"hard maple", QuarterSawn, Thickness, unit.Inch * 3 / 8, 0.012, 0.0006},
	} {
		got, err := Material{wood(t, c.wood), c.sawn, c.across}.Change(c.size, dry, wet)
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(got.Value.Millimetres()/25.4 - c.in); off > c.near {
			t.Errorf("%s: %.4f in, want about %g", c.wood, got.Value.Millimetres()/25.4, c.in)
		}
	}
}

// TestBriefMovements: figures that a competent maker expects, to the tenth that
// he states (coefficients of Table 13-5; common practice, no source).
func TestBriefMovements(t *testing.T) {
	for _, c := range []struct {
		wood  string
		size  int64
		delta Moisture
		want  float64
	}{
		{"black cherry", 278, 5, 3.4}, {"white ash", 400, 5, 5.5}, {"white ash", 83, 5, 1.1},
		{"black cherry", 114, 5, 1.4}, {"yellow poplar", 114, 5, 1.65}, {"European ash", 400, 5, 7.6},
	} {
		got, err := Material{wood(t, c.wood), FlatSawn, Width}.Change(unit.MM(c.size), 7, 7+c.delta)
		if err != nil || math.Abs(got.Value.Millimetres()-c.want) > 0.051 {
			t.Errorf("%s %d: %.3f, want %g (%v)", c.wood, c.size, got.Value.Millimetres(), c.want, err)
		}
	}
}

// TestEquationInUse: 13-1 from 6 to 14 % and 13-2 beyond, for the whole season.
func TestEquationInUse(t *testing.T) {
	m := Material{wood(t, "teak"), FlatSawn, Width}
	for _, c := range []struct {
		from, to Moisture
		want     figure.Source
	}{{6, 14, SourceNarrow}, {14, 6, SourceNarrow}, {8, 14.01, SourceWide}, {5.99, 8, SourceWide}} {
		if d, err := m.Change(unit.MM(100), c.from, c.to); err != nil || d.Source.Key != c.want.Key {
			t.Errorf("%g to %g: %s %v", c.from, c.to, d.Source.Key, err)
		}
	}
	s, err := m.Swing(unit.MM(100), Season{Now: 8, Dry: 7, Wet: 15})
	if err != nil || s.Dry.Source.Key != SourceWide.Key {
		t.Errorf("one season, two equations: %+v %v", s, err)
	}
}

func TestSawnUnknown(t *testing.T) {
	s := wood(t, "black cherry")
	m := Material{s, SawnUnknown, Width}
	if c := m.Coefficient(); c.Value != s.Tangential.Value || c.Low != s.Radial.Value || c.High != s.Tangential.Value {
		t.Errorf("unknown sawing: %+v", c)
	}
	if (Material{s, QuarterSawn, Width}).Coefficient().Value != s.Radial.Value ||
		(Material{s, QuarterSawn, Thickness}).Coefficient().Value != s.Tangential.Value ||
		(Material{s, FlatSawn, Thickness}).Coefficient().Value != s.Radial.Value {
		t.Error("sawing and direction are confused")
	}
	got, err := m.Change(unit.MM(100), 12, 8)
	if err != nil || !(got.Low == got.Value && got.Value < got.High && got.High < 0) {
		t.Errorf("shrinking 100: %+v, %v", got, err)
	}
}

// TestMovementLaws: random woods, sizes and moistures. Wide change is exact in
// the moisture content: there and back closes to rounding; both equations agree
// within 3 % where both hold; nothing moves above fibre saturation.
func TestMovementLaws(t *testing.T) {
	const seed = 20
	rng := rand.New(rand.NewPCG(seed, 0))
	all := Default().All()
	for i := range 3000 {
		m := Material{all[rng.IntN(len(all))], []Sawn{FlatSawn, QuarterSawn}[rng.IntN(2)], Across(rng.IntN(2))}
		size := unit.Length(rng.Int64N(int64(unit.Metre))) + 1
		a, b := Moisture(rng.Float64()*34), Moisture(rng.Float64()*34)
		there, err := m.Change(size, a, b)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		if (b > a) != (there.Value > 0) && there.Value != 0 {
			t.Fatalf("seed %d step %d: from %g to %g changes by %d", seed, i, a, b, there.Value)
		}
		if there.Source.Key == SourceWide.Key {
			back, err := m.Change(size+there.Value, b, a)
			if err != nil || (there.Value+back.Value).Abs() > 2 {
				if back.Source.Key == SourceWide.Key {
					t.Fatalf("seed %d step %d: there %d and back %d (%v)", seed, i, there.Value, back.Value, err)
				}
			}
		}
		c := m.Coefficient().Value
		x, y := 6+Moisture(rng.Float64()*8), 6+Moisture(rng.Float64()*8)
		if n, w := narrowFactor(c, x, y), wideFactor(c, x, y); math.Abs(n-w) > 0.03*math.Abs(n) {
			t.Fatalf("seed %d step %d: equations disagree: %g and %g", seed, i, n, w)
		}
	}
	m := Material{wood(t, "teak"), FlatSawn, Width}
	if d, err := m.Change(unit.MM(100), 31, 60); err != nil || d.Value != 0 {
		t.Errorf("above fibre saturation: %v %v", d, err)
	}
}

// TestLeaveLaws: the part made today never binds, is the greatest that does not,
// and OpeningFor undoes PartFor.
func TestLeaveLaws(t *testing.T) {
	const seed = 21
	rng := rand.New(rand.NewPCG(seed, 0))
	all := Default().All()
	for i := range 3000 {
		in := Inset{
			Material: Material{all[rng.IntN(len(all))], []Sawn{SawnUnknown, FlatSawn, QuarterSawn}[rng.IntN(3)], Width},
			Season:   Season{Now: Moisture(4 + rng.Float64()*14), Dry: Moisture(4 + rng.Float64()*6), Wet: Moisture(10 + rng.Float64()*10)},
			Play:     unit.Length(rng.Int64N(int64(unit.MM(2)))),
		}
		opening := unit.MM(10) + unit.Length(rng.Int64N(int64(unit.Metre)))
		leave, err := in.PartFor(opening)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		if leave.Wet < in.Play || leave.Today < in.Play || leave.Dry < leave.Today || leave.Part+leave.Today != opening {
			t.Fatalf("seed %d step %d: %+v", seed, i, leave)
		}
		l, _ := in.law(opening)
		if biggest := float64(leave.Part) * l.growth(in.Season); float64(opening-leave.Wet) < biggest || float64(opening-leave.Dry) > float64(leave.Part)*l.loss(in.Season) {
			t.Fatalf("seed %d step %d: rounded to the wrong side: %+v, %f", seed, i, leave, biggest)
		}
		bigger, err := in.At(opening, leave.Part+3)
		if err != nil || bigger.Wet >= in.Play {
			t.Fatalf("seed %d step %d: a bigger part would fit: %+v", seed, i, bigger)
		}
		back, err := in.OpeningFor(leave.Part)
		if err != nil || back.Opening > opening || opening-back.Opening > 3 || back.Wet != in.Play {
			t.Fatalf("seed %d step %d: opening %d came back as %+v", seed, i, opening, back)
		}
		swing, err := in.Material.Swing(leave.Part, in.Season)
		if err != nil || (opening-leave.Part-swing.Grows()-leave.Wet).Abs() > 1 || (leave.Today+swing.Shrinks()-leave.Dry).Abs() > 1 {
			t.Fatalf("seed %d step %d: swing %+v does not agree with %+v", seed, i, swing, leave)
		}
	}
}

func TestLeaveRefusals(t *testing.T) {
	in := Inset{Material: Material{wood(t, "American beech"), FlatSawn, Width}, Season: Season{Now: 7, Dry: 7, Wet: 12}, Play: unit.MM(1), Loosest: unit.MM(2)}
	leave, err := in.PartFor(unit.MM(200))
	var r *figure.Refusal
	if !errors.As(err, &r) || r.Text.Key != "timber.too-loose" || leave.Part == 0 {
		t.Errorf("a loose fit passed: %+v %v", leave, err)
	}
	in.Loosest = 0
	if _, err := in.PartFor(unit.MM(1)); !errors.As(err, &r) || r.Text.Key != "timber.no-room" {
		t.Errorf("no room: %v", err)
	}
	if _, err := in.PartFor(-5); err == nil {
		t.Error("a negative opening passed")
	}
	in.Season = Season{Now: 8, Dry: 12, Wet: 6}
	if _, err := in.PartFor(unit.MM(100)); !errors.As(err, &r) || r.Text.Key != "timber.season-reversed" {
		t.Errorf("reversed season: %v", err)
	}
	if _, err := (Material{}).Change(unit.MM(1), 7, 8); err == nil {
		t.Error("no wood at all moved")
	}
	for _, air := range []Air{{-1, 20}, {101, 20}, {50, -11}, {50, 131}, {Humidity(math.NaN()), 20}, {50, Temperature(math.NaN())}} {
		if _, err := EMC(air); err == nil {
			t.Errorf("air %v was taken", air)
		}
	}
	if s, err := SeasonOf(Air{38, 20}, Air{35, 20}, Air{80, 20}); err != nil || !(s.Dry < s.Now && s.Now < s.Wet) {
		t.Errorf("season %+v %v", s, err)
	}
}

func TestEMCRises(t *testing.T) {
	for temperature := Temperature(-10); temperature <= 60; temperature += 5 {
		last := Moisture(-1)
		for h := Humidity(0); h <= 100; h++ {
			m, err := EMC(Air{h, temperature})
			if err != nil || m <= last || m > 40 {
				t.Fatalf("%g %% at %g: %g after %g (%v)", h, temperature, m, last, err)
			}
			last = m
		}
	}
}

// TestDensity: a wood whose specific gravity is stated at 12 % weighs 1120 times
// it there; more water, more mass for the volume.
func TestDensity(t *testing.T) {
	for _, s := range Default().All() {
		at12, err := s.Density(12)
		if !s.Gravity.Known() {
			if err == nil {
				t.Errorf("%s has no specific gravity and yet a density", s.Name)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		if want := Density(1120 * float64(s.Gravity.Value)); s.GravityBasis != GravityGreen && math.Abs(float64(at12.Value-want)) > 0.001 {
			t.Errorf("%s: %.2f at 12 %%, want %.2f", s.Name, at12.Value, want)
		}
		if wet, _ := s.Density(40); s.GravityBasis == GravityGreen && math.Abs(float64(wet.Value)-1400*float64(s.Gravity.Value)) > 0.001 {
			t.Errorf("%s: %.2f at 40 %%, want 1400 times the specific gravity on green volume", s.Name, wet.Value)
		}
		at20, _ := s.Density(20)
		if at20.Value <= at12.Value {
			t.Errorf("%s is no heavier at 20 %% than at 12 %%", s.Name)
		}
	}
}

func BenchmarkLeave(b *testing.B) {
	in := Inset{Material: Material{wood(b, "black cherry"), FlatSawn, Width}, Season: Season{Now: 7, Dry: 7, Wet: 12}, Play: unit.MM(1)}
	for b.Loop() {
		_, _ = in.PartFor(unit.MM(200))
	}
}

func BenchmarkFind(b *testing.B) {
	c := Default()
	for b.Loop() {
		_, _ = c.Find("American black cherry")
	}
}

func FuzzFind(f *testing.F) {
	f.Add("white ash")
	f.Add("Ash, (white) boards")
	f.Fuzz(func(t *testing.T, name string) {
		s, err := Default().Find(name)
		if (err == nil) != (s.Name != "") {
			t.Errorf("%q: %q and %v", name, s.Name, err)
		}
	})
}
