package formula

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// bench is a scope of a few named values, and what was reported.
type bench struct {
	m     *Maker
	named map[string]Value
	codes []diag.Code
	steps int
	most  int
}

func newBench(bare unit.Length) *bench {
	b := &bench{named: map[string]Value{}, most: 1_000_000}
	b.m = &Maker{Ledger: ledger.New(Functions(nil)), Bare: bare, Show: unit.Show{}, Steps: &b.steps, Most: &b.most,
		Report: func(d diag.Diagnostic) { b.codes = append(b.codes, d.Code) }}
	give := func(name string, v unit.Value) {
		b.named[name] = Value{Kind: Quantity, Is: v, Entry: b.m.Ledger.Given(ledger.Entry{Name: name, Value: v})}
	}
	give("len", unit.OfLength(14*unit.Millimetre))
	give("three", unit.OfCount(3))
	give("two", unit.OfInt(unit.DimUntyped, 2))
	low := b.named["len"]
	low.Position = &Position{Axis: 1, Frame: "f", Face: "face"}
	b.named["place"] = low
	b.named["thing"] = Value{Kind: Reference, Ref: "thing"}
	return b
}

func (b *bench) Name(n *document.Name) Value {
	v, ok := b.named[n.Root]
	if !ok {
		b.codes = append(b.codes, "unknown")
	}
	return b.Pick(v, n.Steps)
}

func (b *bench) Pick(v Value, steps []document.Step) Value {
	for _, s := range steps {
		v, _ = b.m.Pick(v, s, b)
	}
	return v
}

func (b *bench) Call(*document.Call, []Value, string) (Value, bool) { return Value{}, false }

func (b *bench) eval(t testing.TB, text string) Value {
	t.Helper()
	x, err := document.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	b.codes = nil
	return b.m.Eval(x, b, "it")
}

func shown(v Value) string {
	switch v.Kind {
	case Quantity, Text, Truth:
		s := v.Is.String()
		if v.Position != nil {
			s += " place"
			if v.Position.Face != nil {
				s += " face"
			}
		}
		return s
	case List:
		var items []string
		for _, i := range v.Items {
			items = append(items, shown(i))
		}
		return "[" + strings.Join(items, " ") + "]"
	}
	return fmt.Sprint(v.Kind)
}

// TestFormulas works formulas out in a document in millimetres; what is refused
// shows its code.
func TestFormulas(t *testing.T) {
	b := newBench(unit.Millimetre)
	for text, want := range map[string]string{
		"1 + 2":                       "3 number",
		"len + 2":                     "16 mm",
		"2 + len":                     "16 mm",
		"len - 2.5":                   "11.5 mm",
		`len + "5 3/8 in"`:            "150.525 mm",
		`"1 in" + 2`:                  "27.4 mm",
		`"1 in" + "1 mm"`:             "26.4 mm",
		`2 * "1 in"`:                  "50.8 mm",
		"len + two":                   "16 mm",
		"len + two * two":             "18 mm",
		"2 * len":                     "28 mm",
		"len / 2":                     "7 mm",
		"len / len":                   "1 ratio",
		`len / "7 mm"`:                "2 ratio",
		"len / three * three":         "14 mm",
		"three + 1":                   "4 count",
		"three - 1.5":                 "3/2 ratio",
		"three / 2":                   "3/2 ratio",
		"ceil(three / 2)":             "2 count",
		"floor(three / 2)":            "1 count",
		"three * len":                 "42 mm",
		"three * 50 + len":            "164 mm", // so many of the document's unit
		"(three - 1) * 50 + 3 + len":  "117 mm",
		"three * three + len":         string(CodeKinds),
		"three + len":                 string(CodeKinds),
		"len + thing":                 string(CodeKinds),
		"len * len":                   "196000000000000 area",
		"len * len + len":             string(CodeKinds),
		`"a" + 1`:                     string(CodeNotALength),
		"len / 0":                     string(CodeByNought),
		"len / (two - 2)":             string(CodeByNought),
		"-len":                        "-14 mm",
		"!true":                       "no",
		"!1":                          string(CodeWrongKind),
		"len > 13 && three == 3":      "yes",
		"len < 13 || len == 14":       "yes",
		"false && nonsense":           "no", // not looked at
		"true || nonsense":            "yes",
		`"a" == "a"`:                  "yes",
		`"a" != "b"`:                  "yes",
		`len == "14 mm"`:              "yes",
		`len == three`:                string(CodeKinds),
		"true == false":               "no",
		"len > 10 ? 1 : nonsense":     "1 number",
		"three == 3 ? len : 0":        "14 mm",
		"len ? 1 : 2":                 string(CodeWrongKind),
		"min(len, 2, 30)":             "2 mm",
		"max(3, len, 4)":              "14 mm",
		"max(1, 2, 3)":                "3 number",
		"max(three, 2)":               "3 count",
		"max(len, three)":             string(CodeKinds),
		"sum([1, 2, len])":            "17 mm",
		"sum([])":                     string(CodeArguments),
		"round(len / 3, 0.1)":         "4.7 mm",
		"round_up(len / 3, 0.1)":      "4.7 mm",
		"round_down(len / 3, 0.1)":    "4.6 mm",
		"round_up(len, 5)":            "15 mm",
		"round(7 / 2)":                "4 count",
		"round(len)":                  string(CodeWrongKind),
		"round(len, 0)":               string(CodeByNought),
		"round(len, three)":           string(CodeKinds),
		"abs(0 - len)":                "14 mm",
		"odd(three)":                  "yes",
		"even(three)":                 "no",
		"odd(len)":                    string(CodeWrongKind),
		"count([1, 2, 3])":            "3 count",
		"slice([1, 2, 3, 4], 2, 2)":   "[2 number 3 number]",
		"slice([1, 2], 2, 9)":         "[2 number]",
		"slice([1, 2], 3, 9)":         "[]",
		"slice([1, 2], 0, 1)":         string(CodeCountRange),
		"count(slice([1, 2], 3, 9))":  "0 count",
		"[1, len, 3][2]":              "14 mm",
		"[1, 2][0]":                   string(CodeIndex),
		"[1, 2][three]":               string(CodeIndex),
		"[[1, 2], [3]][1][2]":         "2 number",
		"{ a = len }.a":               "14 mm",
		"place":                       "14 mm place face",
		"place + 2":                   "16 mm place",
		"place - place":               "0 mm",
		"2 + place":                   "16 mm place",
		"2 * place":                   "28 mm",
		"min(place, place + 1)":       "14 mm place",
		"true ? place : 0":            "14 mm place face",
		"nosuch(1)":                   string(CodeUnknownFunction),
		"abs()":                       string(CodeArguments),
		"abs(1, 2)":                   string(CodeArguments),
		"nonsense + 1":                "unknown",
		`"width ${len} and ${three}"`: `"width 14 and 3"`,
		`"${thing}"`:                  string(CodeWrongKind),
	} {
		v := b.eval(t, text)
		got := shown(v)
		if v.Kind == Nothing {
			got = ""
			if len(b.codes) != 1 {
				t.Errorf("%s: %v told", text, b.codes)
			}
			for _, c := range b.codes {
				got = string(c)
			}
		} else if len(b.codes) > 0 {
			t.Errorf("%s: %v told beside a value", text, b.codes)
		}
		if got != want {
			t.Errorf("%s = %s, not %s", text, got, want)
		}
	}
	for _, d := range b.m.Ledger.Verify() {
		t.Error(d)
	}
}

// TestInches counts bare numbers in inches.
func TestInches(t *testing.T) {
	b := newBench(unit.Inch)
	for text, want := range map[string]string{"len + 1": "39.4 mm", `"1/2" + len`: "26.7 mm", "three * 2 + len": "166.4 mm"} {
		if got := shown(b.eval(t, text)); got != want {
			t.Errorf("%s = %s, not %s", text, got, want)
		}
	}
}

// TestEveryEntryLeadsDown follows each value to literals and names.
func TestEveryEntryLeadsDown(t *testing.T) {
	b := newBench(unit.Millimetre)
	v := b.eval(t, "round_up(max(len + 3, 2 * len) / three, 0.5) + [1, 2][2]")
	seen := map[ledger.ID]bool{}
	var walk func(id ledger.ID)
	walk = func(id ledger.ID) {
		e, ok := b.m.Ledger.Entry(id)
		if !ok {
			t.Fatalf("entry %d is not there", id)
		}
		if seen[id] {
			return
		}
		seen[id] = true
		if e.Op == ledger.OpGiven && e.Where.IsZero() && e.Name == "" {
			t.Errorf("a leaf of %v comes from nowhere", e.Value)
		}
		for _, a := range e.Args {
			walk(a)
		}
	}
	walk(v.Entry)
	if e, _ := b.m.Ledger.Entry(v.Entry); e.Name != "it" || len(seen) < 10 {
		t.Errorf("%q from %d entries", e.Name, len(seen))
	}
}

// TestArithmeticLaw holds random sums of plain numbers against big rationals.
func TestArithmeticLaw(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for range 2000 {
		text, want := randomSum(r, 4)
		b := newBench(unit.Millimetre)
		v := b.eval(t, text)
		if want == nil {
			if v.OK() || !slices.Contains(b.codes, CodeByNought) {
				t.Fatalf("%s = %s, but it divides by nought", text, shown(v))
			}
			continue
		}
		if !v.OK() || v.Is.Number().Cmp(want) != 0 {
			t.Fatalf("%s = %s %v, not %s", text, shown(v), b.codes, want)
		}
		if ds := b.m.Ledger.Verify(); len(ds) > 0 {
			t.Fatalf("%s: %v", text, ds[0])
		}
	}
}

func randomSum(r *rand.Rand, depth int) (string, *big.Rat) {
	if depth == 0 || r.IntN(4) == 0 {
		n := r.IntN(200)
		text := fmt.Sprintf("%d.%d", n/10, n%10)
		value, _ := new(big.Rat).SetString(text)
		return text, value
	}
	a, x := randomSum(r, depth-1)
	c, y := randomSum(r, depth-1)
	sign := "+-*/"[r.IntN(4)]
	text := fmt.Sprintf("(%s %c %s)", a, sign, c)
	if x == nil || y == nil || sign == '/' && y.Sign() == 0 {
		return text, nil
	}
	switch sign {
	case '+':
		return text, new(big.Rat).Add(x, y)
	case '-':
		return text, new(big.Rat).Sub(x, y)
	case '*':
		return text, new(big.Rat).Mul(x, y)
	}
	return text, new(big.Rat).Quo(x, y)
}

// TestSteps stops after so many formulas, and says so once.
func TestSteps(t *testing.T) {
	b := newBench(unit.Millimetre)
	b.most = 20
	v := b.eval(t, strings.TrimSuffix(strings.Repeat("1+", 30), "+"))
	if v.OK() || len(b.codes) != 1 || b.codes[0] != CodeTooMuch {
		t.Errorf("%s %v", shown(v), b.codes)
	}
}
