package record

import (
	"encoding/json"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/journal"
	"scantling/internal/unit"
	"scantling/internal/world"
)

func reading(a address.Address, what, of string, l unit.Length) Entry {
	return Entry{Address: a, Kind: Reading, What: what, Fingerprint: of, Value: unit.OfLength(l)}
}

func cut(a address.Address, of string) Entry {
	return Entry{Address: a, Kind: Cut, Fingerprint: of, Sizes: [3]unit.Length{unit.MM(300), unit.MM(80), 17_600_000}}
}

func spoiled(a address.Address) Entry { return Entry{Address: a, Kind: Spoiled} }

func TestEntriesAsWritten(t *testing.T) {
	day := world.Date{Year: 2026, Month: 3, Day: 1}
	full := reading("drawer[2].space", "width front", "5f2c", 381_400_000)
	full.Date, full.Humidity, full.Note = day, unit.OfInt(unit.DimHumidity, 45), "by the light"
	third := reading("case.side.left", "twist", "a", 0)
	third.Value = unit.Of(unit.DimAngle, big.NewRat(1, 3))
	for _, c := range []struct {
		e    Entry
		want string
	}{
		{full, `{"date":"2026-03-01","humidity":"45 %rh","address":"drawer[2].space","reading":"width front","value":"381.4 mm","of":"5f2c","note":"by the light"}`},
		{cut("case.side.left", "a"), `{"address":"case.side.left","cut":["300 mm","80 mm","17.6 mm"],"of":"a"}`},
		{spoiled("case.side.left"), `{"address":"case.side.left","spoiled":true}`},
		{third, `{"address":"case.side.left","reading":"twist","value":"1/3 deg","of":"a"}`},
	} {
		line, err := c.e.Line()
		if err != nil || string(line) != c.want+"\n" {
			t.Errorf("got %s, %v; want %s", line, err, c.want)
		}
		r, good, err := Read(line)
		if err != nil || good != len(line) || len(r) != 1 || !same(r[0], c.e) {
			t.Errorf("%s reads as %v, %v", line, r, err)
		}
	}
	// A maker's own hand.
	r, _, err := Read([]byte(`{"address":"space","reading":"width","value":"15 1/64\"","humidity":"38 %","of":"x"}`))
	if err != nil || !r[0].Value.Equal(unit.OfLength(15*unit.Inch+unit.SixtyFourth)) || !r[0].Humidity.Equal(unit.OfInt(unit.DimHumidity, 38)) {
		t.Errorf("got %v, %v", r, err)
	}
}

func same(a, b Entry) bool {
	x, y := a, b
	x.Value, y.Value, x.Humidity, y.Humidity = unit.Value{}, unit.Value{}, unit.Value{}, unit.Value{}
	return x == y && a.Value.Equal(b.Value) && a.Humidity.Equal(b.Humidity)
}

func TestReadRefuses(t *testing.T) {
	for _, text := range []string{
		`{}`,
		`{"address":"a","of":"x"}`,
		`{"address":"","spoiled":true}`,
		`{"address":"a[0]","spoiled":true}`,
		`{"address":"a","spoiled":true,"cut":["1 mm","1 mm","1 mm"],"of":"x"}`,
		`{"address":"a","cut":["1 mm","1 mm"],"of":"x"}`,
		`{"address":"a","cut":["1 mm","0 mm","1 mm"],"of":"x"}`,
		`{"address":"a","cut":["1 mm","1 mm","1 mm"]}`,
		`{"address":"a","reading":"width","value":"18 mm"}`,
		`{"address":"a","reading":"width","value":"18 furlong","of":"x"}`,
		`{"address":"a","reading":"","value":"18 mm","of":"x"}`,
		`{"address":"a","reading":"width","value":"1/128 in","of":"x"}`,
		`{"address":"a","reading":"width","value":"38 %","of":"x"}`,
		`{"address":"a","reading":"width","value":"18 mm","of":"x","humidity":"120 %"}`,
		`{"address":"a","reading":"width","value":"18 mm","of":"x","humidity":"45"}`,
		`{"address":"a","reading":"width","value":"18 mm","of":"x","date":"2026-02-30"}`,
		`{"address":"a","reading":"width","vlaue":"18 mm","of":"x"}`,
		`{"address":"a","reading":"` + strings.Repeat("w", MaxWhat+1) + `","value":"18 mm","of":"x"}`,
		`{"address":"a","spoiled":true,"note":"` + strings.Repeat("w", MaxNote+1) + `"}`,
	} {
		if r, _, err := Read([]byte(text + "\n")); err == nil {
			t.Errorf("%s reads as %v", text, r)
		}
	}
	if _, err := (Entry{}).Line(); err == nil {
		t.Error("no entry was written")
	}
}

func TestPlace(t *testing.T) {
	now := map[address.Address]string{"space[1]": "s1", "space[2]": "s2", "side": "p1", "side.groove": "g"}
	r := Record{
		reading("space[1]", "width front", "s1", 1),
		reading("space[1]", "width front", "s1", 2), // the later one wins
		reading("space[1]", "width back", "s1", 3),
		reading("space[2]", "width front", "old", 4),
		reading("space[3]", "width front", "s3", 5),
		cut("side", "p1"),
		reading("side", "thickness", "p1", 6),
	}
	p := Place(r, now)
	var nm []int64
	for e := range p.All() {
		n, _ := e.Value.Int()
		nm = append(nm, n)
	}
	if want := []int64{6, 3, 2}; !slices.Equal(nm, want) { // by address: side, space[1]
		t.Errorf("readings in force: %v, want %v", nm, want)
	}
	if _, ok := p.Cuts["side"]; !ok {
		t.Error("the cut side is not in force")
	}
	if len(p.Unplaced) != 2 || p.Unplaced[0].Number != 4 || p.Unplaced[0].Why != Another || p.Unplaced[1].Number != 5 || p.Unplaced[1].Why != Gone {
		t.Errorf("unplaced: %v", p.Unplaced)
	}
}

func TestSpoiledTakesBack(t *testing.T) {
	now := map[address.Address]string{"side": "p", "side.groove": "g", "sides": "q", `side.channel["4.0 a"]`: "c"}
	r := Record{
		cut("side", "p"), reading("side", "thickness", "p", 1), reading("side.groove", "depth", "g", 2),
		reading(`side.channel["4.0 a"]`, "depth", "c", 3), cut("sides", "q"), reading("side", "width", "other", 4),
		spoiled("side"),
	}
	p := Place(r, now)
	if len(p.Cuts) != 1 || len(p.Readings) != 0 || len(p.Unplaced) != 0 {
		t.Errorf("after spoiling: cuts %v, readings %v, unplaced %v", p.Cuts, p.Readings, p.Unplaced)
	}
	p = Place(append(r, cut("side", "p")), now)
	if _, ok := p.Cuts["side"]; !ok || len(p.Readings) != 0 {
		t.Error("a part made again is not cut")
	}
}

// From three drawers to four and back: nothing is lost, and what is attached
// again is told.
func TestThereAndBack(t *testing.T) {
	three := map[address.Address]string{"space[1]": "3.1", "space[2]": "3.2"}
	four := map[address.Address]string{"space[1]": "4.1", "space[2]": "4.2"}
	r := Record{reading("space[2]", "width", "3.2", 10)}
	if p := Place(r, four); len(p.Readings) != 0 || len(p.Unplaced) != 1 {
		t.Errorf("in four: %v", p)
	}
	if p := Place(r, three); len(p.Readings) != 1 || len(p.Unplaced) != 0 || len(p.Again) != 0 {
		t.Errorf("back in three: %v", p)
	}
	r = append(r, reading("space[2]", "width", "4.2", 20))
	if e, _ := Place(r, four).Reading("space[2]", "width"); !e.Value.Equal(unit.OfLength(20)) {
		t.Errorf("in four: %v", e)
	}
	p := Place(r, three)
	if e, _ := p.Reading("space[2]", "width"); !e.Value.Equal(unit.OfLength(10)) || len(p.Unplaced) != 1 || len(p.Again) != 1 {
		t.Errorf("back in three: %v", p)
	}
}

// Law: every entry is in force, unplaced, overtaken by a later entry of the same
// thing that fits, or taken back; and what is in force fits.
func TestLawNothingIsLost(t *testing.T) {
	seed := uint64(9)
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewPCG(seed, 1))
	names := []address.Address{"a", "a.b", "a.b.c", "d[1]", "d[2]"}
	prints := []string{"x", "y"}
	for range 3000 {
		var r Record
		for range rng.IntN(12) {
			a, of := names[rng.IntN(len(names))], prints[rng.IntN(2)]
			r = append(r, []Entry{reading(a, "w", of, unit.Length(len(r))), cut(a, of), spoiled(a)}[rng.IntN(3)])
		}
		now := map[address.Address]string{}
		for _, a := range names {
			if rng.IntN(4) > 0 {
				now[a] = prints[rng.IntN(2)]
			}
		}
		p := Place(r, now)
		unplaced := map[int]bool{}
		for _, u := range p.Unplaced {
			unplaced[u.Number] = true
		}
		fits := func(e Entry) bool { of, ok := now[e.Address]; return ok && of == e.Fingerprint }
		for i, e := range r {
			if e.Kind == Spoiled {
				continue
			}
			overtaken, back := false, false
			for _, later := range r[i+1:] {
				overtaken = overtaken || later.Kind == e.Kind && later.Address == e.Address && fits(later)
				back = back || later.Kind == Spoiled && later.Address.Has(e.Address)
			}
			// What overtakes may itself have been taken back.
			inForce := e.Kind == Cut && same(p.Cuts[e.Address], e)
			if in, ok := p.Reading(e.Address, e.What); ok && e.Kind == Reading {
				inForce = same(in, e)
			}
			switch {
			case unplaced[i+1] && (fits(e) || back):
				t.Fatalf("entry %d of %v is unplaced without reason", i+1, r)
			case !unplaced[i+1] && !inForce && !overtaken && !back:
				t.Fatalf("entry %d of %v is lost", i+1, r)
			case inForce && e.Kind == Reading && (!fits(e) || back):
				t.Fatalf("entry %d of %v is in force without right", i+1, r)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, e := range []Entry{reading("drawer[2].space", "width front", "5f2c", 381_400_000), cut("a", "x"), spoiled("b")} {
		line, err := e.Line()
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	f.Add([]byte(`{"address":"a","reading":"w","value":"-1/3 deg","of":"x","humidity":"38 %","date":"2026-03-01"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, good, err := Read(data)
		if err != nil {
			return
		}
		var out []byte
		for _, e := range r {
			line, err := e.Line()
			if err != nil {
				t.Fatalf("%v was read and cannot be written: %v", e, err)
			}
			out = append(out, line...)
		}
		back, _, err := Read(out)
		if err != nil || !slices.EqualFunc(r, back, same) {
			t.Fatalf("%q is written as %q, which reads as %v, %v", data, out, back, err)
		}
		if len(r) > 0 {
			line, _ := json.Marshal(r[0])
			if again, _, err := Read(journal.Appended(data, good, append(line, '\n'))); err != nil || len(again) != len(r)+1 {
				t.Fatalf("%q does not take another line: %v", data, err)
			}
		}
		Place(r, map[address.Address]string{"a": "x"})
	})
}

func BenchmarkPlace10k(b *testing.B) {
	var r Record
	now := map[address.Address]string{}
	for i := range 10_000 {
		a := address.Address("").Nth("drawer", i/4+1).Child("side")
		now[a] = "x"
		r = append(r, reading(a, "thickness", "x", 1))
		if i%50 == 0 {
			r = append(r, spoiled(a))
		}
	}
	for b.Loop() {
		Place(r, now)
	}
}
