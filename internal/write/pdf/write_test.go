package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/outside"
	"scantling/internal/page"
	"scantling/internal/typeset"
)

func write(t testing.TB, doc page.Document, o Options) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, doc, o); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func demoDocument(t testing.TB, p page.Paper) page.Document {
	t.Helper()
	doc, notes := typeset.Set(demo(p))
	for _, n := range notes {
		t.Errorf("%v: %v", p, n)
	}
	return doc
}

// tool returns the path of an outside program; without it the test is left out.
func tool(t *testing.T, name, from string) string {
	t.Helper()
	return outside.Program(t, "PDF read by "+name+" of "+from, name)
}

// demoFile writes the demonstration booklet to a file; SCANTLING_LOOK names a
// folder to keep it in.
func demoFile(t *testing.T, p page.Paper) string {
	t.Helper()
	dir := os.Getenv("SCANTLING_LOOK")
	if dir == "" {
		dir = t.TempDir()
	}
	path := filepath.Join(dir, "demo-"+p.String()+".pdf")
	if err := os.WriteFile(path, write(t, demoDocument(t, p), Options{}), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestDemoKeepsLaws(t *testing.T) {
	for _, paper := range page.Papers {
		s, _ := demo(paper)
		doc := demoDocument(t, paper)
		for _, b := range page.Dangling(doc) {
			t.Error(b.What)
		}
		for i, p := range doc.Pages {
			for _, b := range append(page.Outside(p, s.Margins), page.Overlaps(p)...) {
				t.Errorf("%v page %d: %s", paper, i+1, b.What)
			}
		}
	}
}

func TestQpdfCheck(t *testing.T) {
	qpdf := tool(t, "qpdf", "qpdf")
	for _, p := range page.Papers {
		if out, err := exec.Command(qpdf, "--check", demoFile(t, p)).CombinedOutput(); err != nil || strings.Contains(string(out), "WARNING") {
			t.Errorf("%v: %v\n%s", p, err, out)
		}
	}
}

// TestStructure reads the structure tree back with poppler.
func TestStructure(t *testing.T) {
	pdfinfo := tool(t, "pdfinfo", "poppler-utils")
	path := demoFile(t, page.A4)
	raw, err := exec.Command(pdfinfo, "-struct-text", path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, raw)
	}
	out := string(raw)
	if strings.Contains(out, "rror") {
		t.Errorf("poppler complains:\n%s", out)
	}
	rows, cells := 0, 0
	doc := demoDocument(t, page.A4)
	for _, n := range doc.Tree {
		switch n.Role {
		case page.RoleRow:
			rows++
		case page.RoleCell:
			cells++
		}
	}
	for what, want := range map[string]int{
		"H1 (block)": 3, "H2 (block)": 1, "H3 (block)": 1, "Table (block)": 2, "Figure:": 2, "Caption": 3,
		"L (block)": 3, "Scope /Row": 63, "/ColSpan 7": 3, "TR\n": rows, "TD": cells,
	} {
		if got := strings.Count(out, what); got != want {
			t.Errorf("%q stands %d times in the structure, want %d", what, got, want)
		}
	}
	for _, want := range []string{`"Set the fence 5 "`, `"3/8"`, `"Drawer side, left "`, `"the set-up card"`, "Object"} {
		if !strings.Contains(out, want) {
			t.Errorf("structure has no %s", want)
		}
	}
	if strings.Contains(out, "Revision B") || strings.Contains(out, "page 1 of") {
		t.Error("the foot of the page is heard")
	}
	info, err := exec.Command(pdfinfo, path).Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Tagged:          yes", "Title:           Needle chest", "PDF version:     1.7", "Page size:       595.276 x 841.89 pts (A4)"} {
		if !strings.Contains(string(info), want) {
			t.Errorf("properties lack %q:\n%s", want, info)
		}
	}
}

// TestTextBack reads the text back with poppler.
func TestTextBack(t *testing.T) {
	pdftotext := tool(t, "pdftotext", "poppler-utils")
	out, err := exec.Command(pdftotext, demoFile(t, page.A4), "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(string(out)), " ")
	for _, want := range []string{
		"Set the fence 5 3/8 in (136.5) from the cutter; the round-nose cutter is ⌀ 6.35 and sinks 1/8 in. Turn the sides face down → the groove",
		"63/64 in", "the set-up card, and tick ☐ when done ✓", "350 × 80 × 12", "page 2 of 4", "push block: the part is 80 wide",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("text lacks %q", want)
		}
	}
}

// golden is the SHA-256 of the demonstration on A4, uncompressed. It is the same
// on every machine, wasm included. Look at the pages before you change it
// (SCANTLING_LOOK=dir go test).
const golden = "01323c6ab9704fa380da0d8f84edc689d9ddaa699369b2380ff1595cc797dab3"

func TestGolden(t *testing.T) {
	a := write(t, demoDocument(t, page.A4), Options{Plain: true})
	b := write(t, demoDocument(t, page.A4), Options{Plain: true})
	if !bytes.Equal(a, b) {
		t.Error("the same document gave two files")
	}
	if got := fmt.Sprintf("%x", sha256.Sum256(a)); got != golden {
		t.Errorf("SHA-256 of the demonstration is %s, want %s", got, golden)
	}
	other := demoDocument(t, page.A4)
	other.Title += "!"
	if id(t, a) == id(t, write(t, other, Options{Plain: true})) {
		t.Error("another document has the same identifier")
	}
}

func id(t *testing.T, file []byte) string {
	t.Helper()
	_, after, ok := strings.Cut(string(file), "/ID [<")
	if !ok {
		t.Fatal("no identifier")
	}
	return after[:32]
}

func TestRefuses(t *testing.T) {
	good := func() page.Document {
		d := page.Document{Tree: page.NewTree(), Pages: []page.Page{{Size: page.A4.Size()}}}
		p := d.Tree.Add(page.Node{Role: page.RoleParagraph, Parent: page.Root})
		d.Pages[0].Add("a", p, page.Text{At: page.Point{X: 20, Y: 20}, Size: 4, String: "text"})
		return d
	}
	if err := Write(io.Discard, good(), Options{}); err != nil {
		t.Fatal(err)
	}
	for want, spoil := range map[string]func(*page.Document){
		"no pages":  func(d *page.Document) { d.Pages = nil },
		"page 1 is": func(d *page.Document) { d.Pages[0].Size.Width = math.NaN() },
		"node 77":   func(d *page.Document) { d.Pages[0].Items[0].Node = 77 },
		"no number": func(d *page.Document) {
			d.Pages[0].Items[0].Shape = page.Text{At: page.Point{X: math.Inf(1)}, Size: 4, String: "x"}
		},
		"no shape":      func(d *page.Document) { d.Pages[0].Items[0].Shape = nil },
		"as its parent": func(d *page.Document) { d.Tree[2].Parent = 2 },
	} {
		d := good()
		spoil(&d)
		if err := Write(io.Discard, d, Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one with %q", err, want)
		}
	}
	full := errors.New("disk full")
	if err := Write(failing{full}, good(), Options{}); !errors.Is(err, full) {
		t.Errorf("error %v, want that of the writer", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// TestOddShapes writes what is legal but odd: empty paths, blank texts, links to
// nowhere, missing characters; qpdf must find no fault.
func TestOddShapes(t *testing.T) {
	d := page.Document{Title: "(odd) \\ ⌀", Language: "en", Tree: page.NewTree(), Pages: []page.Page{{Size: page.Letter.Size()}, {Size: page.Letter.Size().Turned()}}}
	p := d.Tree.Add(page.Node{Role: page.RoleParagraph, Parent: page.Root})
	d.Tree.Add(page.Node{Role: page.RoleTable, Parent: page.Root})
	for _, s := range []page.Shape{
		page.Stroke{}, page.Fill{}, page.Hatch{}, page.Text{}, page.Text{Size: 4, At: page.Point{X: 50, Y: 50}, String: "   "},
		page.Text{Size: 4, At: page.Point{X: 50, Y: 60}, String: "漢字 \U0001F6E0 \x00 3⁄8", Turn: 33},
		page.Link{To: "nowhere"}, page.Link{To: "https://example.org/(a)"}, page.Link{To: "here", Area: page.NewBox(1, 1, 5, 5), Says: "here"},
		page.Stroke{Path: page.Path{{Verb: page.LineTo}}}, page.Stroke{Path: page.Arc(page.Point{X: 40, Y: 40}, 9, 10, -250).Close(), Dash: page.Centre, Width: page.Thin},
	} {
		d.Pages[0].Add("", p, s)
		d.Pages[1].Add("", page.Artifact, s)
	}
	d.Anchors = []page.Anchor{{Name: "here", Page: 1, Y: 40}, {Name: "nowhere", Page: 9}}
	d.Outline = []page.Heading{{Title: "deep first", Level: 3}, {Title: "then top", Level: 1, Page: 1}, {Title: "off", Page: 5}}
	file := write(t, d, Options{})
	path := filepath.Join(t.TempDir(), "odd.pdf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(tool(t, "qpdf", "qpdf"), "--check", path).CombinedOutput(); err != nil || strings.Contains(string(out), "WARNING") {
		t.Errorf("%v\n%s", err, out)
	}
	if n := strings.Count(string(write(t, d, Options{Plain: true})), "/Subtype /Link"); n != 4 {
		t.Errorf("%d links written, want those 2 that lead somewhere on each page", n)
	}
}

func TestNumber(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 1: "1", -0.0004: "0", 0.5: "0.5", 12.3456: "12.346", -2.5: "-2.5", 100: "100", 1e6: "1000000"} {
		if got := number(v); got != want {
			t.Errorf("number(%v) = %q, want %q", v, got, want)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	s, blocks := demo(page.A4)
	var many []typeset.Block
	for range 30 {
		many = append(many, blocks...)
	}
	doc, _ := typeset.Set(s, many)
	size := 0
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, doc, Options{}); err != nil {
			b.Fatal(err)
		}
		size = out.Len()
	}
	b.ReportMetric(float64(len(doc.Pages)*b.N)/b.Elapsed().Seconds(), "pages/s")
	b.ReportMetric(float64(size)/float64(len(doc.Pages)), "bytes/page")
}
