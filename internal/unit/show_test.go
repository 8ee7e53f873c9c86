package unit

import (
	"math/rand/v2"
	"strings"
	"testing"
)

func TestFormat(t *testing.T) {
	metric := Show{System: Metric, Resolution: Millimetre / 2}
	eighths := Show{System: Inches, Denominator: 8}
	for _, c := range []struct {
		show Show
		l    Length
		want string
	}{
		{Show{}, MM(18), "18"},
		{Show{}, 17_600_000, "17.6"},
		{Show{}, 17_649_999, "17.6"},
		{Show{Resolution: Nanometre}, 17_649_999, "17.649999"},
		{Show{Comma: true}, 17_600_000, "17,6"},
		{Show{Resolution: MM(5)}, MM(18), "20"},
		// Common practice, no source: 5 3/8 in is 136.5 mm, not 135.
		{metric, 136_525_000, "136.5"},
		// 442 mm is 17.4016 in: what goes in is cut to 17 3/8 in.
		{eighths.Toward(Down), MM(442), "17 3/8"},
		{eighths.Toward(Up), MM(442), "17 1/2"},
		{Show{System: Inches, Denominator: 32}, MM(442), "17 13/32"},
		{Show{System: Inches, Denominator: 32, Rounding: Down}, MM(442), "17 3/8"},
		{eighths, 19_050_000, "3/4"},
		{eighths, -136_525_000, "-5 3/8"},
		{eighths, 0, "0"},
		{eighths, 2 * Inch, "2"},
		{Show{System: Inches, Denominator: 64, Style: Joined}, 136_525_000, "5-3/8"},
		{Show{System: Inches, Denominator: 64, Style: Signs}, 136_525_000, "5⅜"},
		{Show{System: Inches, Denominator: 64, Style: Signs}, 5*Inch + 13*SixtyFourth, "5¹³⁄₆₄"},
		{Show{System: Inches, Denominator: 7}, 136_525_000, "5 3/8"},
		{Show{System: Both, Resolution: Millimetre / 2, Denominator: 16}, 136_525_000, "136.5 (5 3/8)"},
		{Show{System: Both, Master: Inches, Resolution: Millimetre / 2, Denominator: 16}, 136_525_000, "5 3/8 (136.5)"},
	} {
		if got := c.show.Format(c.l); got != c.want {
			t.Errorf("%+v: %d nm shown as %q, want %q", c.show, c.l, got, c.want)
		}
	}
	both := Show{System: Both, Resolution: Millimetre / 2, Denominator: 16}
	if got := both.FormatUnit(136_525_000); got != "136.5 mm (5 3/8 in)" {
		t.Errorf("got %q", got)
	}
}

// 17 13/32 in is 0.12 mm more than 442 mm: the reason why what goes in rounds
// down (a box for sheets; arithmetic).
func TestThirtySecondTooBig(t *testing.T) {
	over := mustParse(t, "17 13/32 in", Millimetre) - MM(442)
	if over != 118_750 {
		t.Errorf("17 13/32 in is %d nm over 442 mm, want 118750", over)
	}
	if down := (Show{System: Inches, Denominator: 32, Rounding: Down}).Round(MM(442)); down > MM(442) {
		t.Errorf("rounded down to %d, above 442 mm", down)
	}
}

func randomShow(r *rand.Rand) Show {
	return Show{
		System:      []System{Metric, Inches, Both}[r.IntN(3)],
		Master:      []System{Metric, Inches}[r.IntN(2)],
		Resolution:  []Length{0, 1, 1000, 10_000, 100_000, 500_000, Millimetre, MM(5)}[r.IntN(8)],
		Denominator: []int{1, 2, 4, 8, 16, 32, 64}[r.IntN(7)],
		Rounding:    []Rounding{Nearest, Down, Up}[r.IntN(3)],
		Style:       []Style{Spaced, Joined, Signs}[r.IntN(3)],
	}
}

func randomLength(r *rand.Rand) Length {
	l := Length(r.Int64N(int64(MM(3000))))
	switch r.IntN(4) {
	case 0:
		l = l / SixtyFourth * SixtyFourth
	case 1:
		l = l / 100_000 * 100_000
	}
	if r.IntN(4) == 0 {
		l = -l
	}
	return l
}

// Law: what is shown reads back as what Round says, which lies within one step
// and on the side asked for; an edition in both shows the two alone.
func TestLawShownReadsBack(t *testing.T) {
	seed := uint64(3)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for range 50_000 {
		s, l := randomShow(r), randomLength(r)
		text := s.Format(l)
		if s.System == Both {
			master, other, _ := strings.Cut(strings.TrimSuffix(text, ")"), " (")
			second := Metric
			if s.Works() == Metric {
				second = Inches
			}
			if master != s.In(s.Works()).Format(l) || other != s.In(second).Format(l) {
				t.Fatalf("%+v: %d shown as %q", s, l, text)
			}
			continue
		}
		back, err := Parse(text, s.System.Unit())
		if err != nil || back != s.Round(l) {
			t.Fatalf("%+v: %d shown as %q, read back as %d, %v; want %d", s, l, text, back, err, s.Round(l))
		}
		off := back - l
		if off.Abs() >= s.Step() || s.Rounding == Down && off > 0 || s.Rounding == Up && off < 0 || s.Rounding == Nearest && 2*off.Abs() > s.Step() {
			t.Fatalf("%+v: %d shown as %d", s, l, back)
		}
		if withUnit, err := Parse(s.FormatUnit(l), Metre); err != nil || withUnit != back {
			t.Fatalf("%q read as %d, %v", s.FormatUnit(l), withUnit, err)
		}
	}
}

// Law: a row adds up as printed, each term within a step of its value, and
// terms on the step are left alone.
func TestLawRowsAddUp(t *testing.T) {
	seed := uint64(4)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for range 20_000 {
		s := randomShow(r)
		terms := make([]Length, r.IntN(40))
		var sum, printed Length
		for i := range terms {
			terms[i] = randomLength(r)
			sum += terms[i]
		}
		shown := ShowRow(terms, s)
		for i, p := range shown {
			printed += p
			if (p-terms[i]).Abs() >= s.Step() || p%s.Step() != 0 {
				t.Fatalf("%+v: term %d shown as %d", s, terms[i], p)
			}
		}
		if printed != s.Round(sum) {
			t.Fatalf("%+v: %v: printed terms add up to %d, the sum is printed as %d", s, terms, printed, s.Round(sum))
		}
	}
}

// Law: a row with kept members adds up as printed, kept members have the figure of
// their own side unless one of them must take the difference, and then it is told.
func TestLawRowsClose(t *testing.T) {
	seed := uint64(6)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for range 20_000 {
		s := randomShow(r)
		members := make([]Member, 1+r.IntN(12))
		var sum, printed Length
		for i := range members {
			members[i] = Member{randomLength(r), r.IntN(2) == 0, []Rounding{Nearest, Down, Up}[r.IntN(3)]}
			sum += members[i].Length
		}
		shown, takes := CloseRow(members, s)
		for i, p := range shown {
			printed += p
			m := members[i]
			switch {
			case i == takes:
			case m.Kept && p != m.Length.Round(s.Step(), m.Toward):
				t.Fatalf("%+v: kept %d shown as %d", s, m.Length, p)
			case (p - m.Length).Abs() >= s.Step():
				t.Fatalf("%+v: %d shown as %d", s, m.Length, p)
			}
		}
		if printed != s.Round(sum) {
			t.Fatalf("%+v: %v adds up to %d, printed %d", s, members, printed, s.Round(sum))
		}
	}
}

// A row of an insert that goes into a drawer, by hand in 32nds: 442 is 556.85, down
// 556; five walls of 8 are 10.08, each 10; the bays 101.41 107.71 120.31 177.01 are
// 101 107 120 177 and share the one that is left, which the second has most need of.
func TestRowThatGoesIn(t *testing.T) {
	var members []Member
	for i, bay := range []Length{80_500_000, 85_500_000, 95_500_000, 140_500_000} {
		members = append(members, Member{Length: MM(8), Kept: true}, Member{Length: bay})
		if i == 3 {
			members = append(members, Member{Length: MM(8), Kept: true})
		}
	}
	shown, takes := CloseRow(members, Show{System: Inches, Denominator: 32, Rounding: Down})
	want := []Length{10, 101, 10, 108, 10, 120, 10, 177, 10}
	for i, w := range want {
		if takes != -1 || shown[i] != w*Inch/32 {
			t.Fatalf("%v, %d takes the difference; want %v of 1/32", shown, takes, want)
		}
	}
	// Two kept members that do not come to the sum: the larger takes it and is named.
	shown, takes = CloseRow([]Member{{MM(4), true, Nearest}, {MM(58), true, Down}}, Show{System: Inches, Denominator: 32, Rounding: Down})
	if takes != -1 || shown[0]+shown[1] != 78*Inch/32 { // 5.04 and 73.07 are 78.11
		t.Errorf("%v, %d", shown, takes)
	}
	shown, takes = CloseRow([]Member{{MM(10), true, Down}, {MM(50), true, Down}}, Show{System: Inches, Denominator: 32})
	if takes != 1 || shown[0] != 12*Inch/32 || shown[1] != 64*Inch/32 { // 12.6 and 62.99 are 75.59, 76
		t.Errorf("%v, %d takes the difference", shown, takes)
	}
}

func TestRowOfThirds(t *testing.T) {
	// A case of 500 shared in three: 166.667 each, shown to 0.1.
	got := ShowRow(MM(500).Share(3), Show{})
	want := []Length{166_600_000, 166_700_000, 166_700_000} // the first is a nanometre less than the others
	for i := range want {
		if got[i] != want[i] {
			t.Fatalf("got %v, want %v", got, want)
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	s := Show{System: Both, Denominator: 16}
	for b.Loop() {
		s.Format(136_525_000)
	}
}
