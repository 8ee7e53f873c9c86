package typeset

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"scantling/internal/font"
	"scantling/internal/page"
)

// laws checks what Set promises for every input.
func laws(t *testing.T, s Settings, doc page.Document) {
	t.Helper()
	s = s.repaired()
	for i, p := range doc.Pages {
		for _, b := range page.Outside(p, s.Margins) {
			t.Errorf("page %d: %s", i+1, b.What)
		}
		for _, b := range page.Overlaps(p) {
			t.Errorf("page %d: %s", i+1, b.What)
		}
		for k, it := range p.Items {
			if !doc.Tree.Valid(it.Node) {
				t.Errorf("page %d: item %d has node %d of %d", i+1, k, it.Node, len(doc.Tree))
			}
		}
		if t.Failed() {
			return
		}
	}
}

// heard returns the text of all pages that is not an artifact, in order.
func heard(doc page.Document) string {
	var b strings.Builder
	for _, p := range doc.Pages {
		for _, it := range p.Items {
			if text, ok := it.Shape.(page.Text); ok && it.Node != page.Artifact {
				b.WriteString(text.String + " ")
			}
		}
	}
	return b.String()
}

func words(s string) []string { return strings.Fields(s) }

// random makes blocks of every kind from a seed.
type random struct {
	*rand.Rand
	said []string // every word that was put in, in order
}

func (r *random) text(most int) string {
	var b []string
	for range 1 + r.IntN(most) {
		w := []string{"fence", "set-up", "5 3⁄8", "⌀", "12.7", "a", "Drawer", "☐", "groove,"}[r.IntN(9)]
		b = append(b, w)
	}
	return strings.Join(b, " ")
}

func (r *random) say(s string) []Span {
	r.said = append(r.said, words(s)...)
	k := r.IntN(len(words(s)) + 1)
	return []Span{{Text: strings.Join(words(s)[:k], " ")}, {Text: " " + strings.Join(words(s)[k:], " "), Bold: true}}
}

func (r *random) blocks(n, depth int) (out []Block) {
	for range n {
		switch k := r.IntN(9); {
		case k == 0:
			s := r.text(6)
			r.said = append(r.said, words(s)...)
			out = append(out, Heading{Level: 1 + r.IntN(3), Text: s, NewPage: r.IntN(6) == 0})
		case k == 1 && depth < 3:
			l := List{}
			for i := range 1 + r.IntN(4) {
				r.said = append(r.said, fmt.Sprintf("%d.", i))
				l.Entries = append(l.Entries, Entry{Label: fmt.Sprintf("%d.", i), Blocks: r.blocks(1+r.IntN(3), depth+1), Together: r.IntN(2) == 0})
			}
			out = append(out, l)
		case k == 2:
			out = append(out, r.table())
		case k == 3 && depth < 3:
			s := r.text(4)
			r.said = append(r.said, words(s)...)
			out = append(out, Box{Title: s, Bar: page.Warn, Tint: r.IntN(2) == 0, Frame: r.IntN(2) == 0, Blocks: r.blocks(1+r.IntN(3), depth+1)})
		case k == 4 && depth < 3:
			out = append(out, Together{r.blocks(1+r.IntN(3), depth+1)})
		case k == 5:
			d := page.Drawing{Name: "d", Items: []page.Item{{Shape: page.Fill{Path: page.Rectangle(page.NewBox(-5, 7, 10+r.Float64()*300, 5+r.Float64()*400)), Colour: page.Sky}}}}
			out = append(out, Figure{Drawing: d, Caption: r.say(r.text(8)), Align: page.Align(r.IntN(3))})
		case k == 6 && depth < 3:
			left := r.blocks(1+r.IntN(2), depth+1)
			out = append(out, Beside{Left: left, Right: r.blocks(1+r.IntN(2), depth+1), Share: r.Float64()})
		default:
			out = append(out, Paragraph{Spans: r.say(r.text(120)), Manner: Manner(r.IntN(3)), Align: page.Align(r.IntN(3))})
		}
	}
	return out
}

func (r *random) table() Table {
	t := Table{Caption: r.say(r.text(5)), Full: r.IntN(2) == 0, Manner: Manner(r.IntN(2))}
	n := 1 + r.IntN(6)
	cells := func() (c []Cell) {
		for range n {
			c = append(c, Cell{Spans: r.say(r.text(9)), Fill: page.Colour(r.IntN(2)) * page.Straw})
		}
		return c
	}
	for range n {
		c := Column{Align: page.Align(r.IntN(3))}
		switch r.IntN(3) {
		case 0:
			c.Width = r.Float64() * 80
		case 1:
			c.Share = r.Float64()
		}
		t.Columns = append(t.Columns, c)
	}
	t.Header = cells()
	for range r.IntN(30) {
		t.Rows = append(t.Rows, Row{Cells: cells(), Group: r.IntN(8) == 0})
	}
	return t
}

// TestRandomDocuments checks, for random blocks of every kind, the promises of
// the package and that every word put in is on the pages, in reading order per
// block (as a multiset, since columns of a table row are read side by side).
func TestRandomDocuments(t *testing.T) {
	seed := rand.Uint64()
	for i := range 24 {
		r := &random{Rand: rand.New(rand.NewPCG(seed, uint64(i)))}
		s := Default(page.Papers[i%2])
		s.Columns = 1 + i%3/2
		s.Turned = i%5 == 0
		s.Size = 2.4 + 3*r.Float64()
		s.Running = Running{HeadLeft: "{part}", HeadRight: strings.Repeat("long ", i), FootRight: "{page}/{pages}"}
		blocks := r.blocks(12, 0)
		doc, notes := Set(s, blocks)
		laws(t, s, doc)
		// Letter by letter, as narrow columns break words.
		got, want := letters(heard(doc)), letters(strings.Join(r.said, " "))
		dropped := slices.ContainsFunc(notes, func(n Note) bool { return n.Kind == Dropped })
		if !dropped && !maps.Equal(got, want) {
			t.Errorf("letters put in %v, came out %v; notes %v", want, got, notes)
		}
		if t.Failed() {
			t.Fatalf("seed %d, document %d", seed, i)
		}
	}
}

func letters(s string) map[rune]int {
	m := map[rune]int{}
	for _, r := range s {
		if r != ' ' {
			m[r]++
		}
	}
	return m
}

func TestSameTwice(t *testing.T) {
	r := &random{Rand: rand.New(rand.NewPCG(7, 7))}
	blocks := r.blocks(20, 0)
	a, _ := Set(Default(page.A4), blocks)
	b, _ := Set(Default(page.A4), blocks)
	if !reflect.DeepEqual(a, b) {
		t.Error("the same blocks gave two documents")
	}
}

// TestReadingOrder checks that a paragraph over several pages is heard word for
// word in order.
func TestReadingOrder(t *testing.T) {
	var want []string
	for i := range 3000 {
		want = append(want, fmt.Sprintf("w%d", i))
	}
	doc, _ := Set(Default(page.Letter), []Block{Paragraph{Spans: Plain(strings.Join(want, " "))}})
	if len(doc.Pages) < 3 {
		t.Fatalf("%d pages", len(doc.Pages))
	}
	if got := words(heard(doc)); !slices.Equal(got, want) {
		t.Errorf("%d words heard, want %d in order", len(got), len(want))
	}
}

func TestLineBreaking(t *testing.T) {
	size := 4.0
	st := style{size: size}
	width := page.TextWidth(font.Regular, size, "Set the fence to 5 3⁄8")
	for _, c := range []struct {
		name  string
		spans []Span
		width float64
		want  []string
	}{
		{"fits", Plain("Set the fence to 5 3⁄8"), width + 0.01, []string{"Set the fence to 5 3⁄8"}},
		{"whole number and fraction stay together", Plain("Set the fence to 5 3⁄8"), width - 0.01, []string{"Set the fence to", "5 3⁄8"}},
		{"hyphen breaks", Plain("round-nose"), page.TextWidth(font.Regular, size, "round-nos"), []string{"round-", "nose"}},
		{"minus does not", Plain("a -5"), page.TextWidth(font.Regular, size, "a -"), []string{"a", "-5"}},
		{"a size stays together", Plain("is 350 × 80"), page.TextWidth(font.Regular, size, "is 350 × 8"), []string{"is", "350 × 80"}},
		{"line break", Plain("one\n\ntwo"), 100, []string{"one", "", "two"}},
		{"no-break space", Plain("12\u00A0mm"), page.TextWidth(font.Regular, size, "12 m"), []string{"12\u00A0m", "m"}},
		{"long word", Plain("aaaaaaaa"), page.TextWidth(font.Regular, size, "aaaa") + 0.01, []string{"aaaa", "aaaa"}},
		{"parts of one word stay together", []Span{{Text: "one two"}, {Text: "three", Bold: true}}, page.TextWidth(font.Regular, size, "one twoth"), []string{"one", "twothree"}},
		{"spaces fold", Plain("  a   b  "), 100, []string{"a b"}},
	} {
		var got []string
		for _, l := range breakLines(c.spans, st, c.width) {
			s := ""
			for _, r := range l.runs {
				s += r.text
			}
			got = append(got, s)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// longTable is a table over several pages.
func longTable(rows int) Table {
	t := Table{Columns: []Column{{}, {Share: 1}}, Header: Cells("Mark", "Part"), Address: "list"}
	for i := range rows {
		t.Rows = append(t.Rows, Row{Cells: Cells(fmt.Sprintf("A%d", i+1), "Drawer side"), Address: fmt.Sprintf("part[%d]", i+1)})
	}
	return t
}

func TestTableOverPages(t *testing.T) {
	doc, notes := Set(Default(page.A4), []Block{longTable(120)})
	if len(notes) != 0 {
		t.Errorf("notes %v", notes)
	}
	if len(doc.Pages) < 3 {
		t.Fatalf("%d pages", len(doc.Pages))
	}
	for i, p := range doc.Pages {
		heads, artifacts := 0, 0
		for _, it := range p.Items {
			if text, ok := it.Shape.(page.Text); ok && text.String == "Mark" {
				heads++
				if it.Node == page.Artifact {
					artifacts++
				} else if r := doc.Tree[it.Node].Role; r != page.RoleHeaderCell {
					t.Errorf("header cell has role %d", r)
				}
			}
		}
		if heads != 1 || artifacts != min(i, 1) {
			t.Errorf("page %d: header %d times, %d as artifact", i+1, heads, artifacts)
		}
	}
	tables, rows, cells := 0, 0, 0
	for _, n := range doc.Tree {
		switch n.Role {
		case page.RoleTable:
			tables++
		case page.RoleRow:
			rows++
		case page.RoleCell:
			cells++
		}
	}
	if tables != 1 || rows != 121 || cells != 240 {
		t.Errorf("%d tables, %d rows, %d cells in the tree", tables, rows, cells)
	}
}

func TestKeeping(t *testing.T) {
	s := Default(page.A4)
	_, height := s.repaired().column()
	filler := func(h float64) Block { return Figure{Drawing: page.Drawing{Name: "f", Box: page.NewBox(0, 0, 10, h)}} }
	pageOf := func(doc page.Document, word string) int {
		for i, p := range doc.Pages {
			for _, it := range p.Items {
				if text, ok := it.Shape.(page.Text); ok && strings.Contains(text.String, word) {
					return i
				}
			}
		}
		return -1
	}
	for room := 5.0; room < 60; room += 3 {
		doc, _ := Set(s, []Block{filler(height - room), Heading{Level: 2, Text: "Top"}, Paragraph{Spans: Plain(strings.Repeat("words and more words ", 30))}})
		lines := map[int]int{}
		for i, p := range doc.Pages {
			for _, it := range p.Items {
				if text, ok := it.Shape.(page.Text); ok && strings.Contains(text.String, "words") {
					lines[i]++
				}
			}
		}
		if pageOf(doc, "Top") != pageOf(doc, "words") {
			t.Errorf("room %v: heading on page %d, its text on %d", room, pageOf(doc, "Top")+1, pageOf(doc, "words")+1)
		}
		for i, n := range lines {
			if n == 1 {
				t.Errorf("room %v: a single line on page %d", room, i+1)
			}
		}
		doc, _ = Set(s, []Block{filler(height - room), Box{Title: "first", Blocks: []Block{Paragraph{Spans: Plain("one")}, Paragraph{Spans: Plain("last")}}}})
		if pageOf(doc, "first") != pageOf(doc, "last") {
			t.Errorf("room %v: a box is parted", room)
		}
	}
}

func TestNotes(t *testing.T) {
	huge := page.Drawing{Name: "huge", Box: page.NewBox(0, 0, 500, 100)}
	wide := Table{Address: "wide", Columns: []Column{{Width: 100}, {Width: 100}}, Rows: []Row{{Cells: Cells("a", "b")}}}
	tall := Table{Address: "tall", Columns: []Column{{Width: 20}}, Rows: []Row{{Address: "r", Cells: Cells(strings.Repeat("word ", 900))}}}
	deep := Block(Paragraph{Spans: Plain("deep")})
	for range 10 {
		deep = Together{[]Block{deep}}
	}
	for _, c := range []struct {
		block Block
		want  NoteKind
	}{
		{Figure{Drawing: huge}, Shrunk}, {wide, Squeezed}, {tall, RowSplit}, {deep, TooDeep}, {Figure{}, BadDrawing},
	} {
		s := Default(page.A4)
		doc, notes := Set(s, []Block{c.block})
		laws(t, s, doc)
		if len(notes) == 0 || notes[0].Kind != c.want {
			t.Errorf("%T: notes %v, want kind %d", c.block, notes, c.want)
		}
	}
}

func TestContents(t *testing.T) {
	blocks := []Block{Contents{}}
	for i := range 30 {
		blocks = append(blocks, Heading{Level: 1 + i%3, Text: fmt.Sprintf("Part %d", i), NewPage: i%3 == 0}, Paragraph{Spans: Plain("text")})
	}
	doc, _ := Set(Default(page.A4), blocks)
	at := map[string]int{}
	for _, h := range doc.Outline {
		at[h.Title] = h.Page + 1
	}
	if len(at) != 30 {
		t.Fatalf("outline has %d lines", len(at))
	}
	listed := 0
	var name string
	for _, it := range doc.Pages[0].Items {
		text, ok := it.Shape.(page.Text)
		if !ok || it.Node == page.Artifact {
			continue
		}
		if strings.HasPrefix(text.String, "Part") {
			name = text.String
		} else if name != "" {
			if want := fmt.Sprint(at[name]); text.String != want {
				t.Errorf("%s on page %s, want %s", name, text.String, want)
			}
			listed++
			name = ""
		}
	}
	if listed != 20 {
		t.Errorf("%d headings listed, want those 20 of two levels", listed)
	}
}

func TestRunningPart(t *testing.T) {
	s := Default(page.A4)
	s.Running = Running{HeadLeft: "{part}|{page}/{pages}", Skip: 1}
	text := Paragraph{Spans: Plain(strings.Repeat("words ", 900))}
	doc, _ := Set(s, []Block{
		Paragraph{Spans: Plain("cover")}, Heading{Level: 1, Text: "A", NewPage: true}, text,
		Heading{Level: 1, Text: "B"}, text, Heading{Level: 1, Text: "C", NewPage: true},
	})
	var got []string
	for _, p := range doc.Pages {
		head := ""
		for _, it := range p.Items {
			if text, ok := it.Shape.(page.Text); ok && it.Node == page.Artifact {
				head = text.String
			}
		}
		got = append(got, head)
	}
	if want := []string{"", "A|2/5", "A|3/5", "B|4/5", "C|5/5"}; !slices.Equal(got, want) {
		t.Errorf("heads %q, want %q", got, want)
	}
}

// FuzzText puts any text into every place that takes text.
func FuzzText(f *testing.F) {
	for _, s := range []string{"5 3⁄8 in", strings.Repeat("W", 400), "a\nb\r\n\tc", "\x00\xff漢字", "—-–-", " ", strings.Repeat("⚠", 60), "1⁄2⁄3⁄4"} {
		f.Add(s, uint8(0))
		f.Add(s, uint8(255))
	}
	f.Fuzz(func(t *testing.T, text string, how uint8) {
		if len(text) > 4000 {
			return
		}
		s := Default(page.Papers[how&1])
		s.Columns, s.Turned = 1+int(how>>1&1), how>>2&1 == 1
		s.Size = 2.5 + float64(how>>3&3)
		s.Title, s.Running = text, Running{HeadLeft: text, HeadRight: text, FootLeft: text, FootRight: text}
		spans := []Span{{Text: text, Bold: how>>5&1 == 1, Link: "x"}, {Text: text}}
		columns := []Column{{}, {Share: 1}, {Width: float64(how)}}
		doc, _ := Set(s, []Block{
			Contents{}, Heading{Level: int(how & 3), Text: text}, Paragraph{Spans: spans},
			List{Entries: []Entry{{Label: text, Blocks: []Block{Paragraph{Spans: spans}}}}},
			Box{Title: text, Frame: true, Blocks: []Block{Paragraph{Spans: spans}}},
			Table{Caption: spans, Columns: columns, Header: []Cell{{Spans: spans}, {Spans: spans, Columns: 2}}, Rows: []Row{{Cells: Cells(text, text, text, text)}}},
			Beside{Left: []Block{Paragraph{Spans: spans}}, Right: []Block{Heading{Text: text}}},
		})
		laws(t, s, doc)
	})
}

func BenchmarkSet(b *testing.B) {
	blocks := []Block{}
	for range 10 {
		blocks = append(blocks, Heading{Level: 1, Text: "Part", NewPage: true}, longTable(100), Paragraph{Spans: Plain(strings.Repeat("Set the fence 5 3⁄8 in from the cutter. ", 60))})
	}
	pages := 0
	for b.Loop() {
		doc, _ := Set(Default(page.A4), blocks)
		pages += len(doc.Pages)
	}
	b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
}
