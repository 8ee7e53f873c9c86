package drawing_test

import (
	"fmt"
	"math"
	"testing"

	"scantling/internal/output/drawing"
	"scantling/internal/page"
	"scantling/internal/shape"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// views draws the rack in every view that there is of solids.
func views() map[string]page.Drawing {
	p := rack()
	s := solids{shape.New(p.Piece, nil, shape.ScreenFacets)}
	w := words.New(words.English, words.British, unit.Show{System: unit.Metric, Denominator: 32, Style: unit.Signs}, "")
	out := map[string]page.Drawing{}
	for _, l := range []drawing.Look{drawing.LookIsometric, drawing.LookFront, drawing.LookRight, drawing.LookTop} {
		out[string(l)] = drawing.Whole(p, s, drawing.WholeOptions{Look: l}, 150, 100, w)
	}
	out["section"], _ = drawing.Section(p, s, unit.MM(95), 150, 90, w)
	out["first angle"], _ = drawing.Part(p, p.Parts[0], s, drawing.PartOptions{}, 170, 100, w)
	out["third angle"], _ = drawing.Part(p, p.Parts[0], s, drawing.PartOptions{ThirdAngle: true}, 170, 100, w)
	return out
}

// strokes returns the straight, the bent and the dashed strokes that show the piece.
func strokes(d page.Drawing) (straight []string, arcs, curves, dashed, hatched, nameless int) {
	for _, it := range d.Items {
		switch s := it.Shape.(type) {
		case page.Hatch:
			hatched++
		case page.Stroke:
			if s.Dash == page.Hidden {
				dashed++
			}
			if it.Address == "" {
				nameless++
			}
			for i, g := range s.Path {
				switch g.Verb {
				case page.ArcTo:
					arcs++
				case page.CurveTo:
					curves++
				case page.LineTo:
					if len(s.Path) == 2 && i == 1 {
						a, b := s.Path[0].To, g.To
						if a.X > b.X || a.X == b.X && a.Y > b.Y {
							a, b = b, a
						}
						straight = append(straight, fmt.Sprintf("%.3f %.3f %.3f %.3f", a.X, a.Y, b.X, b.Y))
					}
				}
			}
		}
	}
	return straight, arcs, curves, dashed, hatched, nameless
}

// TestViews: the scoop is an arc where it is seen square on and an ellipse where it
// is not; no line is drawn twice; what cannot be seen of a part is dashed; a section
// is hatched, once for each shelf; every stroke of
// the whole says what it shows.
func TestViews(t *testing.T) {
	v := views()
	for name, d := range v {
		straight, arcs, curves, dashed, hatched, nameless := strokes(d)
		seen := map[string]bool{}
		for _, l := range straight {
			if seen[l] && name != "first angle" && name != "third angle" { // dimensions may share a tick
				t.Errorf("%s: the line %s is drawn twice", name, l)
			}
			seen[l] = true
		}
		part := name == "first angle" || name == "third angle"
		switch {
		case part && (arcs == 0 || dashed == 0):
			t.Errorf("%s: %d arcs, %d dashed", name, arcs, dashed)
		case name == "top" && arcs == 0:
			t.Errorf("%s: the scoop is no arc", name)
		case name == "isometric" && (curves == 0 || dashed != 0 || nameless != 0):
			t.Errorf("%s: %d curves, %d dashed, %d without an address", name, curves, dashed, nameless)
		case name == "section" && hatched != 2:
			t.Errorf("%s: %d regions hatched", name, hatched)
		case !part && name != "section" && nameless != 0:
			t.Errorf("%s: %d strokes without an address", name, nameless)
		}
	}
}

// TestAngles: seen by the first angle the view from above the main one lies below it,
// by the third angle above: the two drawings differ, and are as large.
func TestAngles(t *testing.T) {
	v := views()
	a, _, _, _, _, _ := strokes(v["first angle"])
	b, _, _, _, _, _ := strokes(v["third angle"])
	same := len(a) == len(b)
	for i := range min(len(a), len(b)) {
		same = same && a[i] == b[i]
	}
	if same {
		t.Error("first and third angle are the same drawing")
	}
	if x, y := v["first angle"].Area(), v["third angle"].Area(); math.Abs(x.Width()-y.Width()) > 8 || math.Abs(x.Height()-y.Height()) > 8 {
		t.Errorf("%v and %v", x, y)
	}
}
