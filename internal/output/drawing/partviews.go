package drawing

import (
	"cmp"
	"slices"

	"scantling/internal/font"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/vec"
	"scantling/internal/page"
	"scantling/internal/piece"
)

// Spaces between the views of a part, in millimetres.
const (
	viewGap    = 8.5 // below a view, with room for the names of its sides
	endGap     = 15.0
	overallGap = 7.0 // from the figures of a row to the line of the whole
	labelSize  = 2.6
)

// layout places the three views at the chosen scale and draws all but what is
// put where there is room.
func (d *partDrawing) layout() {
	f := d.scale.Factor()
	size := [3]float64{d.part.Length.Nm.Millimetres() * f, d.part.Width.Nm.Millimetres() * f, d.part.Thickness.Nm.Millimetres() * f}
	left := runningRoom(d.figures(d.across)) + overallGap
	above := max(runningRoom(d.figures(d.along)), runningRoom(d.figures(d.through))) + overallGap
	d.faceBox = page.NewBox(left, above, size[0], size[1])
	d.edgeBox = page.NewBox(left, d.faceBox.Max.Y+viewGap, size[0], size[2])
	d.endBox = page.NewBox(d.faceBox.Max.X+endGap, above, size[2], size[1])
	d.endGrain()
	d.view(d.views.face, d.seen[0], d.faceBox)
	d.view(d.views.edge, d.seen[1], d.edgeBox)
	d.view(d.views.end, d.seen[2], d.endBox)
	d.centreLines()
	d.dimensions()
	d.sides()
}

// figures are the texts of a row.
func (d *partDrawing) figures(list []mark) []string {
	var out []string
	for _, m := range list {
		out = append(out, d.speech.Figure(d.tape.Toward(m.at, m.toward)))
	}
	return out
}

// view draws the part seen by a camera into a box.
func (d *partDrawing) view(c camera, strokes []hidden.Stroke, box page.Box) {
	d.onPaper(c, box).add(&d.out, strokes, page.Thick, func(s hidden.Stroke) string {
		for _, t := range s.Tags {
			if a := d.solids.Cut(d.part.Address, t); a != "" {
				return string(a)
			}
		}
		return string(d.part.Address)
	})
}

// onPaper puts what a camera sees into a view's box.
func (d *partDrawing) onPaper(c camera, box page.Box) place {
	low, high := d.flatBox(c)
	f := d.scale.Factor()
	return place{scale: f, origin: page.Point{X: box.Min.X - float64(low.X*f), Y: box.Min.Y + float64(high.Y*f)}}
}

// flatBox returns the uncut body's limits as a camera sees them.
func (d *partDrawing) flatBox(c camera) (low, high page.Point) {
	far := vec.Of(d.part.Length.Nm, d.part.Width.Nm, d.part.Thickness.Nm)
	a, b := c.flat(vec.V3{}), c.flat(far)
	return page.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, page.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
}

// on returns the paper coordinate, along X or Y, of a place on a local axis in a
// view's box.
func on(c camera, axis vec.V3, at float64, box page.Box, f float64, vertical bool) float64 {
	if vertical {
		if c.up.Dot(axis) > 0 {
			return box.Max.Y - float64(at*f)
		}
		return box.Min.Y + float64(at*f)
	}
	if c.right.Dot(axis) > 0 {
		return box.Min.X + float64(at*f)
	}
	return box.Max.X - float64(at*f)
}

// dimensions draws the rows: along the length above the face, across the width
// at its left, through the thickness above the end; beyond each the whole.
func (d *partDrawing) dimensions() {
	d.row(d.along, d.views.face, alongLength, 0, d.faceBox, false)
	d.row(d.across, d.views.face, alongWidth, 1, d.faceBox, true)
	d.row(d.through, d.views.end, alongThickness, 2, d.endBox, false)
}

func (d *partDrawing) row(list []mark, c camera, axis vec.V3, whole int, box page.Box, vertical bool) {
	f := d.scale.Factor()
	outline := box.Min.Y
	if vertical {
		outline = box.Min.X
	}
	r := running{vertical: vertical, across: outline, line: outline - runningLine, zero: on(c, axis, 0, box, f, vertical)}
	for _, m := range list {
		r.stops = append(r.stops, runningStop{on(c, axis, m.at.Millimetres(), box, f, vertical), d.speech.Figure(d.tape.Toward(m.at, m.toward)), string(m.address)})
	}
	slices.SortStableFunc(r.stops, func(a, b runningStop) int { return cmp.Compare(a.at, b.at) })
	r.draw(&d.out)
	low, high := r.zero, on(c, axis, [3]piece.Figure{d.part.Length, d.part.Width, d.part.Thickness}[whole].Nm.Millimetres(), box, f, vertical)
	line := outline - runningRoom(d.figures(list)) - overallGap + 2
	if len(list) == 0 {
		line = outline - 5
	}
	dimension{a: r.point(low, outline), b: r.point(high, outline), vertical: vertical, line: line, text: d.speech.Figure(d.shown[whole]), address: string(d.part.Address),
		skip: [2]float64{outline - runningLine - 1.2, line + 2}, taken: r.places()}.draw(&d.out)
}

// sides marks end 1 and edge 1, from which everything is measured, and writes
// which side is which beside the views.
func (d *partDrawing) sides() {
	f := d.scale.Factor()
	x := on(d.views.face, alongLength, 0, d.faceBox, f, false)
	y := on(d.views.face, alongWidth, 0, d.faceBox, f, true)
	bottom := piece.EdgeLow
	step := -1.0
	if y < d.faceBox.Centre().Y {
		bottom, step = piece.EdgeHigh, 1
	}
	reach := min(2.6, d.faceBox.Width()/2, d.faceBox.Height()/2)
	corner := page.Polygon(page.Point{X: x, Y: y}, page.Point{X: x + reach, Y: y}, page.Point{X: x, Y: y + float64(reach*step)})
	d.out.Add(string(d.part.Address), page.Fill{Path: corner, Colour: page.Ink})
	below := d.faceBox.Max.Y + 3.6
	ends := [3]string{d.side(piece.EndLow), d.side(bottom), d.side(piece.EndHigh)}
	need := 4.0
	for _, s := range ends {
		need += page.TextWidth(font.Regular, labelSize, s)
	}
	if need <= d.faceBox.Width() {
		d.label(page.Point{X: d.faceBox.Min.X, Y: below}, page.Start, ends[0])
		d.label(page.Point{X: d.faceBox.Max.X, Y: below}, page.End, ends[2])
		d.label(page.Point{X: d.faceBox.Centre().X, Y: below}, page.Middle, ends[1])
	} else {
		d.label(page.Point{X: d.faceBox.Min.X, Y: below}, page.Start, ends[0])
	}
	d.label(page.Point{X: d.edgeBox.Max.X + 2, Y: d.edgeBox.Centre().Y + 0.9}, page.Start, d.side(d.toward(d.views.edge, alongWidth, piece.AlongWidth)))
	d.label(page.Point{X: d.endBox.Centre().X, Y: d.endBox.Max.Y + 3.6}, page.Middle, d.side(d.toward(d.views.end, alongLength, piece.AlongLength)))
}

// toward returns the side on an axis that the camera looks at.
func (d *partDrawing) toward(c camera, axis vec.V3, local piece.Local) piece.Side {
	return piece.SideOf(local, c.toward().Dot(axis) > 0)
}

func (d *partDrawing) side(s piece.Side) string { return word(d.speech, "side."+string(s)) }

func (d *partDrawing) label(at page.Point, align page.Align, text string) {
	d.out.Add(string(d.part.Address), page.Text{At: at, Size: labelSize, Align: align, Colour: page.InkSoft, String: text})
}
