package unit

import (
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
)

func mustParse(t *testing.T, text string, bare Length) Length {
	t.Helper()
	l, err := Parse(text, bare)
	if err != nil {
		t.Fatalf("Parse(%q): %v", text, err)
	}
	return l
}

// An inch is 25.4 mm (international yard and pound agreement, 1959); all else
// in this table is sums with it.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		bare Length
		want Length
	}{
		{"18", Millimetre, MM(18)},
		{"18", Inch, 18 * Inch},
		{"18 mm", Inch, MM(18)},
		{"18mm", Inch, MM(18)},
		{" 18\tmm ", Inch, MM(18)},
		{"1.9 cm", Millimetre, MM(19)},
		{"2.4 m", Millimetre, MM(2400)},
		{"250 µm", Millimetre, 250 * Micrometre},
		{"250 μm", Millimetre, 250 * Micrometre},
		{"136,5", Millimetre, 136_500_000},
		{"0,125 mm", Millimetre, 125_000},
		{"1.500", Millimetre, 1_500_000},
		{".5 in", Millimetre, 12_700_000},
		{"5 3/8 in", Millimetre, 136_525_000},
		{`5-3/8"`, Millimetre, 136_525_000},
		{`5 3/8"`, Millimetre, 136_525_000},
		{"5 3/8", Inch, 136_525_000},
		{"5⅜ in", Millimetre, 136_525_000},
		{"5 ⅜″", Millimetre, 136_525_000},
		{"5³⁄₈ in", Millimetre, 136_525_000},
		{"5 3⁄8 in", Millimetre, 136_525_000},
		{"3/4", Inch, 19_050_000},
		{"3/4 in", Millimetre, 19_050_000},
		{"3/4 mm", Inch, 750_000},
		{"¾in.", Millimetre, 19_050_000},
		{`23/32"`, Millimetre, 23 * 2 * SixtyFourth},
		{"13/64 in", Millimetre, 13 * SixtyFourth},
		{"9/8 in", Millimetre, 9 * 8 * SixtyFourth},
		{"3 1/2in", Millimetre, 88_900_000},
		{`1' 2 1/2"`, Millimetre, 368_300_000},
		{`1'2"`, Millimetre, 14 * Inch},
		{"1′2½″", Millimetre, 368_300_000},
		{"1’ 2½”", Millimetre, 368_300_000},
		{"1' 2", Millimetre, 14 * Inch},
		{"1'2''", Millimetre, 14 * Inch},
		{"1 ft 2 in", Millimetre, 14 * Inch},
		{"2 1/2 ft", Millimetre, 30 * Inch},
		{"6'", Millimetre, 6 * Foot},
		{"8 feet", Millimetre, 8 * Foot},
		{"-18", Millimetre, MM(-18)},
		{"−5 3/8 in", Millimetre, -136_525_000},
		{`-1' 2"`, Millimetre, -14 * Inch},
		{"+3", Millimetre, MM(3)},
		{"0", Millimetre, 0},
		{"5.3333 in", Millimetre, 135_465_820},
		{"0.00001 in", Millimetre, 254},
		{"1000 m", Millimetre, MaxLength},
	} {
		if got := mustParse(t, c.text, c.bare); got != c.want {
			t.Errorf("Parse(%q) = %s mm, want %s mm", c.text, exactMetric(got), exactMetric(c.want))
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		want Fault
	}{
		{"", FaultEmpty}, {"  ", FaultEmpty}, {"-", FaultNoNumber}, {"mm", FaultUnexpected},
		{strings.Repeat("1", 65), FaultTooLong}, {"\xff", FaultNotText},
		{"1,500", FaultComma}, {"12,125 in", FaultComma},
		{"3/4", FaultFractionUnit}, {"5 3/8", FaultFractionUnit}, {"½", FaultFractionUnit},
		{"1 200", FaultTwoNumbers}, {"1 200 mm", FaultTwoNumbers}, {`1" 2"`, FaultTwoNumbers},
		{`1 1/2' 2"`, FaultTwoNumbers}, {"5 mm 3 mm", FaultTwoNumbers}, {"1.5 1/2 in", FaultTwoNumbers},
		{"1/0 in", FaultNoughtBelow}, {"5 9/8 in", FaultImproper}, {"5 8/8 in", FaultImproper},
		{"5 - 3/8 in", FaultUnexpected}, {"5 -3/8 in", FaultUnexpected}, {"5-3 in", FaultUnexpected},
		{"1/2.5 in", FaultUnexpected}, {"3/ in", FaultNoNumber},
		{"18 furlong", FaultUnknownUnit}, {"18 mmm", FaultUnknownUnit},
		{"1/128 in", FaultNotExact}, {"1/3 in", FaultNotExact}, {"⅓ in", FaultNotExact}, {"0.0000001 mm", FaultNotExact},
		{"0.0000001 in", FaultNotExact},
		{"1000.1 m", FaultTooLarge}, {"-2000000 mm m", FaultUnknownUnit}, {"99999999999999999999999 m", FaultTooLarge},
		{"45 deg", FaultWrongKind}, {"38 %", FaultWrongKind}, {"1:8", FaultWrongKind}, {"18 kg", FaultWrongKind},
		{"1.2.3", FaultTwoNumbers}, {"1.234,5", FaultTwoNumbers}, {"5 3/8/2 in", FaultUnexpected}, {"5 + 3", FaultUnexpected},
		{"1e3", FaultUnknownUnit}, {"5$", FaultUnexpected}, {"18-", FaultUnexpected},
	} {
		l, err := Parse(c.text, Millimetre)
		var fault *ParseError
		if !errors.As(err, &fault) {
			t.Errorf("Parse(%q) = %s mm, want fault %s", c.text, exactMetric(l), c.want)
		} else if fault.Fault != c.want {
			t.Errorf("Parse(%q): fault %s, want %s (%v)", c.text, fault.Fault, c.want, err)
		}
	}
}

func TestParseNotExactNamesNeighbours(t *testing.T) {
	_, err := Parse("5 3/128 in", Millimetre)
	var fault *ParseError
	if !errors.As(err, &fault) || fault.Low != 5*Inch+SixtyFourth || fault.High != 5*Inch+2*SixtyFourth {
		t.Fatalf("got %v", err)
	}
	if want := "5 1/64 in"; !strings.Contains(err.Error(), want) {
		t.Errorf("%v does not name %s", err, want)
	}
	_, err = Parse("-1/128 in", Millimetre)
	if !errors.As(err, &fault) || fault.Low != -SixtyFourth || fault.High != 0 {
		t.Fatalf("got %v", err)
	}
	_, err = Parse("1.0000005 mm", Millimetre)
	if !errors.As(err, &fault) || fault.Low != 1_000_000 || fault.High != 1_000_001 {
		t.Fatalf("got %v", err)
	}
}

func TestParseValue(t *testing.T) {
	rat := func(a, b int64) *big.Rat { return big.NewRat(a, b) }
	for _, c := range []struct {
		text string
		want Value
	}{
		{"18", OfLength(MM(18))},
		{"45 deg", OfInt(DimAngle, 45)},
		{"22.5°", Of(DimAngle, rat(45, 2))},
		{"22 1/2°", Of(DimAngle, rat(45, 2))},
		{"38 %", Of(DimRatio, rat(38, 100))},
		{"45 %rh", OfInt(DimHumidity, 45)},
		{"45 % RH", OfInt(DimHumidity, 45)},
		{"8.5 % MC", Of(DimMoisture, rat(17, 2))},
		{"1:8", Of(DimRatio, rat(1, 8))},
		{"2 kg", OfInt(DimMass, 2000)},
		{"1 lb", Of(DimMass, rat(45359237, 100000))},
		{"1 lb 8 oz", Of(DimMass, rat(45359237*3, 200000))},
		{"90 min", OfInt(DimTime, 90)},
		{"1 h 30 min", OfInt(DimTime, 90)},
		{"2 d", OfInt(DimTime, 2880)},
		{"1 kN", OfInt(DimForce, 1000)},
		{"20 °C", OfInt(DimTemp, 20)},
		{"68 °F", OfInt(DimTemp, 20)},
		{"-40 °F", OfInt(DimTemp, -40)},
		{"1 sq in", OfInt(DimArea, 645_160_000_000_000)},
		{"1 m²", OfInt(DimArea, 1_000_000_000_000_000_000)},
	} {
		got, err := ParseValue(c.text, Millimetre)
		if err != nil || !got.Equal(c.want) {
			t.Errorf("ParseValue(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
	// A board foot is a foot by a foot by an inch (NHLA rules).
	foot, inch := OfLength(Foot), OfLength(Inch)
	area, _ := foot.Mul(foot, 0)
	want, _ := area.Mul(inch, 0)
	if got, err := ParseValue("1 bd ft", Millimetre); err != nil || !got.Equal(want) {
		t.Errorf("a board foot is %v, %v; want %v", got, err, want)
	}
	if _, err := ParseValue("18", 0); err == nil {
		t.Error("a text without a unit became a number")
	}
}

func TestParseNumber(t *testing.T) {
	for _, c := range []struct {
		text string
		want string
	}{
		{"18", "18"}, {"0.1", "1/10"}, {"-2.50", "-5/2"}, {"1e3", "1000"}, {"2.5E-3", "1/400"}, {"1e+2", "100"},
		{"1e30", "1" + strings.Repeat("0", 30)},
		{"1e31", "too-large"}, {"1e999999999999999999", "too-large"}, {"1,5", "no-number"}, {"1e", "no-number"},
		{"", "no-number"}, {"--1", "no-number"}, {"0x10", "no-number"}, {"1_000", "no-number"}, {"1e-", "no-number"},
		{"Inf", "no-number"}, {"1/2", "no-number"}, {strings.Repeat("9", 65), "too-long"},
	} {
		v, err := ParseNumber(c.text)
		got := strings.TrimSuffix(v.String(), " number")
		var fault *ParseError
		if errors.As(err, &fault) {
			got = string(fault.Fault)
		}
		if got != c.want {
			t.Errorf("ParseNumber(%q) = %s, want %s", c.text, got, c.want)
		}
	}
}

// Law: every way of writing a whole number of sixty-fourths reads as that
// length, with either sign.
func TestLawWritings(t *testing.T) {
	seed := uint64(20)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for range 4_000 {
		inches, n := r.Int64N(120), r.Int64N(63)+1
		want := Length(inches)*Inch + Length(n)*SixtyFourth
		decimal := new(big.Rat).SetFrac64(inches*64+n, 64).FloatString(6)
		for _, text := range []string{
			fmt.Sprintf("%d %d/64 in", inches, n), fmt.Sprintf("%d-%d/64\"", inches, n),
			fmt.Sprintf("%d' %d %d/64\"", inches/12, inches%12, n), fmt.Sprintf("%d′%d %d⁄64″", inches/12, inches%12, n),
			decimal + " in", strings.Replace(decimal, ".", ",", 1) + "in",
			exactMetric(want) + " mm", fmt.Sprintf("%d/64 in", inches*64+n),
		} {
			if got := mustParse(t, text, Millimetre); got != want {
				t.Fatalf("Parse(%q) = %d nm, want %d", text, got, want)
			}
			if got := mustParse(t, "-"+text, Millimetre); got != -want {
				t.Fatalf("Parse(-%q) = %d nm, want %d", text, got, -want)
			}
		}
	}
}

// Law: whatever is read can be written in millimetres and read back; errors
// carry a fault; nothing panics.
func FuzzParseValue(f *testing.F) {
	for _, s := range []string{"18", "18 mm", "5 3/8 in", `5-3/8"`, `1' 2 1/2"`, "1:8", "1 h 30 min", "68 °F", "5³⁄₈ in", "1,500", "38 %", "1/128 in", "-½″", "1' 2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, bare := range []Length{Millimetre, Inch, 0} {
			v, err := ParseValue(text, bare)
			if err != nil {
				if fault, ok := err.(*ParseError); !ok || fault.Fault == "" || err.Error() == "" || len(fault.Text) > 3*MaxText {
					t.Fatalf("%q: error %v", text, err)
				}
				continue
			}
			if v.Dim() == DimUntyped || v.IsZero() || v.num.tooLarge() {
				t.Fatalf("%q became %v", text, v)
			}
			l, ok := v.Length()
			if !ok {
				continue
			}
			if !OfLength(l).Equal(v) || l.Abs() > MaxLength {
				t.Fatalf("%q is not exact or not bounded: %v", text, v)
			}
			if back, err := Parse(exactMetric(l), Millimetre); err != nil || back != l {
				t.Fatalf("%q: %v mm read back as %v, %v", text, exactMetric(l), back, err)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := Parse(`1' 2 1/2"`, Millimetre); err != nil {
			b.Fatal(err)
		}
	}
}
