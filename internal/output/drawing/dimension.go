package drawing

import (
	"math"
	"slices"
	"strings"

	"scantling/internal/font"
	"scantling/internal/page"
)

// Sizes of dimension lines on paper, in millimetres.
const (
	textSize  = 3.0 // the em of figures
	fractions = 4.2 // the em of figures with a fraction, whose digits are smaller

	lineGap = 1.0 // between outline and extension line
	overrun = 1.5 // of extension lines beyond the dimension line
	tick    = 1.4 // half of the oblique stroke at each end
)

// dimension is one dimension line: from a to b, measured along one axis of the
// paper, at distance off beyond the outline.
type dimension struct {
	a, b     page.Point // on the outline
	vertical bool       // measures up and down
	line     float64    // the coordinate of the dimension line across its axis
	text     string
	// before puts a figure that is wider than its line before it, not behind it.
	before  bool
	address string
	// skip leaves that stretch of the extension lines out, where figures of a
	// running row stand in their way; taken are the places of those figures.
	skip  [2]float64
	taken []float64
	// plate blots out what lies below the figure.
	plate bool
}

// drawAll adds dimensions to a drawing: all lines, then all figures, so that
// their plates blot out what runs below them.
func drawAll(to *page.Drawing, list ...dimension) {
	for _, d := range list {
		d.lines(to)
	}
	for _, d := range list {
		d.figure(to)
	}
}

// draw adds the dimension to a drawing.
func (d dimension) draw(to *page.Drawing) { drawAll(to, d) }

// lines draws the dimension line, its extension lines and its ticks.
func (d dimension) lines(to *page.Drawing) {
	a, b := d.ends()
	for _, ends := range [2][2]page.Point{{d.a, a}, {d.b, b}} {
		d.extension(to, ends[0], ends[1])
		d.tick(to, ends[1])
	}
	to.Add(d.address, page.Stroke{Path: page.Line(a, b), Width: page.Thin, Colour: page.Ink})
}

// ends returns the ends of the dimension line.
func (d dimension) ends() (a, b page.Point) {
	a, b = d.a, d.b
	if d.vertical {
		a.X, b.X = d.line, d.line
	} else {
		a.Y, b.Y = d.line, d.line
	}
	return a, b
}

func (d dimension) extension(to *page.Drawing, from, end page.Point) {
	step := end.Sub(from)
	if n := step.Norm(); n > lineGap {
		u := step.Mul(1 / n)
		start, stop := from.Add(u.Mul(lineGap)), end.Add(u.Mul(overrun))
		path := page.Line(start, stop)
		if d.blocked(from) {
			a, b := page.Point{X: from.X, Y: d.skip[0]}, page.Point{X: from.X, Y: d.skip[1]}
			if d.vertical {
				a, b = page.Point{X: d.skip[0], Y: from.Y}, page.Point{X: d.skip[1], Y: from.Y}
			}
			path = page.Line(start, a).Move(b).Line(stop)
		}
		to.Add(d.address, page.Stroke{Path: path, Width: page.Thin, Colour: page.InkSoft})
	}
}

// blocked reports whether a figure of a running row stands on the extension line
// from a point.
func (d dimension) blocked(from page.Point) bool {
	at := from.X
	if d.vertical {
		at = from.Y
	}
	return slices.ContainsFunc(d.taken, func(t float64) bool { return math.Abs(t-at) < 2.9 })
}

func (d dimension) tick(to *page.Drawing, at page.Point) {
	half := page.Point{X: tick * math.Sqrt2 / 2, Y: -tick * math.Sqrt2 / 2}
	to.Add(d.address, page.Stroke{Path: page.Line(at.Sub(half), at.Add(half)), Width: page.W035, Colour: page.Ink})
}

// figure writes the text above the line, or beside its end where the line is
// too short for it.
func (d dimension) figure(to *page.Drawing) {
	a, b := d.ends()
	width := textWidth(d.text)
	room := b.Sub(a).Norm()
	t := page.Text{Size: figureSize(d.text), String: d.text, Align: page.Middle, Colour: page.Ink}
	mid := a.Add(b).Mul(0.5)
	// A fraction reaches below the baseline.
	above := max(0.8, float64(t.Line().Bottom*t.Size)+0.45)
	switch {
	case d.vertical && room >= width+3:
		t.At, t.Turn = page.Point{X: mid.X - above, Y: mid.Y}, -90
	case d.vertical:
		t.At, t.Align = page.Point{X: mid.X - 1.9, Y: mid.Y + float64(t.Size*capHalf)}, page.End
	case room >= width+3:
		t.At = page.Point{X: mid.X, Y: mid.Y - above}
	case d.before:
		t.At, t.Align = page.Point{X: math.Min(a.X, b.X) - 1.9, Y: mid.Y + float64(t.Size*capHalf)}, page.End
	default:
		t.At, t.Align = page.Point{X: math.Max(a.X, b.X) + 1.9, Y: mid.Y + float64(t.Size*capHalf)}, page.Start
	}
	if d.plate {
		to.Add(d.address, page.Fill{Path: page.Rectangle(t.Bounds().Grow(0.4)), Colour: page.Ground})
	}
	to.Add(d.address, t)
}

// textWidth is the room that a dimension's figure needs along the line.
func textWidth(s string) float64 { return page.TextWidth(font.Regular, figureSize(s), s) }

// figureSize is the em of a figure: larger where it has a fraction of an inch,
// so that its small digits can be read at the bench.
func figureSize(s string) float64 {
	if strings.ContainsAny(s, "⁄½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞") {
		return fractions
	}
	return textSize
}
