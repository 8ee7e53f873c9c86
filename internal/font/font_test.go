package font

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// TestMetrics compares the reader with figures read from the faces by another
// TrueType reader (the table dumper of fontTools 4.38), kept here.
func TestMetrics(t *testing.T) {
	f := Of(Regular)
	if f.Ascent != 0.984 || f.Descent != 0.316 || f.CapHeight != 0.668 {
		t.Errorf("line %v above, %v below, capitals %v", f.Ascent, f.Descent, f.CapHeight)
	}
	if b := Of(Bold); b.Ascent != 0.984 || b.CapHeight != 0.668 {
		t.Errorf("bold line %v above, capitals %v", b.Ascent, b.CapHeight)
	}
	if len(f.advances) != 392 || len(f.cmap) != 362 {
		t.Errorf("%d glyphs, %d characters", len(f.advances), len(f.cmap))
	}
}

// TestAgainstFontTools reads every advance and a sample of kerning pairs with
// fontTools, where it is installed.
func TestAgainstFontTools(t *testing.T) {
	script := `
import json,sys
from fontTools.ttLib import TTFont
f=TTFont(sys.argv[1]); c=f.getBestCmap()
print(json.dumps({str(k):f['hmtx'][v][0] for k,v in c.items() if not 48<=k<=57}))`
	py := ""
	for _, p := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(p, "-c", "import fontTools").Run() == nil {
			py = p
			break
		}
	}
	if py == "" {
		if os.Getenv("REQUIRE") == "all" {
			t.Fatal("fontTools is missing (Debian: python3-fonttools)")
		}
		t.Skip("fontTools is missing; advances are not compared with it")
	}
	for w, path := range map[Weight]string{Regular: "data/AtkinsonHyperlegibleNext-Regular.ttf", Bold: "data/AtkinsonHyperlegibleNext-Bold.ttf"} {
		out, err := exec.Command(py, "-c", script, path).Output()
		if err != nil {
			t.Fatal(err)
		}
		var want map[rune]int
		if err := json.Unmarshal(out, &want); err != nil {
			t.Fatal(err)
		}
		if len(want) < 300 {
			t.Fatalf("only %d characters", len(want))
		}
		for r, units := range want {
			g, ok := Of(w).Glyph(r)
			if !ok || Of(w).Units(g) != units {
				t.Errorf("weight %d %q: %d units, want %d", w, r, Of(w).Units(g), units)
			}
		}
	}
}

func TestTabularDigits(t *testing.T) {
	for _, w := range Weights {
		f := Of(w)
		zero, _ := f.Glyph('0')
		for r := '1'; r <= '9'; r++ {
			g, ok := f.Glyph(r)
			if !ok || f.Units(g) != f.Units(zero) {
				t.Errorf("weight %d: %c is %d wide, 0 is %d", w, r, f.Units(g), f.Units(zero))
			}
		}
		if a, b := Width(w, "111.1"), Width(w, "888.8"); !near(a, b) {
			t.Errorf("weight %d: 111.1 is %v wide and 888.8 is %v", w, a, b)
		}
	}
}

func TestKerning(t *testing.T) {
	f := Of(Regular)
	pair := func(s string) float64 {
		a, _ := f.Glyph(rune(s[0]))
		b, _ := f.Glyph(rune(s[1]))
		return f.Kern(a, b)
	}
	for _, s := range []string{"AV", "To", "LT", "Ty"} {
		if k := pair(s); !(k < 0 && k > -0.2) {
			t.Errorf("kerning of %s is %v em, want closer", s, k)
		}
	}
	if k := pair("HH"); k != 0 {
		t.Errorf("kerning of HH is %v", k)
	}
}

func TestFractions(t *testing.T) {
	for in, want := range map[string]string{
		"5 3/8 in":   "5 3⁄8 in",
		"3/4":        "3⁄4",
		"(1/2)":      "(1⁄2)",
		"63/64 + 1":  "63⁄64 + 1",
		"3/5":        "3/5",
		"8/8":        "8/8",
		"0/8":        "0/8",
		"12/11/2026": "12/11/2026",
		"1/2/4":      "1/2/4",
		"a/b":        "a/b",
		"page 1/2x":  "page 1⁄2x",
		"0.3/4":      "0.3/4",
		"1/256":      "1/256",
	} {
		if got := Fractions(in); got != want {
			t.Errorf("Fractions(%q) = %q, want %q", in, got, want)
		}
	}
}

// TestFractionInLine checks that a fraction keeps within the line, that its
// digits are at least 60 % of the text, and that bar and numbers do not touch.
func TestFractionInLine(t *testing.T) {
	for _, w := range Weights {
		f := Of(w)
		line := Lay(w, "5 63⁄64 in")
		var num, den, bar *Piece
		for i := range line.Pieces {
			p := &line.Pieces[i]
			if p.Cluster == 0 {
				continue
			}
			switch {
			case p.Kind == Bar:
				bar = p
			case num == nil:
				num = p
			default:
				den = p
			}
		}
		if num == nil || den == nil || bar == nil {
			t.Fatalf("pieces %+v", line.Pieces)
		}
		if num.Reading != " 63/64" || num.Text != "63" || den.Text != "64" {
			t.Errorf("reads %q, stacked %q over %q", num.Reading, num.Text, den.Text)
		}
		if num.Scale < 0.6 || den.Scale != num.Scale {
			t.Errorf("digits at %v and %v of the text", num.Scale, den.Scale)
		}
		if top := -num.Y + num.Scale*f.CapHeight; top > f.Ascent || den.Y > f.Descent {
			t.Errorf("fraction reaches %v above and %v below the line", top, den.Y)
		}
		if num.Y > bar.Y-0.05 || den.Y-den.Scale*f.CapHeight < bar.Y+BarThick+0.05 {
			t.Errorf("numbers at %v and %v touch the bar at %v", num.Y, den.Y, bar.Y)
		}
		if bar.Width < num.Width || bar.Width < den.Width {
			t.Errorf("bar %v shorter than numbers %v, %v", bar.Width, num.Width, den.Width)
		}
		if Lay(w, "5¹³⁄₆₄").Width != Lay(w, "5 13⁄64").Width {
			t.Error("5¹³⁄₆₄ is not drawn as 5 13⁄64")
		}
		if Lay(w, "½").Width != Lay(w, "1⁄2").Width {
			t.Error("½ is not drawn as 1⁄2")
		}
		if gap := Lay(w, "5 3⁄8").Width - Lay(w, "5").Width - Lay(w, "3⁄8").Width; gap < 0.1 || gap > 0.2 {
			t.Errorf("gap between 5 and 3⁄8 is %v em", gap)
		}
	}
}

func TestFractionSpace(t *testing.T) {
	s := "cut 5 3⁄8 in from 2 boards"
	for i := range len(s) {
		want := strings.HasPrefix(s[i:], " 3⁄8")
		if got := IsFractionSpace(s, i); got != want {
			t.Errorf("IsFractionSpace at %d of %q = %v", i, s, got)
		}
	}
}

// TestSigns checks that every drawn sign keeps to its box and to its advance.
func TestSigns(t *testing.T) {
	for _, r := range "⌀→←↑↓↔☐☑☒✓✗⚠■▲▼●○◆□′″∠⟂" {
		if !HasSign(r) {
			t.Errorf("%c is not drawn", r)
			continue
		}
		if _, ok := Of(Regular).Glyph(r); ok {
			t.Errorf("%c is drawn although the face has it", r)
		}
		for _, bold := range []bool{false, true} {
			outlines, width := signOutlines(r, bold)
			for _, o := range outlines {
				h := o.Pen / 2
				for _, s := range o.Segments {
					if s.Verb == Close {
						continue
					}
					if p := s.To; p.X-h < 0 || p.X+h > width || p.Y-h < -signTop-0.01 || p.Y+h > signBottom+0.01 {
						t.Errorf("%c bold %v: point %v leaves the box 0–%v", r, bold, p, width)
					}
				}
			}
		}
	}
}

// TestNothingLost checks that every character of a line is in a piece's text or
// reading, also one that no face has.
func TestNothingLost(t *testing.T) {
	for _, s := range []string{"plain", "⌀ 6 → 8 ✓", "漢字 and \x00", "4½ µm", "5 3⁄8 in", "3⁄8", "a\xffb"} {
		var got strings.Builder
		for _, p := range Lay(Regular, s).Pieces {
			if p.Cluster != 0 {
				got.WriteString(p.Reading)
			} else {
				got.WriteString(p.Text)
			}
		}
		want := strings.NewReplacer("½", " 1/2", "3⁄8", "3/8", "µ", "μ", "\xff", "\uFFFD").Replace(s)
		if got.String() != want {
			t.Errorf("%q reads %q, want %q", s, got.String(), want)
		}
	}
}

func FuzzLay(f *testing.F) {
	for _, s := range []string{"5 3⁄8", "⁄", "1⁄", "⁄8", "123456⁄8", "½⁄2", "\u00AD", " 1⁄2 ", "☐☐"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l := Lay(Bold, s)
		if math.IsNaN(l.Width) || l.Width < -0.5 || l.Top > 1.3 || l.Bottom > 0.6 {
			t.Errorf("%q: %v wide, %v above, %v below", s, l.Width, l.Top, l.Bottom)
		}
		Fractions(s)
		for i := range s {
			IsFractionSpace(s, i)
		}
	})
}

func BenchmarkLay(b *testing.B) {
	for b.Loop() {
		Lay(Regular, "Set the fence 5 3⁄8 in from the cutter’s edge; ⌀ 6.35 round-nose")
	}
}

// TestSubset reads a subset back: kept glyphs have their outlines, others none.
func TestSubset(t *testing.T) {
	f := Of(Regular)
	var used []GID
	for _, r := range "Aé5" {
		g, ok := f.Glyph(r)
		if !ok {
			t.Fatalf("no %c", r)
		}
		used = append(used, g)
	}
	data := f.Subset(used)
	if again := f.Subset(used); string(again) != string(data) {
		t.Error("two subsets differ")
	}
	if len(data) > len(regularTTF)/4 {
		t.Errorf("subset of three glyphs has %d bytes", len(data))
	}
	if checksum(data) != 0xB1B0AFBA {
		t.Errorf("checksum of the file is %x", checksum(data))
	}
	s := &Face{tables: map[string][]byte{}}
	for i := range int(be16(data, 4)) {
		at := 12 + 16*i
		from, size := be32(data, at+8), be32(data, at+12)
		s.tables[string(data[at:at+4])] = data[from : from+size]
	}
	s.readWidths()
	for _, g := range used {
		if want, got := f.outline(g), s.outline(g); len(want) == 0 || !strings.HasPrefix(string(got), string(want)) {
			t.Errorf("glyph %d has %d bytes of outline, want %d", g, len(got), len(want))
		}
	}
	b, _ := f.Glyph('B')
	if len(s.outline(b)) != 0 {
		t.Error("a glyph that was not asked for has an outline")
	}
	e, _ := f.Glyph('e')
	if be16(f.outline(used[1]), 0) == 0xFFFF && len(s.outline(e)) == 0 {
		t.Error("é is made of e, which has no outline")
	}
}
