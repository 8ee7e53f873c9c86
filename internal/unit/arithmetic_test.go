package unit

import (
	"encoding/json"
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

func num(n, d int64) Value { return Of(DimUntyped, big.NewRat(n, d)) }

func TestArithmetic(t *testing.T) {
	mm := func(n int64) Value { return OfLength(MM(n)) }
	ratio := func(a, b int64) Value { return Of(DimRatio, big.NewRat(a, b)) }
	type op func(Value, Value, Length) (Value, error)
	add, sub, mul, div := op(Value.Add), op(Value.Sub), op(Value.Mul), op(Value.Div)
	for _, c := range []struct {
		name  string
		do    op
		a, b  Value
		want  Value
		fault Fault
	}{
		{"18 + 2 bare", add, mm(18), num(2, 1), mm(20), ""},
		{"2 bare + 18", add, num(2, 1), mm(18), mm(20), ""},
		{"2 + 2", add, num(2, 1), num(2, 1), num(4, 1), ""},
		{"length - length", sub, mm(18), mm(2), mm(16), ""},
		{`"18" - 2`, sub, OfText("18"), num(2, 1), mm(16), ""},
		{`"5 3/8 in" + length`, add, OfText("5 3/8 in"), mm(1), OfLength(137_525_000), ""},
		{`"cherry" + length`, add, OfText("cherry"), mm(1), Value{}, FaultNotANumber},
		{"text + text", add, OfText("a"), OfText("b"), Value{}, FaultNotANumber},
		{"count + length", add, OfCount(2), mm(1), Value{}, FaultDimensions},
		{"angle + length", add, OfInt(DimAngle, 2), mm(1), Value{}, FaultDimensions},
		{"count + bare", add, OfCount(2), num(1, 1), OfCount(3), ""},
		{"count + half", add, OfCount(2), num(1, 2), ratio(5, 2), ""},
		{"count + ratio", add, OfCount(2), ratio(1, 2), ratio(5, 2), ""},
		{"angle + bare", add, OfInt(DimAngle, 45), num(1, 1), OfInt(DimAngle, 46), ""},
		{"mass + bare", add, OfInt(DimMass, 45), num(1, 1), Value{}, FaultNeedsUnit},
		{"money + bare", add, OfInt(DimMoney, 250), num(1, 2), OfInt(DimMoney, 300), ""},
		{"humidity - ratio", sub, OfInt(DimHumidity, 45), ratio(1, 2), Value{}, FaultDimensions},
		{"truth + truth", add, OfTruth(true), OfTruth(true), Value{}, FaultNotANumber},
		{"list + length", add, OfList(mm(1)), mm(1), Value{}, FaultNotANumber},
		{"none + length", add, Value{}, mm(1), Value{}, FaultNotANumber},
		{"length * length", mul, mm(2), mm(3), OfInt(DimArea, 6_000_000_000_000), ""},
		{"length * count", mul, mm(2), OfCount(3), mm(6), ""},
		{"ratio * length", mul, ratio(1, 3), mm(18), mm(6), ""},
		{"count * half", mul, OfCount(3), num(1, 2), ratio(3, 2), ""},
		{"count * two", mul, OfCount(3), num(2, 1), OfCount(6), ""},
		{"money * count", mul, OfInt(DimMoney, 250), OfCount(4), OfInt(DimMoney, 1000), ""},
		{"length * angle", mul, mm(2), OfInt(DimAngle, 3), Value{}, FaultDimensions},
		{"temp * 2", mul, OfInt(DimTemp, 20), num(2, 1), Value{}, FaultDimensions},
		{"length / length", div, mm(9), mm(2), ratio(9, 2), ""},
		{"length / 2", div, mm(9), num(2, 1), OfLength(4_500_000), ""},
		{"length / count", div, mm(9), OfCount(2), OfLength(4_500_000), ""},
		{"count / count", div, OfCount(9), OfCount(3), ratio(3, 1), ""},
		{"2 / length", div, num(2, 1), mm(1), Value{}, FaultDimensions},
		{"length / 0", div, mm(9), num(0, 1), Value{}, FaultByNought},
		{"length / area", div, mm(9), OfInt(DimArea, 1), Value{}, FaultDimensions},
		{"mass / mass", div, OfInt(DimMass, 3), OfInt(DimMass, 2), ratio(3, 2), ""},
	} {
		got, err := c.do(c.a, c.b, Millimetre)
		var fault *OpError
		errors.As(err, &fault)
		switch {
		case c.fault == "" && (err != nil || !got.Equal(c.want)):
			t.Errorf("%s = %v, %v; want %v", c.name, got, err, c.want)
		case c.fault != "" && (fault == nil || fault.Fault != c.fault):
			t.Errorf("%s = %v, %v; want fault %s", c.name, got, err, c.fault)
		case fault != nil && (fault.A != c.a.Dim() || fault.B != c.b.Dim()):
			t.Errorf("%s: error names %s and %s", c.name, fault.A, fault.B)
		}
	}
}

func TestBareNumbersNeedAUnit(t *testing.T) {
	var fault *OpError
	if _, err := num(2, 1).Add(OfLength(MM(18)), 0); !errors.As(err, &fault) || fault.Fault != FaultNeedsUnit {
		t.Errorf("got %v", err)
	}
	got, err := num(2, 1).Add(OfLength(Inch), Inch)
	if l, _ := got.Length(); err != nil || l != 3*Inch {
		t.Errorf("2 + 1 in = %v, %v in an inch document", got, err)
	}
}

func TestAs(t *testing.T) {
	for _, c := range []struct {
		v     Value
		d     Dim
		want  Value
		fault Fault
	}{
		{num(18, 1), DimLength, OfLength(MM(18)), ""},
		{num(3, 1), DimCount, OfCount(3), ""},
		{num(7, 2), DimCount, Value{}, FaultNotWhole},
		{num(25, 2), DimMoney, OfInt(DimMoney, 1250), ""},
		{num(2, 1), DimArea, Value{}, FaultNeedsUnit},
		{num(2, 1), DimText, Value{}, FaultDimensions},
		{Of(DimRatio, big.NewRat(38, 100)), DimHumidity, OfInt(DimHumidity, 38), ""},
		{Of(DimRatio, big.NewRat(8, 100)), DimMoisture, OfInt(DimMoisture, 8), ""},
		{Of(DimRatio, big.NewRat(3, 1)), DimCount, OfCount(3), ""},
		{OfCount(3), DimLength, Value{}, FaultDimensions},
		{OfText("3/4 in"), DimLength, OfLength(19_050_000), ""},
		{OfText("38 %"), DimHumidity, OfInt(DimHumidity, 38), ""},
		{OfText("18"), DimCount, Value{}, FaultDimensions}, // texts become lengths, never numbers
		{OfText("box"), DimText, OfText("box"), ""},
		{Value{}, DimLength, Value{}, FaultDimensions},
		{OfLength(1), "", Value{}, FaultDimensions},
	} {
		got, err := c.v.As(c.d, Millimetre)
		var fault *OpError
		if c.fault == "" && (err != nil || !got.Equal(c.want)) {
			t.Errorf("%v as %s = %v, %v; want %v", c.v, c.d, got, err, c.want)
		} else if c.fault != "" && (!errors.As(err, &fault) || fault.Fault != c.fault) {
			t.Errorf("%v as %s = %v, %v; want fault %s", c.v, c.d, got, err, c.fault)
		}
	}
}

func TestRoundTo(t *testing.T) {
	step, side := OfLength(500_000), map[Rounding]int64{Nearest: 136_500_000, Down: 136_500_000, Up: 137_000_000}
	for r, want := range side {
		got, err := OfLength(136_525_000).RoundTo(step, r, 0)
		if n, _ := got.Int(); err != nil || n != want {
			t.Errorf("side %d: %v, %v; want %d", r, got, err, want)
		}
	}
	if _, err := OfLength(1).RoundTo(OfLength(0), Down, 0); err == nil {
		t.Error("rounded to multiples of nought")
	}
}

// Numbers that do not fit two words, to cross the border in the laws.
var rough = []int64{0, 1, -1, 2, 3, 7, 64, 254, 396_875, 25_400_000, 381_400_000, math.MaxInt32, math.MaxInt64, -math.MaxInt64, math.MinInt64, 1 << 62, 6_700_417}

func randomRat(r *rand.Rand) *big.Rat {
	pick := func() int64 {
		n := rough[r.IntN(len(rough))]
		if r.IntN(2) == 0 {
			n = r.Int64N(1_000_000) - 500_000
		}
		return n
	}
	d := pick()
	if d == 0 {
		d = 1
	}
	return new(big.Rat).SetFrac(big.NewInt(pick()), big.NewInt(d))
}

// Law: numbers agree with math/big in every operation, and have one form.
func TestLawNumbersAreExact(t *testing.T) {
	seed := uint64(5)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	same := func(op string, a, b *big.Rat, got number, want *big.Rat) {
		t.Helper()
		if got.rat().Cmp(want) != 0 {
			t.Fatalf("%v %s %v = %v, want %v", a, op, b, got.rat(), want)
		}
		if again := ofRat(new(big.Rat).Set(want)); !again.equal(got) || (again.big == nil) != (got.big == nil) {
			t.Fatalf("%v %s %v: two forms of one number", a, op, b)
		}
	}
	for range 40_000 {
		a, b := randomRat(r), randomRat(r)
		x, y := ofRat(new(big.Rat).Set(a)), ofRat(new(big.Rat).Set(b))
		same("+", a, b, x.add(y), new(big.Rat).Add(a, b))
		same("-", a, b, x.add(y.neg()), new(big.Rat).Sub(a, b))
		same("*", a, b, x.mul(y), new(big.Rat).Mul(a, b))
		if b.Sign() != 0 {
			same("/", a, b, x.mul(y.inverse()), new(big.Rat).Quo(a, b))
		}
		if x.cmp(y) != a.Cmp(b) || x.sign() != a.Sign() || x.isWhole() != a.IsInt() {
			t.Fatalf("%v and %v compare wrongly", a, b)
		}
		floor := new(big.Rat).SetInt(new(big.Int).Div(a.Num(), a.Denom()))
		same("floor", a, b, x.round(Down), floor)
		half := new(big.Rat).Add(new(big.Rat).Abs(a), big.NewRat(1, 2))
		nearest := new(big.Rat).SetInt(new(big.Int).Div(half.Num(), half.Denom()))
		if a.Sign() < 0 {
			nearest.Neg(nearest)
		}
		same("nearest", a, b, x.round(Nearest), nearest)
	}
}

func TestLengthRoundAgrees(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	for range 20_000 {
		l, step := randomLength(r), Length(r.Int64N(1_000_000)+1)
		for _, side := range []Rounding{Nearest, Down, Up} {
			got, err := OfLength(l).RoundTo(OfLength(step), side, 0)
			if want := OfLength(l.Round(step, side)); err != nil || !got.Equal(want) {
				t.Fatalf("%d to %d, side %d: %v, %v; want %v", l, step, side, got, err, want)
			}
		}
	}
}

func TestShareOf(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 2_000 {
		l, n := randomLength(r), r.Int64N(40)+1
		var sum Length
		for i, part := range l.Share(int(n)) {
			one, ok := l.ShareOf(int64(i)+1, n)
			if !ok || one != part {
				t.Fatalf("part %d of %d of %d: %d, want %d", i+1, n, l, one, part)
			}
			if off := part - l/Length(n); off.Abs() > 1 {
				t.Fatalf("part %d of %d of %d is %d", i+1, n, l, part)
			}
			sum += part
		}
		if sum != l {
			t.Fatalf("shares of %d into %d add up to %d", l, n, sum)
		}
	}
	for _, bad := range [][2]int64{{0, 3}, {4, 3}, {1, MaxShare + 1}, {1, 0}} {
		if _, ok := MM(1).ShareOf(bad[0], bad[1]); ok {
			t.Errorf("part %d of %d", bad[0], bad[1])
		}
	}
}

func TestSumsStayBounded(t *testing.T) {
	v := num(1_000_003, 7)
	var err error
	for i := 0; err == nil; i++ {
		if i > 30 {
			t.Fatal("squares grew for 30 rounds")
		}
		v, err = v.Mul(v, 0)
	}
	var fault *OpError
	if !errors.As(err, &fault) || fault.Fault != FaultTooLarge {
		t.Errorf("got %v", err)
	}
}

func TestFromMillimetres(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want Length
	}{{18, MM(18)}, {-0.0000005, -1}, {0.0000005, 1}, {math.NaN(), 0}, {math.Inf(1), math.MaxInt64}, {-1e300, -math.MaxInt64}} {
		if got := FromMillimetres(c.mm); got != c.want {
			t.Errorf("%v mm is %d nm, want %d", c.mm, got, c.want)
		}
	}
}

func TestValueJSON(t *testing.T) {
	for v, want := range map[string]Value{
		`{"dim":"length","n":"381400000"}`: OfLength(381_400_000),
		`{"dim":"ratio","n":"22/7"}`:       Of(DimRatio, big.NewRat(22, 7)),
		`{"dim":"text","text":"a \"b\""}`:  OfText(`a "b"`),
		`{"dim":"text"}`:                   OfText(""),
		`{"dim":"list"}`:                   OfList(),
		`{"dim":"truth","n":"1"}`:          OfTruth(true),
		`{"dim":"list","list":[{"dim":"count","n":"3"},{"dim":"list"}]}`: OfList(OfCount(3), OfList()),
		`null`: {},
	} {
		got, err := json.Marshal(want)
		if err != nil || string(got) != v {
			t.Errorf("%v is written as %s, %v; want %s", want, got, err, v)
		}
		var back Value
		if err := json.Unmarshal([]byte(v), &back); err != nil || !back.Equal(want) || back.Hash() != want.Hash() {
			t.Errorf("%s reads as %v, %v", v, back, err)
		}
	}
}

func FuzzValueJSON(f *testing.F) {
	for _, s := range []string{`{"dim":"length","n":"381400000"}`, `{"dim":"ratio","n":"-22/7"}`, `null`, `{"dim":"list","list":[{"dim":"list"}]}`, `{"dim":"ratio","n":"4/2"}`, `{"dim":"count","n":"1/0"}`, `{"dim":"text","text":"\ud800"}`} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var v Value
		if json.Unmarshal(data, &v) != nil {
			return
		}
		out, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		var back Value
		if err := json.Unmarshal(out, &back); err != nil || !back.Equal(v) || back.Hash() != v.Hash() {
			t.Fatalf("%s: %v reads back as %v, %v", data, v, back, err)
		}
	})
}

func BenchmarkAdd(b *testing.B) {
	x, y := OfLength(381_400_000), OfLength(17_600_000)
	for b.Loop() {
		x.Add(y, 0)
	}
}
