package drawing

import (
	"math"

	"scantling/internal/font"
	"scantling/internal/output/naming"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// calloutRadius is that of the ring round a letter.
const calloutRadius = 2.1

// callouts puts the letter of each row of the table of cuts on its first cut in
// the view of the face.
func (d *partDrawing) callouts() {
	for _, c := range d.cuts {
		if c.Dip != nil {
			d.radius(c)
		}
	}
	for _, r := range d.rows {
		d.callout(r.Letter, d.footprint(r.Cuts[0]), string(r.Cuts[0].Address))
	}
}

// footprint is the box of a cut in the view of the face.
func (d *partDrawing) footprint(c piece.Cut) page.Box {
	low, high := naming.Limits(&d.part, c)
	f := d.scale.Factor()
	x := func(at unit.Length) float64 {
		return on(d.views.face, alongLength, at.Millimetres(), d.faceBox, f, false)
	}
	y := func(at unit.Length) float64 {
		return on(d.views.face, alongWidth, at.Millimetres(), d.faceBox, f, true)
	}
	a, b := page.Point{X: x(low[0]), Y: y(low[1])}, page.Point{X: x(high[0]), Y: y(high[1])}
	return page.Box{Min: page.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, Max: page.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}}
}

// callout draws a letter in a ring in the cut where there is room, or beside it
// with a short line to its middle, where the fewest lines are.
func (d *partDrawing) callout(letter string, cut page.Box, address string) {
	d.free.take(d.out.Items)
	var at, tip page.Point
	best := math.Inf(1)
	inside := min(cut.Width(), cut.Height()) >= 2*calloutRadius+0.6
	for i := range 9 {
		t := 0.5 + float64([]float64{0, 1, -1, 2, -2, 3, -3, 4, -4}[i]*0.11)
		on := page.Point{X: cut.Min.X + float64(t*cut.Width()), Y: cut.Centre().Y}
		if cut.Height() > cut.Width() {
			on = page.Point{X: cut.Centre().X, Y: cut.Min.Y + float64(t*cut.Height())}
		}
		for k, off := range []page.Point{{}, {X: 5}, {X: -5}, {Y: 5}, {Y: -5}, {X: 5, Y: 5}, {X: -5, Y: 5}, {X: 5, Y: -5}, {X: -5, Y: -5}} {
			if (k == 0) && !inside {
				continue
			}
			c := on.Add(off)
			if cost := d.crowded(c) + float64(float64(i)*0.3) + d.free.textsOn(c, on); cost < best {
				best, at, tip = cost, c, on
			}
		}
	}
	if at != tip {
		step := tip.Sub(at)
		d.out.Add(address, page.Stroke{Path: page.Line(at.Add(step.Mul(calloutRadius/step.Norm())), tip), Width: page.W018, Colour: page.Ink})
		d.out.Add(address, page.Fill{Path: page.Circle(tip, 0.5), Colour: page.Ink})
	}
	d.out.Add(address, page.Fill{Path: page.Circle(at, calloutRadius), Colour: page.Ground})
	d.out.Add(address, page.Stroke{Path: page.Circle(at, calloutRadius), Width: page.W018, Colour: page.Ink})
	d.out.Add(address, page.Text{At: page.Point{X: at.X, Y: at.Y + 0.8}, Size: labelSize, Weight: font.Bold, Align: page.Middle, Colour: page.Ink, String: d.speech.Own(letter)})
}

// crowded says how much stands where a ring would: texts and other rings must
// not be covered, lines had better not.
func (d *partDrawing) crowded(c page.Point) float64 {
	box := page.NewBox(c.X-calloutRadius-0.4, c.Y-calloutRadius-0.4, 2*calloutRadius+0.8, 2*calloutRadius+0.8)
	cost := 0.0
	if !d.faceBox.Grow(-0.4).Contains(box, 0) {
		cost += 40
	}
	return cost + d.free.cost(box)
}

// radius writes the radius of a dip's arc into the hollow, or beside it.
func (d *partDrawing) radius(c piece.Cut) {
	text := word(d.speech, "drawing.radius") + " " + d.speech.Figure(naming.Radius(c.Dip))
	box := d.footprint(c)
	if box.Height() < 4.5 || box.Width() < 2.5*page.TextWidth(font.Regular, textSize, text) {
		return
	}
	y := box.Min.Y + 3.4
	if box.Centre().Y > d.faceBox.Centre().Y {
		y = box.Max.Y - 1.2
	}
	d.out.Add(string(c.Address), page.Text{At: page.Point{X: box.Centre().X, Y: y}, Size: textSize, Align: page.Middle, Colour: page.Ink, String: text})
}
