package drawing

import (
	"scantling/internal/font"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Section draws the piece cut by an upright plane from front to back, at a place
// from the left, seen from the right: what is cut is hatched, neighbours with
// hatching that leans the other way, and carries its mark. It returns the scale.
func Section(p *plan.Plan, s Solids, at unit.Length, roomWidth, roomHeight float64, speech Speech) (page.Drawing, Scale) {
	plane := vec.Frame{Origin: vec.V3{X: at.Millimetres()}, U: vec.V3{Y: 1}, V: vec.V3{Z: 1}, W: vec.V3{X: 1}}
	names := naming.Of(p, speech)
	low, high := bounds(p, "")
	deep, tall := high[1]-low[1], high[2]-low[2]
	scale := fitting(deep, tall, roomWidth-lines(1), roomHeight-lines(1), Scale{1, 1})
	f := scale.Factor()
	pl := place{scale: f, origin: page.Point{X: lines(1) - float64(low[1]*f), Y: float64(high[2] * f)}}
	out := page.Drawing{Name: p.Piece.Name, Alt: word(speech, "drawing.section-alt", message.Text("piece", p.Piece.Name), message.Length("at", at))}
	var labels []regionLabel
	for i, part := range p.Piece.Parts {
		var regions []solid.Region
		for _, body := range s.Ready(part.Address) {
			cut, _ := solid.Section(body, plane)
			regions = append(regions, cut...)
		}
		for _, r := range regions {
			path := outlinePath(r.Outer, pl)
			for _, h := range r.Holes {
				path = append(path, outlinePath(h, pl)...)
			}
			angle := 45.0
			if i%2 == 1 {
				angle = -45
			}
			out.Add(string(part.Address), page.Hatch{Path: path, Angle: angle, Pitch: 1.4, Width: page.W018, Colour: page.Rule})
			out.Add(string(part.Address), page.Stroke{Path: path, Width: page.W035, Colour: page.Ink})
			if box := path.Box(); box.Width() > 9 || box.Height() > 9 {
				labels = append(labels, regionLabel{box, names.Mark(part.Address), string(part.Address)})
			}
		}
	}
	writeInside(&out, labels, speech)
	size := p.Overall()
	a, b := page.Point{X: lines(1), Y: float64(tall * f)}, page.Point{X: lines(1) + float64(deep*f), Y: float64(tall * f)}
	dimension{a: a, b: b, line: a.Y + 6, text: speech.Figure(size[1])}.draw(&out)
	dimension{a: a, b: page.Point{X: a.X, Y: 0}, vertical: true, line: a.X - 6, text: speech.Figure(size[2])}.draw(&out)
	return out, scale
}

// regionLabel is a mark to be written into a region of a section.
type regionLabel struct {
	box           page.Box
	mark, address string
}

// writeInside writes marks into their regions, on plates of paper, where no other
// mark stands.
func writeInside(out *page.Drawing, labels []regionLabel, speech Speech) {
	var taken []page.Box
	for _, l := range labels {
		const em = 2.8
		w := page.TextWidth(font.Bold, em, l.mark) + 1.2
		// In the middle of the region, or along it where another mark stands there.
		var box page.Box
		for _, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			at := page.Point{X: l.box.Min.X + float64(t*l.box.Width()), Y: l.box.Centre().Y}
			if l.box.Height() > l.box.Width() {
				at = page.Point{X: l.box.Centre().X, Y: l.box.Min.Y + float64(t*l.box.Height())}
			}
			if box = page.NewBox(at.X-float64(w/2), at.Y-em/2-0.3, w, em+0.6); !anyOverlaps(taken, box) {
				break
			}
			box = page.Box{}
		}
		if box.Empty() {
			continue
		}
		taken = append(taken, box)
		out.Add(l.address, page.Fill{Path: page.Rectangle(box), Colour: page.Ground})
		out.Add(l.address, page.Text{At: page.Point{X: box.Centre().X, Y: box.Max.Y - 0.9}, Size: em, Weight: font.Bold, Align: page.Middle, Colour: page.Ink, String: speech.Own(l.mark)})
	}
}

func anyOverlaps(taken []page.Box, box page.Box) bool {
	for _, t := range taken {
		if overlaps(t, box) {
			return true
		}
	}
	return false
}

// lines returns the room that n dimension lines take beyond an outline.
func lines(n int) float64 { return 3 + float64(7*float64(n)) }

// outlinePath is an outline of a section as a closed path on paper.
func outlinePath(o solid.Outline, pl place) page.Path {
	var points []page.Point
	for _, q := range o.Points {
		points = append(points, pl.at(q))
	}
	return page.Polygon(points...)
}
