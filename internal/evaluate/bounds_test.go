package evaluate

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/record"
)

func text(name, s string) document.Source { return document.Source{Name: name, Text: []byte(s)} }

const empty = "scantling = 1\n\npiece \"Empty\" {\n}\n"

func has(ds diag.List, code diag.Code) bool {
	for _, d := range ds {
		if d.Code == code {
			return true
		}
	}
	return false
}

// TestBounds holds each bound of the evaluation by counting: what just reaches
// it passes, one more is refused with its code, and the work stays below it.
func TestBounds(t *testing.T) {
	chain := func(n int) string {
		var b strings.Builder
		b.WriteString(empty + "\nsizes {\n")
		for i := range n - 1 {
			fmt.Fprintf(&b, "  a%d = a%d\n", i, i+1)
		}
		fmt.Fprintf(&b, "  a%d = 1\n}\n", n-1)
		return b.String()
	}
	sum := func(n int) string {
		return empty + "\nsizes {\n  a = " + strings.TrimSuffix(strings.Repeat("1+", n), "+") + "\n}\n"
	}
	groups := func(n int) string { return empty + fmt.Sprintf("\ngroup \"g\" {\n  repeat = %d\n}\n", n) }
	shop := Piece(Sources{Document: text("x", empty)}).Work.Formulas // the built-in shop's own
	for _, c := range []struct {
		name string
		text func(int) string
		set  func(*Limits, int)
		most int
		code diag.Code
	}{
		{"chain", chain, func(l *Limits, n int) { l.Chain = n }, 50, CodeTooDeep},
		{"formulas", sum, func(l *Limits, n int) { l.Formulas = shop + 2*n - 1 }, 50, formula.CodeTooMuch},
		{"parts", groups, func(l *Limits, n int) { l.Parts = n }, 50, CodeTooManyParts},
	} {
		limits := DefaultLimits
		c.set(&limits, c.most)
		run := func(n int) Result { return Piece(Sources{Document: text("x", c.text(n)), Limits: limits}) }
		within := run(c.most)
		if len(within.Diagnostics) > 0 {
			t.Errorf("%s: %d is refused: %s", c.name, c.most, within.Diagnostics[0].Code)
		}
		if beyond := run(c.most + 1); !has(beyond.Diagnostics, c.code) {
			t.Errorf("%s: %d is not refused", c.name, c.most+1)
			tell(t, beyond.Diagnostics)
		}
		if w := within.Work; w.Formulas > limits.Formulas || w.Parts > limits.Parts || w.Chain > limits.Chain || w.Pairs > limits.Pairs+1 {
			t.Errorf("%s: work %+v beyond %+v", c.name, w, limits)
		}
	}
}

// TestPairsAreCounted bounds the pairs of parts that joints are held against.
func TestPairsAreCounted(t *testing.T) {
	doc := boxText(t) + "\npart \"bar\" {\n  of     = material.case\n  repeat = 30\n  grain  = \"right\"\n  left   = 400 * nth\n  wide   = 20\n  front  = 0\n  deep   = 30\n  bottom = 50\n}\n" +
		"\njoint \"bars\" {\n  kind  = \"butt\"\n  of    = part.bar\n  into  = [part.side, part.bar]\n  meets = 0\n}\n"
	r := Piece(Sources{Document: text("x", doc)})
	if len(r.Diagnostics) > 0 {
		tell(t, r.Diagnostics)
		t.Fatal("wrong document")
	}
	limits := DefaultLimits
	limits.Pairs = r.Work.Pairs
	if r := Piece(Sources{Document: text("x", doc), Limits: limits}); len(r.Diagnostics) > 0 {
		t.Errorf("%d pairs are refused", limits.Pairs)
	}
	limits.Pairs--
	if r := Piece(Sources{Document: text("x", doc), Limits: limits}); !has(r.Diagnostics, CodeTooManyPairs) {
		t.Error("one pair too many is not refused")
	}
}

func boxText(t testing.TB) string {
	t.Helper()
	return string(load(t, "testdata", "box.piece.hcl").Text)
}

// TestMadeCodes makes the diagnostics that no single document yields.
func TestMadeCodes(t *testing.T) {
	box := boxText(t)
	for name, c := range map[string]struct {
		src  Sources
		code diag.Code
	}{
		"value":        {Sources{Document: text("x", box), Inputs: map[string]string{"wide": "wide + 1"}}, CodeInputValue},
		"no value":     {Sources{Document: text("x", box), Inputs: map[string]string{"wide": "1 +"}}, CodeInputValue},
		"formula":      {Sources{Document: text("x", box), Inputs: map[string]string{"wide": "sizes.a"}}, CodeInputValue},
		"text":         {Sources{Document: text("x", box), Inputs: map[string]string{"wide": `"12 mn"`}}, formula.CodeNotALength},
		"beyond":       {Sources{Document: text("x", box), Inputs: map[string]string{"wide": "500"}}, CodeInputRange},
		"unknown":      {Sources{Document: text("x", box), Inputs: map[string]string{"wdie": "300"}}, CodeInputUnknown},
		"choice":       {Sources{Document: text("x", box), Choices: text("c", "scantling = 1\nchoices {\n  wide = 500\n}\n")}, CodeInputRange},
		"not choices":  {Sources{Document: text("x", box), Choices: text("c", empty)}, CodeWrongDocument},
		"not a shop":   {Sources{Document: text("x", box), Shop: text("s", empty)}, CodeWrongDocument},
		"not a recipe": {Sources{Document: text("x", box), Recipes: []document.Source{text("r", empty)}}, CodeWrongDocument},
		"recursion": {Sources{Document: text("x", empty+"\nuse \"loop\" {\n  as = \"a\"\n}\n"),
			Recipes: []document.Source{text("r", "scantling = 1\nrecipe \"loop\" {\n}\n\nuse \"loop\" {\n  as = \"a\"\n}\n")}}, CodeRecipeDepth},
		"input name": {Sources{Document: text("x", empty+"\nuse \"odd\" {\n  as = \"a\"\n}\n"),
			Recipes: []document.Source{text("r", "scantling = 1\nrecipe \"odd\" {\n}\n\ninput \"left\" {\n  length = 3\n}\n")}}, CodeInputName},
		"rule": {Sources{Document: text("x", box+"\ncontents \"wires\" {\n  rod    = [4]\n  length = 100\n}\n\nseries \"wire\" {\n  kind  = \"channel\"\n  on    = part.shelf\n  side  = \"top\"\n  holds = contents.wires\n  pitch = 1\n}\n")}, "refused-by-rule"},
	} {
		r := Piece(c.src)
		if c.code == "refused-by-rule" {
			c.code = formula.CodeRefused
		}
		if len(r.Diagnostics) != 1 || r.Diagnostics[0].Code != c.code {
			t.Errorf("%s: want %s", name, c.code)
			tell(t, r.Diagnostics)
		}
	}
}

// TestOverrides takes values from the choices file and from the user, the user's
// first, and says who gave them.
func TestOverrides(t *testing.T) {
	src := Sources{Document: text("x", boxText(t)), Choices: text("c", "scantling = 1\nchoices {\n  wide = \"250 mm\"\n}\n")}
	wide := func(s Sources) string {
		r := Piece(s)
		tell(t, r.Diagnostics)
		in := r.Piece.Inputs[0]
		l, _ := in.Value.Length()
		e, _ := r.Ledger.Entry(in.Entry)
		if e.Origin != in.Origin {
			t.Errorf("origins %s and %s", e.Origin, in.Origin)
		}
		return fmt.Sprint(l.Millimetres(), " ", in.Origin, " ", partOf(t, r.Piece, "side.right").Extent[0].High.Nm.Millimetres())
	}
	if got := wide(src); got != "250 choice 250" {
		t.Error(got)
	}
	src.Inputs = map[string]string{"wide": "350"}
	if got := wide(src); got != "350 input 350" {
		t.Error(got)
	}
	src.Inputs, src.Choices = nil, document.Source{}
	if got := wide(src); got != "300 document 300" {
		t.Error(got)
	}
}

// TestSameTwice evaluates twice: the same piece, ledger and diagnostics.
func TestSameTwice(t *testing.T) {
	for range 3 {
		a, b := Piece(example(t)), Piece(example(t))
		for _, pair := range [][2]any{{a.Piece, b.Piece}, {a.Ledger, b.Ledger}, {a.Diagnostics, b.Diagnostics}} {
			x, errX := json.Marshal(pair[0])
			y, errY := json.Marshal(pair[1])
			if errX != nil || errY != nil || !bytes.Equal(x, y) {
				t.Fatalf("two of %T: %v %v", pair[0], errX, errY)
			}
		}
	}
}

// FuzzPiece evaluates anything: it ends, does not panic, the ledger's law holds,
// and the work stays within its bounds.
func FuzzPiece(f *testing.F) {
	f.Add([]byte(boxText(f)))
	f.Add(example(f).Document.Text)
	for _, c := range codesOf(f) {
		if !c.made {
			f.Add(c.sourcesOf(f).Document.Text)
		}
	}
	limits := Limits{Formulas: 20_000, Parts: 500, Chain: 200, Pairs: 20_000, Faults: 50}
	f.Fuzz(func(t *testing.T, doc []byte) {
		if len(doc) > 1<<14 {
			return
		}
		r := Piece(Sources{Document: document.Source{Name: "x", Text: doc}, Limits: limits})
		if w := r.Work; w.Parts > limits.Parts+1 && !has(r.Diagnostics, CodeTooManyParts) || w.Formulas > limits.Formulas+1 || w.Chain > limits.Chain {
			t.Fatalf("work %+v", w)
		}
		for _, d := range r.Ledger.Verify() {
			t.Fatal(d)
		}
		for _, p := range r.Piece.Parts {
			for axis := range 3 {
				if p.Extent[axis].Size() <= 0 {
					t.Fatalf("%s has no size along %d", p.Address, axis)
				}
			}
		}
	})
}

// FuzzRecord holds anything as a record against the box.
func FuzzRecord(f *testing.F) {
	f.Add([]byte(`{"address":"shelf","cut":["280","200","14"],"of":"x"}` + "\n"))
	f.Add([]byte(`{"address":"side.left","reading":"thickness","value":"17.6 mm","of":"x"}` + "\n"))
	box := boxText(f)
	planned := Piece(Sources{Document: text("x", box)})
	f.Fuzz(func(t *testing.T, lines []byte) {
		entries, _, err := record.Read(lines)
		if err != nil || len(entries) > 50 {
			return
		}
		for i := range entries {
			if of, ok := planned.Fingerprint(entries[i].Address, entries[i]); ok {
				entries[i].Fingerprint = of // as if taken from what is there
			}
		}
		r := Piece(Sources{Document: text("x", box), Record: entries})
		for _, d := range r.Ledger.Verify() {
			t.Fatal(d)
		}
	})
}
