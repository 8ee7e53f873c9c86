package drawing

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
	"scantling/internal/page"
	"scantling/internal/piece"
)

// endGrain hatches the end grain that the view of the end shows; sheet material
// has none.
func (d *partDrawing) endGrain() {
	if d.sheet {
		return
	}
	c := d.views.end
	pl := d.onPaper(c, d.endBox)
	eye := c.toward()
	for _, face := range d.solids.Solid(d.part.Address).Faces() {
		if face.Normal.Dot(eye) < 0.999 {
			continue
		}
		var path page.Path
		for _, loop := range face.Loops {
			var points []page.Point
			for _, p := range loop {
				points = append(points, d.flatOn(pl, c, p))
			}
			path = append(path, page.Polygon(points...)...)
		}
		if b := path.Box(); b.Width() > 0.5 && b.Height() > 0.5 {
			d.out.Add(string(d.part.Address), page.Hatch{Path: path, Angle: -45, Pitch: 1.3, Width: page.W018, Colour: page.Rule})
		}
	}
}

func (d *partDrawing) flatOn(pl place, c camera, p vec.V3) page.Point {
	flat := c.flat(p)
	return page.Point{X: pl.origin.X + float64(flat.X*pl.scale), Y: pl.origin.Y - float64(flat.Y*pl.scale)}
}

// grainArrow draws a double arrow along the grain where the view of the face is
// free of lines; where it is nowhere, the caption says it.
func (d *partDrawing) grainArrow() {
	const long, high = 13.0, 2.2
	if d.faceBox.Width() < long+4 || d.faceBox.Height() < high+2 {
		return
	}
	d.free.take(d.out.Items)
	best, least := page.Box{}, 0.5
	for row := range 7 {
		for column := range 7 {
			x := d.faceBox.Min.X + 2 + float64((d.faceBox.Width()-long-4)*float64(6-column)/6)
			y := d.faceBox.Min.Y + 1 + float64((d.faceBox.Height()-high-2)*float64((row+4)%7)/6)
			box := page.NewBox(x, y, long, high)
			if cost := d.free.cost(box.Grow(0.6)); cost < least {
				best, least = box, cost
			}
		}
	}
	if best.Empty() {
		return
	}
	y := best.Centre().Y
	doubleArrow(&d.out, page.Point{X: best.Min.X, Y: y}, page.Point{X: best.Max.X, Y: y}, 2.4, 1, string(d.part.Address))
}

// doubleArrow draws the sign of the grain from a to b; its heads are so long, and so
// wide to either side.
func doubleArrow(out *page.Drawing, a, b page.Point, long, wide float64, address string) {
	d := page.Point{X: b.X - a.X, Y: b.Y - a.Y}
	n := polygon.P2{X: d.X, Y: d.Y}.Norm()
	if n == 0 {
		return
	}
	u := page.Point{X: d.X / n, Y: d.Y / n}
	across := page.Point{X: float64(u.Y * wide), Y: -float64(u.X * wide)}
	path := page.Line(a, b)
	for _, head := range [2]struct {
		at   page.Point
		back float64
	}{{a, long}, {b, -long}} {
		foot := page.Point{X: head.at.X + float64(u.X*head.back), Y: head.at.Y + float64(u.Y*head.back)}
		path = path.Move(page.Point{X: foot.X + across.X, Y: foot.Y + across.Y}).Line(head.at).Line(page.Point{X: foot.X - across.X, Y: foot.Y - across.Y})
	}
	out.Add(address, page.Stroke{Path: path, Width: page.W025, Colour: page.InkSoft})
}

// centreLines draws the middle line of every channel of a series.
func (d *partDrawing) centreLines() {
	for _, c := range d.cuts {
		if c.Kind != piece.Channel || c.Slot == nil || c.Slot.Run != piece.AlongLength {
			continue
		}
		box := d.footprint(c)
		y := box.Centre().Y
		line := page.Line(page.Point{X: d.faceBox.Min.X, Y: y}, page.Point{X: d.faceBox.Max.X + 2, Y: y})
		d.out.Add(string(c.Address), page.Stroke{Path: line, Width: page.W018, Dash: page.Centre, Colour: page.Ink})
	}
}
