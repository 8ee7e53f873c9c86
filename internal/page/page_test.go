package page

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/font"
)

func near(a, b, eps float64) bool { return math.Abs(a-b) <= eps }

func TestPathBoxes(t *testing.T) {
	for _, c := range []struct {
		name string
		path Path
		want Box
	}{
		{"line", Line(Point{1, 2}, Point{-3, 4}), Box{Point{-3, 2}, Point{1, 4}}},
		{"circle", Circle(Point{10, 20}, 5), NewBox(5, 15, 10, 10)},
		{"quarter clockwise from X is below", Arc(Point{}, 10, 0, 90), NewBox(0, 0, 10, 10)},
		{"quarter anticlockwise is above", Arc(Point{}, 10, 0, -90), NewBox(0, -10, 10, 10)},
		{"three quarters", Arc(Point{}, 10, 0, 270), NewBox(-10, -10, 20, 20)},
		{"curve", From(Point{}).Curve(Point{0, 4}, Point{4, 4}, Point{4, 0}), NewBox(0, 0, 4, 3)},
	} {
		got := c.path.Box()
		if !got.Contains(c.want, 0.02) || !c.want.Contains(got, 0.02) {
			t.Errorf("%s: box %v, want %v", c.name, got, c.want)
		}
	}
}

// TestArcAsCurves checks Béziers against the circle that they stand for.
func TestArcAsCurves(t *testing.T) {
	seed := rand.Uint64()
	rng := rand.New(rand.NewPCG(seed, 1))
	for range 300 {
		c := Point{rng.Float64() * 100, rng.Float64() * 100}
		r := 1 + rng.Float64()*50
		from := rng.Float64() * 360
		to := from + (rng.Float64()*2-1)*359
		arc := Arc(c, r, from, to)
		curves := arc.Curves()
		for _, line := range curves.Flatten(0.001) {
			for _, p := range line {
				if d := p.Sub(c).Norm(); !near(d, r, 0.0003*r+1e-3) {
					t.Fatalf("seed %d: arc %v r %.2f from %.1f to %.1f: Bézier is %.4f from the centre", seed, c, r, from, to, d)
				}
			}
		}
		// Both ways of flattening run along the same side of the circle.
		a, b := length(arc), length(curves)
		if want := r * math.Abs(to-from) * math.Pi / 180; !near(a, want, 0.01*want+0.01) || !near(b, want, 0.01*want+0.01) {
			t.Fatalf("seed %d: length %.3f as arc, %.3f as Béziers, want %.3f", seed, a, b, want)
		}
	}
}

func length(s Path) (sum float64) {
	for _, line := range s.Flatten(0.001) {
		for i := range line[1:] {
			sum += line[i+1].Sub(line[i]).Norm()
		}
	}
	return sum
}

// TestHatchArea checks the law that the lines of a hatch, times its pitch, give
// the area, holes taken off.
func TestHatchArea(t *testing.T) {
	ring := append(Circle(Point{50, 50}, 30), Circle(Point{50, 50}, 12)...)
	for _, angle := range []float64{-45, 0, 30, 45, 90, 135} {
		h := Hatch{Path: ring, Angle: angle, Pitch: 0.5, Width: Thin}
		var sum float64
		for _, l := range h.Lines() {
			mid := l[0].Add(l[1]).Mul(0.5).Sub(Point{50, 50})
			if d := mid.Norm(); d > 30.1 || d < 11 {
				t.Errorf("angle %v: line with its middle %.2f from the centre", angle, d)
			}
			sum += l[1].Sub(l[0]).Norm()
		}
		if want := math.Pi * (900 - 144); !near(sum*0.5, want, 0.01*want) {
			t.Errorf("angle %v: hatch covers %.1f mm², want %.1f", angle, sum*0.5, want)
		}
	}
}

func TestHatchBounded(t *testing.T) {
	big := Hatch{Path: Rectangle(NewBox(0, 0, 1e6, 1e6)), Pitch: 0.001}
	if n := len(big.Lines()); n > 2*maxHatch {
		t.Errorf("%d lines, want at most %d", n, 2*maxHatch)
	}
	bad := Hatch{Path: Rectangle(NewBox(0, 0, math.NaN(), 1)), Pitch: 1, Angle: 30}
	if n := len(bad.Lines()); n != 0 {
		t.Errorf("hatch of no number gives %d lines", n)
	}
}

func TestTextPlace(t *testing.T) {
	base := Text{At: Point{100, 50}, Size: 10, String: "Hxp"}
	w := TextWidth(font.Regular, 10, "Hxp")
	for _, c := range []struct {
		align      Align
		turn       float64
		x, y, maxX float64
	}{
		{Start, 0, 100, 50, 100 + w}, {Middle, 0, 100 - w/2, 50, 100 + w/2}, {End, 0, 100 - w, 50, 100},
	} {
		text := base
		text.Align, text.Turn = c.align, c.turn
		b := text.Bounds()
		if !near(b.Min.X, c.x, 1e-9) || !near(b.Max.X, c.maxX, 1e-9) {
			t.Errorf("align %d: box %v, want X from %.2f to %.2f", c.align, b, c.x, c.maxX)
		}
		if !(b.Min.Y < c.y-6) || !(b.Max.Y > c.y+1) {
			t.Errorf("align %d: box %v does not reach around the baseline %v", c.align, b, c.y)
		}
	}
	up := base
	up.Turn = -90
	if b := up.Bounds(); !near(b.Max.Y, 50, 1e-9) || !near(b.Min.Y, 50-w, 1e-9) || b.Min.X > 94 {
		t.Errorf("text turned by -90 must read upwards to the left of its place; box %v", b)
	}
}

// Each law is shown both kept and broken.
func TestLaws(t *testing.T) {
	good := Page{Size: A4.Size()}
	good.Add("", Root, Text{At: Point{30, 30}, Size: 4, String: "first"})
	good.Add("", Root, Text{At: Point{30, 36}, Size: 4, String: "second"})
	good.Add("", Root, Stroke{Path: Line(Point{20, 45}, Point{190, 45}), Width: Thin})
	good.Blocks = []Block{{"a", NewBox(20, 50, 80, 50)}, {"b", NewBox(100, 50, 80, 50)}}
	m := Even(20)
	if bad := append(append(Outside(good, m), Overlaps(good)...), Struck(good)...); len(bad) != 0 {
		t.Fatalf("a good page breaks laws: %v", bad)
	}
	for _, c := range []struct {
		name  string
		spoil func(*Page)
		law   func(Page) []Breach
	}{
		{"text beyond the right margin", func(p *Page) { p.Add("", Root, Text{At: Point{185, 100}, Size: 4, String: "too long"}) },
			func(p Page) []Breach { return Outside(p, m) }},
		{"place that is no number", func(p *Page) { p.Add("", Root, Text{At: Point{math.NaN(), 100}, Size: 4, String: "x"}) },
			func(p Page) []Breach { return Outside(p, m) }},
		{"artifact off the paper", func(p *Page) {
			p.Add("", Artifact, Stroke{Path: Line(Point{-2, 5}, Point{5, 5}), Width: Thin})
		}, func(p Page) []Breach { return Outside(p, m) }},
		{"text on text", func(p *Page) { p.Add("", Root, Text{At: Point{33, 31}, Size: 4, String: "again"}) }, Overlaps},
		{"turned text on text", func(p *Page) {
			p.Add("", Root, Text{At: Point{34, 40}, Size: 4, Turn: -60, String: "slanting"})
		}, Overlaps},
		{"block on block", func(p *Page) { p.Blocks = append(p.Blocks, Block{"c", NewBox(90, 90, 20, 20)}) }, Overlaps},
		{"line through text", func(p *Page) {
			p.Add("", Root, Stroke{Path: Line(Point{25, 20}, Point{40, 40}), Width: Thin})
		}, Struck},
	} {
		p := good
		p.Items = append([]Item(nil), good.Items...)
		p.Blocks = append([]Block(nil), good.Blocks...)
		c.spoil(&p)
		if bad := c.law(p); len(bad) == 0 {
			t.Errorf("%s: not found", c.name)
		}
	}
	// Slanting texts whose upright boxes cover each other need not touch.
	var slant Page
	slant.Add("", Root, Text{At: Point{50, 50}, Size: 4, Turn: 45, String: "slanting text"})
	slant.Add("", Root, Text{At: Point{56, 50}, Size: 4, Turn: 45, String: "slanting text"})
	if bad := Overlaps(slant); len(bad) != 0 {
		t.Errorf("parallel slanting texts are apart: %v", bad)
	}
}

func TestDangling(t *testing.T) {
	var p Page
	for _, to := range []string{"here", "off", "nowhere", "https://example.org"} {
		p.Add("", Root, Link{To: to})
	}
	d := Document{Pages: []Page{p}, Anchors: []Anchor{{Name: "here"}, {Name: "off", Page: 3}}}
	if bad := Dangling(d); len(bad) != 2 || bad[0].Items[0] != 1 || bad[1].Items[0] != 2 {
		t.Errorf("%v", bad)
	}
}

func TestPlacedKeepsWidths(t *testing.T) {
	var d Drawing
	d.Add("a", Stroke{Path: Circle(Point{10, 10}, 5), Width: Thick})
	d.Add("a", Text{At: Point{10, 10}, Size: 3, String: "A1"})
	e := d.Placed(2, Point{100, 0})
	if s := e.Items[0].Shape.(Stroke); s.Width != Thick || !near(s.Path.Box().Width(), 20, 0.02) {
		t.Errorf("stroke became %v wide over %v", s.Width, s.Path.Box())
	}
	if x := e.Items[1].Shape.(Text); x.Size != 6 || x.At != (Point{120, 20}) {
		t.Errorf("text became %+v", x)
	}
	if d.Items[1].Shape.(Text).Size != 3 {
		t.Error("placing changed the drawing itself")
	}
}

// TestContrast checks print shades by the formula of WCAG 2.2, success
// criterion 1.4.3: text on paper and on its fill at least 4.5 : 1.
func TestContrast(t *testing.T) {
	for _, c := range []Colour{Ink, InkSoft, Rule, Act, Error, Warn, OK, Note} {
		if k := contrast(c, Ground); k < 4.5 {
			t.Errorf("%s on paper: %.1f : 1", c.Name(), k)
		}
	}
	for _, c := range Fills {
		if k := contrast(c.On(), c); k < 4.5 {
			t.Errorf("%s on %s: %.1f : 1", c.On().Name(), c.Name(), k)
		}
	}
}

func contrast(a, b Colour) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func luminance(c Colour) float64 {
	r, g, b := c.RGB()
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(r) + 0.7152*lin(g) + 0.0722*lin(b)
}
