package drawing

import (
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Elevation draws the whole piece straight on, in millimetres of paper for one of
// wood, with its overall sizes.
func Elevation(p *plan.Plan, s Solids, look Look, factor float64, speech Speech) page.Drawing {
	size := p.Overall()
	across, up := size[0], size[2]
	switch look {
	case LookRight:
		across = size[1]
	case LookTop:
		up = size[1]
	}
	width, height := float64(across.Millimetres()*factor), float64(up.Millimetres()*factor)
	view := Whole(p, s, WholeOptions{Look: look}, width, height, speech)
	out := view.Placed(1, page.Point{X: lines(1)})
	out.Box = page.Box{}
	corner, far := page.Point{X: lines(1), Y: height}, page.Point{X: lines(1) + width, Y: height}
	figure := func(l unit.Length) string { return speech.Figure(l) }
	dimension{a: corner, b: far, line: height + 6, text: figure(across)}.draw(&out)
	dimension{a: corner, b: page.Point{X: corner.X, Y: 0}, vertical: true, line: corner.X - 6, text: figure(up)}.draw(&out)
	return out
}
