package document

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/diag"
)

// documents returns every document of the repository, for tests and as seeds.
func documents(t testing.TB) []Source {
	t.Helper()
	var out []Source
	for _, pattern := range []string{"../../examples/*/*.hcl", "../recipe/library/*.hcl", "../shop/library/*.hcl", "../../testdata/invalid/*.hcl"} {
		names, err := filepath.Glob(pattern)
		if err != nil || len(names) == 0 {
			t.Fatal(pattern, err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, Source{name, text})
		}
	}
	return out
}

func codes(ds diag.List) (out []diag.Code) {
	for _, d := range ds {
		out = append(out, d.Code)
	}
	return out
}

// TestReadsDocuments reads every document of the repository that is not meant to
// be wrong.
func TestReadsDocuments(t *testing.T) {
	for _, src := range documents(t) {
		f, ds := Read(src, Limits{})
		if strings.Contains(src.Name, "invalid") {
			continue
		}
		for _, d := range ds {
			t.Errorf("%s:%d:%d: %s", src.Name, d.Where.Line, d.Where.Column, d.Code)
		}
		if f.Head == nil || f.Work.Formulas == 0 {
			t.Errorf("%s: nothing read", src.Name)
		}
	}
}

// TestPlaces checks that every block, attribute and formula stands where it says.
func TestPlaces(t *testing.T) {
	for _, src := range documents(t) {
		f, _ := Read(src, Limits{})
		var walk func(blocks []*Block)
		walk = func(blocks []*Block) {
			for _, b := range blocks {
				if got := f.Written(b.Where); !strings.HasPrefix(got, b.Type) {
					t.Errorf("%s: block %s stands at %q", src.Name, b.Type, got)
				}
				if got := f.Written(b.Whole); !b.Broken && !strings.HasSuffix(got, "}") {
					t.Errorf("%s: block %s ends with %q", src.Name, b.Type, got)
				}
				last := 0
				for _, a := range b.Attributes {
					if got := f.Written(a.Where); got != a.Name || a.Where.Start < last {
						t.Errorf("%s: attribute %s stands at %q", src.Name, a.Name, got)
					}
					last = a.Where.Start
					line := 1 + bytes.Count(src.Text[:a.Where.Start], []byte("\n"))
					if a.Where.Line != line {
						t.Errorf("%s: attribute %s is in line %d, not %d", src.Name, a.Name, line, a.Where.Line)
					}
				}
				walk(b.Blocks)
			}
		}
		walk(f.Blocks)
	}
}

// TestRecovery breaks one block of four in many ways: the other three are read,
// and one thing is told.
func TestRecovery(t *testing.T) {
	for _, broken := range []string{
		"  high = (2 + 3", "  high = [1, 2", "  high = { a = 1", "  high = \"18", "  high = 18mm", "  high = 1 +", "  high =", "  high = 3.5.2",
		"  high = @", "  high", "  high = 3/4 in", "  = 4", "  high = 5 3/8 in", "  high == 4", "  inner {", "  high = \"${a\"", "  high = a b c",
	} {
		text := "scantling = 1\n\npiece \"Box\" {\n  units = \"mm\"\n}\n\nsizes {\n  low = 1\n" + broken + "\n}\n\nmaterial \"m\" {\n  asks = \"oak board\"\n}\n\ninput \"n\" {\n  count = 2\n}\n"
		f, ds := Read(Source{"x", []byte(text)}, Limits{})
		if len(ds) != 1 {
			t.Errorf("%q: %v", broken, codes(ds))
		}
		var types []string
		for _, b := range f.Blocks {
			types = append(types, b.Type)
		}
		if got := strings.Join(types, " "); got != "piece sizes material input" {
			t.Errorf("%q: read %s", broken, got)
			continue
		}
		if strings.HasSuffix(broken, "{") || strings.HasSuffix(broken, "{ a = 1") {
			continue // where a brace is not closed, what belongs to it cannot be told
		}
		if !f.Blocks[1].Broken || f.Blocks[2].Broken || f.Blocks[1].Attribute("low") == nil || f.Blocks[1].Attribute("high") != nil {
			t.Errorf("%q: the wrong block is broken, or the wrong attribute is kept", broken)
		}
	}
}

// TestSplice changes one input's value: nothing but its bytes changes.
func TestSplice(t *testing.T) {
	text := "scantling = 1 # first\npiece \"Box\" {}\n\ninput \"n\" {\n   count  =   3   # how many\n  from = 1\n}\n"
	f, ds := Read(Source{"x", []byte(text)}, Limits{})
	if len(ds) > 0 {
		t.Fatal(codes(ds))
	}
	e, err := f.SetInput("n", "12")
	if err != nil {
		t.Fatal(err)
	}
	got := text[:e.Start] + e.New + text[e.End:]
	if want := strings.Replace(text, "=   3 ", "=   12 ", 1); got != want || e.Old != "3" {
		t.Errorf("got %q", got)
	}
	for _, bad := range []string{"", "1 +", "1\nfrom = 2", "1 # comment\n}", "18mm", strings.Repeat("(", 500), strings.Repeat("9", MaxFormula+1), "[for x in y : x]"} {
		if e, err := f.SetInput("n", bad); err == nil {
			t.Errorf("%q is taken: %+v", bad, e)
		}
	}
	if _, err := f.SetInput("m", "1"); err == nil {
		t.Error("an input that there is not is set")
	}
}

// TestLimits holds each bound by counting: just below it a document is read,
// beyond it it is refused with its code.
func TestLimits(t *testing.T) {
	head := "scantling = 1\npiece \"Box\" {}\nsizes {\n"
	for _, c := range []struct {
		name   string
		limits Limits
		text   func(n int) string
		most   int // n that is still read
		code   diag.Code
	}{
		{"bytes", Limits{Bytes: 1000}, func(n int) string { return head + "}\n#" + strings.Repeat("x", n-len(head)-3) }, 1000, CodeTooLong},
		{"brackets", Limits{Depth: 10}, func(n int) string {
			return head + "a = " + strings.Repeat("(", n) + "1" + strings.Repeat(")", n) + "\n}\n"
		}, 9, CodeTooDeep},
		{"texts", Limits{Depth: 10}, func(n int) string {
			return head + "a = " + strings.Repeat(`"${`, n) + "1" + strings.Repeat(`}"`, n) + "\n}\n"
		}, 4, CodeTooDeep},
		{"signs", Limits{Depth: 10}, func(n int) string { return head + "a = " + strings.Repeat("!", n) + "b\n}\n" }, 10, CodeTooDeep},
		{"choices", Limits{Depth: 10}, func(n int) string { return head + "a = " + strings.Repeat("b ? c : ", n) + "d\n}\n" }, 10, CodeTooDeep},
		{"steps", Limits{Depth: 10}, func(n int) string { return head + "a = b" + strings.Repeat(".c", n) + "\n}\n" }, 10, CodeTooDeep},
		{"blocks", Limits{Blocks: 10}, func(n int) string { return head + "}\n" + strings.Repeat("step \"s\" {}\n", n-2) }, 10, CodeTooMany},
		{"attributes", Limits{Attributes: 10}, func(n int) string {
			var b strings.Builder
			b.WriteString(head)
			for i := range n - 1 {
				fmt.Fprintf(&b, "a%d = 1\n", i)
			}
			return b.String() + "}\n"
		}, 10, CodeTooMany},
		{"items", Limits{Items: 10}, func(n int) string { return head + "a = [" + strings.Repeat("1,", n) + "]\n}\n" }, 10, CodeTooMany},
		{"chain", Limits{Items: 10}, func(n int) string { return head + "a = 1" + strings.Repeat("+1", n) + "\n}\n" }, 10, CodeTooMany},
		{"formulas", Limits{Formulas: 10}, func(n int) string { return head + "a = 1" + strings.Repeat("+1", n-3) + "\n}\n" }, 10, CodeTooMany},
	} {
		limits := DefaultLimits
		for _, pair := range [][2]*int{
			{&limits.Bytes, &c.limits.Bytes}, {&limits.Depth, &c.limits.Depth}, {&limits.Blocks, &c.limits.Blocks},
			{&limits.Attributes, &c.limits.Attributes}, {&limits.Items, &c.limits.Items}, {&limits.Formulas, &c.limits.Formulas},
		} {
			if *pair[1] > 0 {
				*pair[0] = *pair[1]
			}
		}
		has := func(n int) bool {
			_, ds := Read(Source{"x", []byte(c.text(n))}, limits)
			for _, d := range ds {
				if d.Code == c.code {
					return true
				}
			}
			return false
		}
		if has(c.most) {
			t.Errorf("%s: %d is refused already", c.name, c.most)
		}
		if !has(c.most + 1) {
			t.Errorf("%s: %d is not refused", c.name, c.most+1)
		}
	}
}

// TestGreatNesting gives the reader what would run a careless one out of stack.
func TestGreatNesting(t *testing.T) {
	for _, unit := range []string{"(", "[", "{", "!", "-", "\"${", "a?b:", "a.", "f(", "x[", "1+", "<<A\n"} {
		text := "scantling = 1\nsizes {\na = " + strings.Repeat(unit, 120_000/len(unit)) + "\n}\n"
		if _, ds := Read(Source{"x", []byte(text)}, Limits{}); len(ds) == 0 {
			t.Errorf("%q: nothing is told", unit)
		}
	}
}

// TestNotText refuses bytes that are no text.
func TestNotText(t *testing.T) {
	for _, text := range []string{"scantling = 1\n\xff", "scantling\x00= 1", "\xc3\x28"} {
		if _, ds := Read(Source{"x", []byte(text)}, Limits{}); len(ds) != 1 || ds[0].Code != CodeNotText {
			t.Errorf("%q: %v", text, codes(ds))
		}
	}
}

// TestExactNumbers keeps decimals as they are written.
func TestExactNumbers(t *testing.T) {
	for text, want := range map[string]string{"3.8": "19/5", "0.1": "1/10", "396875": "396875", "12345678901234567890.5": "24691357802469135781/2"} {
		x, err := ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := x.(*Number).Value.RatString(); got != want {
			t.Errorf("%s is %s, not %s", text, got, want)
		}
	}
	for _, text := range []string{"1e9", "1e999999999", strings.Repeat("1", 40)} {
		if _, err := ParseFormula(text); err == nil {
			t.Errorf("%s is taken", text)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"left", "right", "front", "back", "bottom", "top", "grain"}
	for word, want := range map[string]string{"grian": "grain", "botom": "bottom", "rihgt": "right", "zebra": "", "": "", "leftt": "left"} {
		if got := Nearest(word, known); got != want {
			t.Errorf("%q: %q, not %q", word, got, want)
		}
	}
}

// FuzzRead reads anything: it ends, does not panic, and places lie in the text.
func FuzzRead(f *testing.F) {
	for _, src := range documents(f) {
		f.Add(src.Text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		file, ds := Read(Source{"x", text}, Limits{Bytes: 1 << 14, Depth: 32, Blocks: 500, Attributes: 2000, Items: 200, Formulas: 5000, Faults: 50})
		for _, d := range ds {
			if d.Where.Start < 0 || d.Where.End < d.Where.Start || d.Where.End > len(text) {
				t.Fatalf("%s at %+v of %d bytes", d.Code, d.Where, len(text))
			}
			for _, r := range d.Remedies {
				for _, e := range r.Edits {
					if string(text[e.Start:e.End]) != e.Old {
						t.Fatalf("%s: %q does not stand at %d", d.Code, e.Old, e.Start)
					}
				}
			}
		}
		if len(ds) > 50 {
			t.Fatal("more faults than are kept")
		}
		for _, b := range file.Blocks {
			for _, a := range b.Attributes {
				if p := a.Value.Place(); p.End > len(text) || p.Start > p.End {
					t.Fatalf("%s stands at %+v", a.Name, p)
				}
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for _, src := range documents(b) {
		if !strings.Contains(src.Name, "needle-chest.piece") {
			continue
		}
		b.SetBytes(int64(len(src.Text)))
		for b.Loop() {
			Read(src, Limits{})
		}
	}
}

// FuzzParseFormula reads one value of a form: it ends, does not panic, and what is too
// long is refused.
func FuzzParseFormula(f *testing.F) {
	for _, s := range []string{"", "350", `"5 3/8 in"`, "[2, 2.5]", "{ a = 1 }", "a.b[1].c * (2 + 3)", "((((((((", "\"${", strings.Repeat("[", 300)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		e, err := ParseFormula(text)
		if (e == nil) == (err == nil) {
			t.Fatalf("%q: %v and %v", text, e, err)
		}
		if err == nil && len(text) > MaxFormula {
			t.Fatalf("%d bytes are read", len(text))
		}
	})
}
