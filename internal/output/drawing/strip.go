package drawing

import (
	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/output/tape"
	"scantling/internal/page"
	"scantling/internal/plan"
)

// Sizes of the title block on paper, in millimetres.
const (
	stripHigh   = 9.0
	stripPad    = 1.6
	stripSmall  = 2.1 // the em of captions
	stripFigure = 3.2 // of what they name
)

// TitleBlock draws the strip below a part drawing: material, finished sizes with
// the sign of what they rest on, scale, unit, the symbol of the projection and
// the revision (after ISO 7200, from memory).
func TitleBlock(p *plan.Plan, row plan.PartRow, scale Scale, thirdAngle bool, revision string, width float64, speech Speech) page.Drawing {
	say := func(key string, args ...message.Arg) string { return word(speech, key, args...) }
	shown := tape.Of(p, p.Units()).Sizes(row)
	times := speech.Figure(shown[0]) + " × " + speech.Figure(shown[1]) + " × " + speech.Figure(shown[2])
	cells := []struct {
		caption, text string
		share         float64
		strong        bool
	}{
		{say("block.size"), times + " " + say("basis-sign."+string(row.Basis)), 3, true},
		{say("block.material"), speech.Own(row.Species), 2.6, false},
		{say("block.scale"), speech.Own(scale.String()), 0.9, false},
		{say("block.unit"), say("units." + string(p.Units())), 1.5, false},
		{say("block.projection"), "", 1.1, false},
		{say("block.revision"), speech.Own(revision), 0.9, false},
	}
	out := page.Drawing{Name: row.Mark, Alt: say("block.alt", message.Text("mark", row.Mark), message.Text("size", times), message.Text("species", row.Species), message.Text("scale", scale.String()))}
	line := func(a, b page.Point, w page.Width) {
		out.Add("", page.Stroke{Path: page.Line(a, b), Width: w, Colour: page.Ink})
	}
	line(page.Point{}, page.Point{X: width}, page.W035)
	line(page.Point{Y: stripHigh}, page.Point{X: width, Y: stripHigh}, page.W018)
	out.Box = page.NewBox(0, 0, width, stripHigh)
	x, unit := 0.0, width/10
	for i, c := range cells {
		if i > 0 {
			line(page.Point{X: x}, page.Point{X: x, Y: stripHigh}, page.W018)
		}
		weight := font.Regular
		if c.strong {
			weight = font.Bold
		}
		room := float64(c.share*unit) - 2*stripPad
		out.Add("", page.Text{At: page.Point{X: x + stripPad, Y: 3}, Size: fit(font.Regular, stripSmall, c.caption, room), Colour: page.InkSoft, String: c.caption})
		if c.text != "" {
			out.Add(string(row.Members[0]), page.Text{At: page.Point{X: x + stripPad, Y: 7.3}, Size: fit(weight, stripFigure, c.text, room), Weight: weight, Colour: page.Ink, String: c.text})
		} else {
			projection(&out, page.Point{X: x + stripPad, Y: 5.9}, thirdAngle)
		}
		x += float64(c.share * unit)
	}
	return out
}

// fit returns the em at which a text goes into a room, at most the given one.
func fit(w font.Weight, em float64, text string, room float64) float64 {
	if wide := page.TextWidth(w, em, text); wide > room {
		return float64(em * room / wide)
	}
	return em
}

// projection draws the symbol of the method of projection: a truncated cone from
// its side and from its end; in first angle the end that is seen lies opposite
// (ISO 128-3 and ISO 5456-2, from memory).
func projection(out *page.Drawing, at page.Point, thirdAngle bool) {
	const long, big, small = 5.0, 2.0, 1.0
	cone, rings := at, page.Point{X: at.X + long + 3.4, Y: at.Y}
	if thirdAngle {
		rings, cone = page.Point{X: at.X + big, Y: at.Y}, page.Point{X: at.X + 2*big + 1.6, Y: at.Y}
	}
	stroke := func(p page.Path, w page.Width, d page.Dash) {
		out.Add("", page.Stroke{Path: p, Width: w, Dash: d, Colour: page.Ink})
	}
	stroke(page.Polygon(
		page.Point{X: cone.X, Y: cone.Y - small}, page.Point{X: cone.X + long, Y: cone.Y - big},
		page.Point{X: cone.X + long, Y: cone.Y + big}, page.Point{X: cone.X, Y: cone.Y + small}), page.W025, page.Solid)
	stroke(page.Circle(rings, big), page.W025, page.Solid)
	stroke(page.Circle(rings, small), page.W025, page.Solid)
}
