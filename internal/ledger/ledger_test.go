package ledger

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/unit"
)

var functions = Functions{
	"third": func(args []unit.Value) (unit.Value, error) {
		return args[0].Div(unit.OfInt(unit.DimUntyped, 3), 0)
	},
	"fail": func([]unit.Value) (unit.Value, error) { return unit.Value{}, errors.New("no") },
}

func leaf(l *Ledger, name string, mm int64) Figure {
	return l.Leaf(name, unit.MM(mm), Document, "")
}

// The row of the needle chest: 36 cells of 10 and two
// margins of 10 make 380, and the first centre lies at 15 (common practice, no
// source).
func TestRowOfCells(t *testing.T) {
	l := New(nil)
	pitch, margin := leaf(l, "pitch", 10), leaf(l, "margin", 10)
	cells := l.Times("cells", pitch, 36, 1)
	width := l.Sum("tray.width", cells, margin, margin)
	first := l.Sum("first.centre", margin, l.Half("half.pitch", pitch))
	if width.Nm != unit.MM(380) || first.Nm != unit.MM(15) {
		t.Errorf("width %d nm, first centre %d nm", width.Nm, first.Nm)
	}
	if off := l.Verify(); len(off) > 0 {
		t.Error(off)
	}
}

func TestOperations(t *testing.T) {
	l := New(functions)
	a, b := leaf(l, "a", 18), leaf(l, "b", 5)
	bare := l.Given(Entry{Value: unit.OfInt(unit.DimUntyped, 2), Origin: Document})
	text := l.Given(Entry{Value: unit.OfText("3/4 in"), Origin: Document})
	list := l.Given(Entry{Value: unit.OfList(unit.OfLength(7), unit.OfLength(9)), Origin: Document})
	for _, c := range []struct {
		op   Op
		fn   string
		args []ID
		want string
	}{
		{OpSame, "", []ID{a.Entry}, "18 mm"},
		{OpAdd, "", []ID{a.Entry, b.Entry, b.Entry}, "28 mm"},
		{OpSub, "", []ID{a.Entry, b.Entry, b.Entry}, "8 mm"},
		{OpMul, "", []ID{a.Entry, bare}, "36 mm"},
		{OpDiv, "", []ID{a.Entry, b.Entry}, "18/5 ratio"},
		{OpNeg, "", []ID{a.Entry}, "-18 mm"},
		{OpMin, "", []ID{a.Entry, b.Entry}, "5 mm"},
		{OpMax, "", []ID{b.Entry, a.Entry}, "18 mm"},
		{OpRound, "down", []ID{a.Entry, b.Entry}, "15 mm"},
		{OpRound, "up", []ID{a.Entry, b.Entry}, "20 mm"},
		{OpRound, "sideways", []ID{a.Entry, b.Entry}, "no side"},
		{OpShare, "", []ID{a.Entry, bare, bare}, "9 mm"},
		{OpShare, "", []ID{a.Entry, bare, a.Entry}, "no part 18000000 of 2"},
		{OpItem, "", []ID{list, bare}, "0.000009 mm"},
		{OpItem, "", []ID{list, a.Entry}, "no item"},
		{OpAs, "length", []ID{bare, b.Entry}, "10 mm"},
		{OpAs, "length", []ID{text}, "19.05 mm"},
		{OpAs, "count", []ID{bare}, "2 count"},
		{OpAs, "length", []ID{bare}, "needs-unit"},
		{OpCall, "third", []ID{a.Entry}, "6 mm"},
		{OpCall, "fail", []ID{a.Entry}, "no"},
		{OpCall, "fourth", []ID{a.Entry}, "no function"},
		{OpAdd, "", []ID{a.Entry, bare}, "needs-unit"},
		{OpAdd, "", []ID{a.Entry, 99}, "no entry"},
		{OpAdd, "", nil, "0 arguments"},
		{OpNeg, "", []ID{a.Entry, a.Entry}, "2 arguments"},
		{OpGiven, "", []ID{a.Entry}, "no operation"},
	} {
		id, err := l.Make("x", c.op, c.fn, c.args...)
		got := l.Value(id).String()
		if err != nil {
			got = err.Error()
		}
		if got != c.want && (err == nil || !strings.Contains(got, c.want)) {
			t.Errorf("%s %s of %v: %s, want %s", c.op, c.fn, c.args, got, c.want)
		}
	}
	if off := l.Verify(); len(off) > 0 {
		t.Error(off)
	}
	var op *unit.OpError
	if _, err := l.Make("x", OpAdd, "", a.Entry, bare); !errors.As(err, &op) || op.A != unit.DimLength {
		t.Errorf("the error of an operation is %v", err)
	}
}

func TestSameLineOnce(t *testing.T) {
	l := New(nil)
	here, there := diag.Place{File: "a", Start: 1, End: 2}, diag.Place{File: "a", Start: 5, End: 6}
	a, again := leaf(l, "a", 18), leaf(l, "a", 18)
	if a != again {
		t.Error("one leaf stands twice")
	}
	other := l.Given(Entry{Name: "a", Value: unit.OfLength(unit.MM(18)), Origin: Document, Where: there})
	if other == a.Entry {
		t.Error("leaves at two places are one")
	}
	sourced := l.Leaf("a", unit.MM(18), Document, "table 3")
	if sourced.Entry == a.Entry {
		t.Error("leaves of two sources are one")
	}
	x, _ := l.Make("x", OpAdd, "", a.Entry, other)
	y, _ := l.Make("x", OpAdd, "", a.Entry, other)
	if x != y {
		t.Error("one sum stands twice")
	}
	x = l.At(x, here)
	y, _ = l.Make("x", OpAdd, "", a.Entry, other)
	if x != y || l.At(y, here) != x {
		t.Error("a sum does not find itself at its place")
	}
	z := l.At(y, there)
	if z == x || l.At(y, there) != z || l.At(z, here) != x {
		t.Error("a sum written twice does not have two entries")
	}
	args := []ID{a.Entry, other}
	kept, _ := l.Make("kept", OpAdd, "", args...)
	args[0] = 0
	if e, _ := l.Entry(kept); e.Args[0] != a.Entry {
		t.Error("the ledger shares the caller's arguments")
	}
	if off := l.Verify(); len(off) > 0 {
		t.Error(off)
	}
}

func TestMeasuredIsHandedOn(t *testing.T) {
	l := New(nil)
	side := l.Leaf("side", 17_600_000, Measured, "")
	sum := l.Sum("sum", side, leaf(l, "a", 18))
	twice := l.Times("twice", sum, 2, 1)
	plain := l.Sum("plain", leaf(l, "a", 18))
	for id, want := range map[ID]Origin{sum.Entry: FromMeasured, twice.Entry: FromMeasured, plain.Entry: Derived} {
		if e, _ := l.Entry(id); e.Origin != want {
			t.Errorf("%s is %s, want %s", e.Name, e.Origin, want)
		}
	}
}

func TestExplain(t *testing.T) {
	l := New(nil)
	a, b, c := leaf(l, "a", 1), leaf(l, "b", 2), leaf(l, "c", 3)
	ab := l.Sum("ab", a, b)
	leaf(l, "aside", 9)
	all := l.Sum("all", ab, c, ab)
	var names []string
	for _, e := range l.Explain(all.Entry) {
		names = append(names, e.Name)
	}
	if want := []string{"all", "ab", "a", "b", "c"}; !slices.Equal(names, want) {
		t.Errorf("got %v, want %v", names, want)
	}
	if l.Explain(0) != nil || l.Explain(99) != nil {
		t.Error("explained what is not there")
	}
	f := a
	for i := range 3 * MaxExplain {
		f = l.Sum(fmt.Sprint(i), f, b)
	}
	if n := len(l.Explain(f.Entry)); n != MaxExplain {
		t.Errorf("a trail of %d entries", n)
	}
}

// grow makes a ledger of about n entries as a plan does: leaves, sums, halves,
// shares and roundings.
func grow(r *rand.Rand, n int) *Ledger {
	l := New(functions)
	figs := []Figure{leaf(l, "start", 1)}
	pick := func() Figure { return figs[max(0, len(figs)-1-r.IntN(min(len(figs), 50)))] }
	for i := 0; len(l.entries) < n; i++ {
		name := fmt.Sprintf("drawer[%d].side.left.length", i)
		switch r.IntN(8) {
		case 0:
			origin := []Origin{Document, Default, Measured, Bought}[r.IntN(4)]
			figs = append(figs, l.Leaf(name, unit.Length(r.Int64N(int64(unit.Metre))), origin, ""))
		case 1:
			figs = append(figs, l.Half(name, pick()))
		case 2:
			figs = append(figs, l.ShareOf(name, pick(), r.IntN(5)+1, 5))
		case 3:
			figs = append(figs, l.Round(name, pick(), unit.Millimetre/2, unit.Down))
		case 4:
			f, _ := l.Call(name, "third", pick().Entry)
			figs = append(figs, f)
		case 5:
			figs = append(figs, l.Least(name, pick(), pick()))
		default:
			figs = append(figs, l.Less(name, pick(), pick(), pick()))
		}
	}
	return l
}

// Law: re-doing an entry's arithmetic gives its value, for every entry; after
// writing and reading too; and no changed value, argument or origin goes
// unnoticed.
func TestLawOfTheLedger(t *testing.T) {
	seed := uint64(8)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	l := grow(r, 2000)
	if off := l.Verify(); len(off) > 0 {
		t.Fatal(off[0])
	}
	text, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	var back Ledger
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	back.Use(functions)
	if again, _ := json.Marshal(&back); string(again) != string(text) {
		t.Error("a ledger does not read back as it was written")
	}
	if off := back.Verify(); len(off) > 0 {
		t.Fatal(off[0])
	}
	if id, _ := back.Make("new", OpSame, "", 1); int(id) != len(l.entries)+1 {
		t.Error("a ledger that was read does not go on")
	}
	one := unit.OfLength(1)
	for range 300 {
		i := r.IntN(len(l.entries))
		e := l.entries[i]
		if e.Op == OpGiven {
			continue
		}
		changed := e
		if changed.Value, err = e.Value.Add(one, 0); err != nil {
			t.Fatal(err)
		}
		l.entries[i] = changed
		if off := l.Verify(); len(off) == 0 || !slices.ContainsFunc(off, func(d Deviation) bool { return d.ID == e.ID }) {
			t.Fatalf("entry %d is a nanometre off and nobody says so", e.ID)
		}
		changed = e
		changed.Origin = Reference
		l.entries[i] = changed
		if off := l.Verify(); len(off) == 0 || off[0].ID != e.ID {
			t.Fatalf("the origin of entry %d is wrong and nobody says so", e.ID)
		}
		changed = e
		changed.Args = []ID{e.ID}
		l.entries[i] = changed
		if off := l.Verify(); len(off) == 0 {
			t.Fatalf("entry %d is made from itself and nobody says so", e.ID)
		}
		l.entries[i] = e
	}
}

func TestVerifyFigure(t *testing.T) {
	l := New(nil)
	third := l.Times("third", leaf(l, "a", 10), 1, 3)
	count := l.Given(Entry{Value: unit.OfCount(3), Origin: Document})
	if err := l.VerifyFigure(third); err != nil || third.Nm != 3_333_333 {
		t.Errorf("%d nm: %v", third.Nm, err)
	}
	if err := l.VerifyFigure(Figure{}); err != nil {
		t.Error(err)
	}
	for _, f := range []Figure{{third.Nm + 1, third.Entry}, {third.Nm, 99}, {third.Nm, 0}, {3, count}} {
		if l.VerifyFigure(f) == nil {
			t.Errorf("nothing wrong with %v", f)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for _, text := range []string{
		`[{"id":2,"op":"given","value":null,"origin":"document"}]`,
		`[{"id":1,"op":"same","args":[1],"value":null,"origin":"derived"}]`,
		`{}`, `[{"id":1,"value":{"dim":"furlong","n":"1"}}]`,
	} {
		if json.Unmarshal([]byte(text), new(Ledger)) == nil {
			t.Errorf("%s was read", text)
		}
	}
}

func FuzzRead(f *testing.F) {
	l := New(functions)
	l.Half("half", l.Sum("sum", leaf(l, "a", 18), leaf(l, "b", 5)))
	text, _ := json.Marshal(l)
	f.Add(text)
	f.Add([]byte(`[{"id":1,"op":"given","value":{"dim":"list"},"origin":"document"},{"id":2,"op":"item","args":[1,1],"value":null,"origin":"derived"}]`))
	f.Add([]byte(`[{"id":1,"op":"given","value":{"dim":"number","n":"-1/0"},"origin":"document"}]`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var l Ledger
		if json.Unmarshal(data, &l) != nil {
			return
		}
		l.Use(functions)
		l.Verify()
		l.Explain(ID(len(l.Entries())))
		text, err := json.Marshal(&l)
		if err != nil {
			t.Fatal(err)
		}
		var back Ledger
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatalf("%s: %v", text, err)
		}
	})
}

func TestExactThirdsStayExact(t *testing.T) {
	l := New(nil)
	a := leaf(l, "a", 10)
	third := l.Times("third", a, 1, 3)
	if sum := l.Sum("sum", third, third, third); sum.Nm != a.Nm {
		t.Errorf("three thirds are %d nm of %d", sum.Nm, a.Nm)
	}
	if v := l.Value(third.Entry).Number(); v.Cmp(big.NewRat(10_000_000, 3)) != 0 {
		t.Errorf("a third is %v", v)
	}
}

// A plan of 3 000 parts has about 200 000 entries.
func BenchmarkAdd200k(b *testing.B) {
	for b.Loop() {
		grow(rand.New(rand.NewPCG(1, 1)), 200_000)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/200_000, "ns/entry")
}

func BenchmarkVerify200k(b *testing.B) {
	l := grow(rand.New(rand.NewPCG(1, 1)), 200_000)
	for b.Loop() {
		if off := l.Verify(); len(off) > 0 {
			b.Fatal(off[0])
		}
	}
}

func BenchmarkWrite200k(b *testing.B) {
	l := grow(rand.New(rand.NewPCG(1, 1)), 200_000)
	for b.Loop() {
		text, _ := json.Marshal(l)
		b.ReportMetric(float64(len(text))/1e6, "MB")
	}
}

func BenchmarkHeld200k(b *testing.B) {
	for b.Loop() {
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		l := grow(rand.New(rand.NewPCG(1, 1)), 200_000)
		runtime.GC()
		runtime.ReadMemStats(&after)
		b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/1e6, "MB-held")
		runtime.KeepAlive(l)
	}
}
