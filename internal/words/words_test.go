package words

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// with returns words over a catalogue of its own.
func with(t *testing.T, text string, show unit.Show, lang Language) *Words {
	t.Helper()
	file := read("test", text)
	if len(file.faults) > 0 {
		t.Fatal(file.faults)
	}
	w := New(English, British, show, "GBP")
	entries := map[string]template{}
	for key, text := range w.entries {
		entries[key] = text
	}
	for _, e := range file.entries {
		entries[e.key] = e.text
	}
	if lang == Pseudo {
		w.pseudo = true
		for key, text := range entries {
			entries[key] = accented(text)
		}
	}
	w.entries = entries
	return w
}

const sample = `
# a comment
too-wide = {^part} is {is} wide; {n} {n:board|boards} of {limit} at most.
nested = Cut {n:a {word.rebate}|{n} {word.rebates}}.
braces = a \{b\} \| \\ c
fence to cutter edge = fence to cutter edge
all = {length}, {ratio}, {percent}, {text}, {word}, {at}, {money}, {speed}, {minutes}, {list}
self.a = x {self.a}
`

func TestSay(t *testing.T) {
	w := with(t, sample, unit.Show{System: unit.Inches, Denominator: 8}, English)
	wide := func(n int) message.Message {
		return message.New("too-wide", message.Word("part", "word.housing"), message.LengthRounded("is", unit.MM(442), unit.Down),
			message.Length("limit", 136_525_000), message.Count("n", n))
	}
	for _, c := range []struct {
		m    message.Message
		want string
	}{
		{message.Message{}, ""},
		{wide(1), "Housing is 17 3/8 in wide; 1 board of 5 3/8 in at most."},
		{wide(2), "Housing is 17 3/8 in wide; 2 boards of 5 3/8 in at most."},
		{wide(0), "Housing is 17 3/8 in wide; 0 boards of 5 3/8 in at most."},
		{message.New("nested", message.Count("n", 1)), "Cut a rebate."},
		{message.New("nested", message.Count("n", 3)), "Cut 3 rebates."},
		{message.New("braces"), `a {b} | \ c`},
		{message.New("fence to cutter edge"), "fence to cutter edge"},
		{message.New("all", message.Length("length", unit.Inch), message.Ratio("ratio", 0.475), message.Percent("percent", 38),
			message.Text("text", "the {author}'s"), message.Word("word", "word.groove"), message.Address("at", address.Address("drawer[2]").Child("side")),
			message.Money("money", 1250), message.Speed("speed", 18000), message.Minutes("minutes", 90),
			message.List("list", message.Count("", 1), message.Count("", 2), message.Text("", "x"))),
			"1 in, 0.475, 38%, the {author}'s, groove, drawer[2].side, £12.50, 18,000 rpm, 1 h 30 min, 1, 2 and x"},
		{message.New("gone"), "⟦gone⟧"},
		{message.New("nested"), "Cut ⟦n⟧."},
		{message.New("nested", message.Text("n", "1")), "Cut ⟦n⟧."},
	} {
		if got := w.Say(c.m); got != c.want {
			t.Errorf("%s: %q, want %q", c.m.Key, got, c.want)
		}
	}
	if got := w.Say(message.New("self.a")); !strings.Contains(got, "⟦self.a⟧") {
		t.Errorf("an entry that holds itself: %q", got)
	}
}

func TestMissing(t *testing.T) {
	w := with(t, sample, unit.Show{}, English)
	got := w.Missing(message.Message{}, message.New("braces"), message.New("gone"), message.New("nested"), message.New("nested", message.Ratio("n", 1)),
		message.New("too-wide", message.Word("part", "word.gone"), message.Length("is", 1), message.Length("limit", 1), message.Count("n", 1)))
	want := []Fault{{Key: "gone", What: NoEntry}, {Key: "nested", Name: "n", What: NoArgument}, {Key: "nested", Name: "n", What: NoCount}, {Key: "word.gone", What: NoEntry}}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if len(Missing(message.New("no such key"))) != 1 {
		t.Error("the English catalogue misses nothing")
	}
}

func TestRegions(t *testing.T) {
	british, american := New(English, British, unit.Show{}, ""), New(English, American, unit.Show{}, "")
	for key, want := range map[string][2]string{"word.rebate": {"rebate", "rabbet"}, "word.housing": {"housing", "dado"}, "word.groove": {"groove", "groove"}} {
		if got := [2]string{british.Label(key), american.Label(key)}; got != want {
			t.Errorf("%s: %v, want %v", key, got, want)
		}
	}
	for key := range catalogues().american {
		if !british.Has(key) {
			t.Errorf("%s is in the American catalogue only", key)
		}
	}
}

func TestFigures(t *testing.T) {
	w := New(English, British, unit.Show{System: unit.Both, Resolution: unit.Millimetre / 2, Denominator: 16}, "GBP")
	for _, c := range []struct{ got, want string }{
		{w.Length(136_525_000), "136.5 mm (5 3/8 in)"},
		{w.Figure(136_525_000), "136.5 (5 3/8)"},
		{w.LengthToward(unit.MM(442), unit.Up), "442 mm (17 7/16 in)"},
		{w.Money(123456789), "£1,234,567.89"}, {w.Money(-5), "£-0.05"}, {w.Money(100), "£1.00"},
		{New(English, British, unit.Show{}, "").Money(1250), "12.50"},
		{New(English, British, unit.Show{}, "XYZ").Money(1250), "12.50 XYZ"},
		{New(English, British, unit.Show{}, "").Money(-1234500), "-12,345.00"},
		{w.Minutes(45), "45 min"}, {w.Minutes(60), "1 h"}, {w.Minutes(1440), "24 h"}, {w.Minutes(2880), "2 days"}, {w.Minutes(61), "1 h 1 min"},
		{w.Number(0.4750, 3), "0.475"}, {w.Number(-0.0001, 2), "0"}, {w.Number(3, 2), "3"},
		{w.Own("A1"), "A1"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// In the pseudo-language every letter comes from the catalogue, is accented and
// stands in brackets; what does not is found.
func TestPseudoLanguage(t *testing.T) {
	w := with(t, sample, unit.Show{}, Pseudo)
	text := w.Say(message.New("nested", message.Count("n", 3)))
	if want := "⟪Çúţ ⟨3⟩ ⟪ŕéƀáţéš⟫.⟫"; text != want {
		t.Errorf("got %q, want %q", text, want)
	}
	all := w.Say(message.New("all", message.Length("length", unit.Inch), message.Ratio("ratio", 0.5), message.Percent("percent", 38),
		message.Text("text", "own"), message.Word("word", "word.groove"), message.Address("at", "drawer"), message.Money("money", 1250),
		message.Speed("speed", 18000), message.Minutes("minutes", 90), message.List("list", message.Text("", "a"), message.Text("", "b"))))
	if found := Bypassed(all); found != nil {
		t.Errorf("%q: found %v", all, found)
	}
	for _, s := range []string{w.Length(unit.Inch), w.Figure(1), w.Own("A1"), w.Money(5), w.Minutes(2880), w.Number(1.5, 2)} {
		if found := Bypassed(s); found != nil {
			t.Errorf("%q: found %v", s, found)
		}
	}
	if found := Bypassed(text + " and prose " + w.Own("A1") + "x"); !slices.Equal(found, []string{"and", "prose", "x"}) {
		t.Errorf("found %v", found)
	}
	if found := Bypassed(w.Say(message.New("gone"))); !slices.Equal(found, []string{"gone"}) {
		t.Errorf("found %v", found)
	}
	// No text of the real catalogue keeps a plain letter.
	for key, text := range New(Pseudo, American, unit.Show{}, "").entries {
		var plain func(t template) string
		plain = func(t template) (s string) {
			for _, p := range t {
				s += p.plain
				for _, f := range p.forms {
					s += plain(f)
				}
			}
			return s
		}
		if found := Bypassed(plain(text)); found != nil {
			t.Errorf("%s keeps %v", key, found)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for line, want := range map[string]What{
		"key":            BadLine,
		"= text":         BadLine,
		"9 = text":       BadLine,
		"ké = text":      BadLine,
		"a = {":          BadText,
		"a = }":          BadText,
		"a = {x":         BadText,
		"a = {}":         BadText,
		"a = {x y}":      BadText,
		"a = {n:one}":    BadText,
		"a = {n:one|two": BadText,
		"a = \\x":        BadText,
		"a = \\":         BadText,
		"a = {word.x:b}": BadText,
		"a = \xff":       BadLine,
		"a = " + strings.Repeat("{n:", 20) + "a" + strings.Repeat("|b}", 20): BadText,
	} {
		file := read("test", line+"\n")
		if len(file.faults) != 1 || file.faults[0].What != want || file.faults[0].Line != 1 {
			t.Errorf("%q: %v, want %s", line, file.faults, want)
		}
	}
}

// Law: what was read is written as it reads back; nothing panics.
func FuzzRead(f *testing.F) {
	f.Add(sample)
	f.Add("a = {n:{word.x}|\\{}\nb = {^c}\n@built x.\n")
	f.Fuzz(func(t *testing.T, text string) {
		for _, e := range read("fuzz", text).entries {
			written := e.text.String()
			again, ok := parse(written)
			if !ok || again.String() != written {
				t.Fatalf("%q is written as %q, which reads as %q, %v", e.key, written, again.String(), ok)
			}
			s := speaker{Words: New(Pseudo, British, unit.Show{}, "")}
			s.fill(e.key, e.text, []message.Arg{message.Count("n", 2)}, 0)
		}
	})
}

func BenchmarkSay(b *testing.B) {
	w := New(English, British, unit.Show{System: unit.Both, Denominator: 16}, "GBP")
	m := message.New("format.hours-minutes", message.Count("h", 1), message.Count("n", 30))
	for b.Loop() {
		w.Say(m)
	}
}
