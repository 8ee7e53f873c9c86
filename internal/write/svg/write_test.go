package svg

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/font"
	"scantling/internal/page"
)

func sample() page.Drawing {
	d := page.Drawing{Name: "Side <B2>", Alt: "Side with a groove & a hole."}
	at := func(x, y float64) page.Point { return page.Point{X: x, Y: y} }
	outline := page.From(at(0, 0)).Line(at(60, 0)).Arc(at(70, 10), at(60, 10), false).Line(at(70, 30)).Line(at(0, 30)).Close()
	d.Add("drawer[1].side", page.Fill{Path: append(outline, page.Circle(at(20, 15), 6)...), Colour: page.Straw})
	d.Add("drawer[1].side", page.Hatch{Path: append(outline, page.Circle(at(20, 15), 6)...), Angle: -45, Pitch: 2, Width: page.W018})
	d.Add("drawer[1].side", page.Stroke{Path: outline, Width: page.Thick})
	d.Add(`tray.hole["4.0 a"]`, page.Stroke{Path: page.Circle(at(20, 15), 6), Width: page.Thick})
	d.Add("", page.Stroke{Path: page.Line(at(10, 15), at(30, 15)), Width: page.Thin, Dash: page.Centre})
	d.Add("", page.Stroke{Path: page.Arc(at(50, 15), 8, 20, -290), Width: page.Thin, Dash: page.Hidden, Colour: page.Error, Round: true})
	d.Add("", page.Text{At: at(35, 38), Size: 4, Align: page.Middle, String: "2 3⁄4 in (⌀ 69.9) → B2"})
	d.Add("", page.Text{At: at(-3, 15), Size: 4, Align: page.Middle, Turn: -90, String: "1 3⁄16"})
	d.Add("", page.Text{At: at(70, 45), Size: 5, Align: page.End, Weight: font.Bold, Colour: page.Act, String: "A & B < C"})
	d.Add("", page.Link{Area: page.NewBox(0, 40, 10, 5), To: "#parts", Says: "parts"})
	d.Box = page.NewBox(-8, -3, 84, 52)
	return d
}

// golden is the SHA-256 of the sample; look at it before you change it
// (SCANTLING_LOOK=dir go test).
const golden = "cc9af618483eeadb5a0d9ef5cf7549d81d05d7ead61e06160a1e828adb247aa0"

func TestGolden(t *testing.T) {
	a := Drawing(sample(), Options{})
	if dir := os.Getenv("SCANTLING_LOOK"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, "sample.svg"), a, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a, Drawing(sample(), Options{})) {
		t.Error("the same drawing gave two files")
	}
	if got := fmt.Sprintf("%x", sha256.Sum256(a)); got != golden {
		t.Errorf("SHA-256 of the sample is %s, want %s", got, golden)
	}
}

// wellFormed reads the element with the standard library's XML reader.
func wellFormed(t *testing.T, data []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Fatalf("%v in\n%s", err, data)
		}
	}
}

func TestDrawing(t *testing.T) {
	data := Drawing(sample(), Options{})
	wellFormed(t, data)
	s := string(data)
	for _, want := range []string{
		`width="84mm" height="52mm" viewBox="-8 -3 84 52"`, "<title>Side &lt;B2&gt;</title>", "<desc>Side with a groove &amp; a hole.</desc>",
		`data-address="drawer[1].side"`, `data-address="tray.hole[&quot;4.0 a&quot;]"`,
		"A10 10 0 0 1 70 10", "A6 6 0 0 1", `stroke-dasharray="4 0.75 0.125 0.75"`, ".f-fill-straw{fill:#EBCB78}", ".w50{stroke-width:0.5}",
		`aria-label="2 3/4 in (⌀ 69.9) → B2"`, "A &amp; B &lt; C", `text-anchor="end"`, "rotate(-90 ", `href="#parts"`,
	} {
		if !strings.Contains(s, want) {
			t.Errorf("no %s", want)
		}
	}
	if strings.Contains(s, "var(") {
		t.Error("a file by itself must not need variables")
	}
	looks := string(Drawing(sample(), Options{Looks: true}))
	if !strings.Contains(looks, ".s-ink{fill:none;stroke:var(--ink,#16191C)}") || strings.Contains(looks, "mm\"") {
		t.Error("an element for a page takes its colours and its size from the page")
	}
}

// TestArcs walks the written arcs and checks that every half lies on its circle
// and turns the right way.
func TestArcs(t *testing.T) {
	c := page.Point{X: 10, Y: 20}
	for _, a := range []struct{ from, to float64 }{{0, 90}, {0, -90}, {30, 300}, {30, -300}, {0, 180}, {10, 369}} {
		p := page.Arc(c, 7, a.from, a.to)
		d := pathData(p)
		arcs := strings.Split(d, "A")[1:]
		if want := 1 + int(math.Abs(a.to-a.from)/180.001); len(arcs) != want {
			t.Errorf("from %v to %v: %d arcs, want %d", a.from, a.to, len(arcs), want)
		}
		for _, arc := range arcs {
			var rx, ry, x, y float64
			var turn, large, sweep int
			if _, err := fmt.Sscan(arc, &rx, &ry, &turn, &large, &sweep, &x, &y); err != nil {
				t.Fatal(err)
			}
			if rx != 7 || ry != 7 || large != 0 || (sweep == 1) != (a.to > a.from) {
				t.Errorf("from %v to %v: arc %q", a.from, a.to, arc)
			}
			if r := (page.Point{X: x, Y: y}).Sub(c).Norm(); math.Abs(r-7) > 0.002 {
				t.Errorf("from %v to %v: end %.4f from the centre", a.from, a.to, r)
			}
		}
	}
	if d := pathData(page.From(page.Point{X: 17, Y: 20}).Arc(page.Point{X: 17, Y: 20}, c, false)); strings.Count(d, "A") != 2 {
		t.Errorf("a whole circle in one arc is written as %q", d)
	}
}

func FuzzText(f *testing.F) {
	f.Add(`a"b<c>&'d`, `x["<`)
	f.Add("\x00\x1f\ufffe", "\xff")
	f.Fuzz(func(t *testing.T, text, address string) {
		d := page.Drawing{Name: text, Alt: address}
		d.Add(address, page.Text{Size: 4, String: text, At: page.Point{X: math.NaN()}})
		d.Add(address, page.Link{To: "#" + text, Says: address})
		d.Box = page.NewBox(0, 0, 10, 10)
		wellFormed(t, Drawing(d, Options{}))
	})
}

func TestPage(t *testing.T) {
	p := page.Page{Size: page.A4.Size()}
	p.Add("", page.Root, page.Text{At: page.Point{X: 20, Y: 20}, Size: 4, String: "text"})
	data := Page(p, "Page 1", Options{})
	wellFormed(t, data)
	if s := string(data); !strings.Contains(s, `width="210mm" height="297mm"`) || !strings.Contains(s, "#FFFFFF") {
		t.Errorf("a page lacks its paper:\n%s", s)
	}
}

func BenchmarkDrawing(b *testing.B) {
	d := sample()
	for b.Loop() {
		Drawing(d, Options{})
	}
}
