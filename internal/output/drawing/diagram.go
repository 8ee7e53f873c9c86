package drawing

import (
	"fmt"
	"math"

	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/page"
	"scantling/internal/plan"
)

// Diagram draws how one board or sheet is cut up: every piece with its mark and
// sizes, saw cuts numbered in their order, remnants hatched. Room is the space
// on paper, in millimetres.
func Diagram(d plan.Diagram, roomWidth, roomHeight float64, s Speech) page.Drawing {
	const left, top, bottom = 12.0, 9.0, 9.0
	length, width := d.Length.Nm.Millimetres(), d.Width.Nm.Millimetres()
	scale := (roomWidth - left - 3) / length
	scale = math.Min(scale, (roomHeight-top-bottom)/width)
	v := diagramView{scale: scale, origin: page.Point{X: left, Y: top}, width: width, speech: s}
	v.out.Name = d.Label
	v.out.Alt = s.Say(message.New("drawing.diagram-alt",
		message.Text("stock", d.Label), message.Count("pieces", len(d.Pieces)), message.Count("cuts", len(d.Cuts))))
	v.outline(d)
	for _, l := range d.Left {
		v.left(l)
	}
	for _, x := range d.Defects {
		v.defect(x)
	}
	for _, p := range d.Pieces {
		v.piece(p)
	}
	for _, c := range d.Cuts {
		v.line(c, d.Kerf.Nm.Millimetres())
	}
	for _, c := range d.Cuts {
		p, q := v.ends(c, d.Kerf.Nm.Millimetres())
		v.ring(p, q, c.N)
	}
	for _, l := range v.labels {
		v.label(l)
	}
	return v.out
}

type diagramView struct {
	scale  float64
	origin page.Point
	width  float64
	speech Speech
	free   obstacles
	labels []pieceLabel
	out    page.Drawing
}

// at puts a point of the stock on paper: along to the right, across upwards.
func (v *diagramView) at(along, across float64) page.Point {
	return page.Point{
		X: v.origin.X + float64(along*v.scale),
		Y: v.origin.Y + float64((v.width-across)*v.scale),
	}
}

func (v *diagramView) box(r plan.Rect) page.Box {
	a, c := r.Along.Nm.Millimetres(), r.Across.Nm.Millimetres()
	p := v.at(a, c+r.Width.Nm.Millimetres())
	return page.NewBox(p.X, p.Y, float64(r.Length.Nm.Millimetres()*v.scale), float64(r.Width.Nm.Millimetres()*v.scale))
}

func (v *diagramView) outline(d plan.Diagram) {
	length := d.Length.Nm.Millimetres()
	low, high := v.at(0, 0), v.at(length, v.width)
	box := page.Box{Min: page.Point{X: low.X, Y: high.Y}, Max: page.Point{X: high.X, Y: low.Y}}
	v.out.Add(d.ID, page.Fill{Path: page.Rectangle(box), Colour: page.Bench})
	v.out.Add(d.ID, page.Stroke{Path: page.Rectangle(box), Width: page.Thick, Colour: page.Ink})
	dimension{a: v.at(0, 0), b: v.at(length, 0), line: low.Y + 6.5, text: v.speech.Figure(d.Length.Nm), address: d.ID}.draw(&v.out)
	dimension{a: v.at(0, 0), b: v.at(0, v.width), vertical: true, line: low.X - 5.5, text: v.speech.Figure(d.Width.Nm), address: d.ID}.draw(&v.out)
}

func (v *diagramView) piece(p plan.Placed) {
	box := v.box(p.Rect)
	v.out.Add(p.Workpiece, page.Fill{Path: page.Rectangle(box), Colour: page.Ground})
	v.out.Add(p.Workpiece, page.Stroke{Path: page.Rectangle(box), Width: page.W035, Colour: page.Ink})
	size := v.speech.Figure(p.Rect.Length.Nm) + " × " + v.speech.Figure(p.Rect.Width.Nm)
	v.labels = append(v.labels, pieceLabel{box, p.Workpiece, v.speech.Own(p.Mark), size})
	v.grain(box, p.Workpiece)
}

// pieceLabel is what is written into a piece or a remnant.
type pieceLabel struct {
	box                 page.Box
	address, mark, size string
}

// Sizes of labels.
const (
	labelMark = 3.6
	labelDims = 2.6
)

// label writes a mark in bold and, where there is room, the size after or below
// it: in the middle of the piece or, where a saw line or its number is in the way,
// beside.
func (v *diagramView) label(l pieceLabel) {
	markWidth := page.TextWidth(font.Bold, labelMark, l.mark)
	sizeWidth := page.TextWidth(font.Regular, labelDims, l.size)
	text := func(at page.Point, em float64, w font.Weight, turn float64, s string) {
		t := page.Text{At: at, Size: em, Weight: w, Align: page.Middle, Turn: turn, String: s, Colour: page.Ink}
		if l.address == "" && v.free.cost(t.Bounds().Grow(0.1)) >= 1 {
			return // a rest is known by its tint and its dashed outline
		}
		v.out.Add(l.address, t)
	}
	// Where a saw line or a number stands in its way, the list has the size.
	size := func(at page.Point) {
		t := page.Text{At: at, Size: labelDims, Align: page.Middle, String: l.size, Colour: page.Ink}
		if v.free.cost(t.Bounds().Grow(0.1)) < 1 {
			v.out.Add(l.address, t)
		}
	}
	wide, high, tall := l.box.Width(), l.box.Height(), 8.0
	if figureSize(l.size) > textSize {
		tall = 9.8 // fractions reach above and below their line
	}
	switch {
	case wide >= max(markWidth, sizeWidth)+1.5 && high >= tall:
		c := v.clearIn(l.box, max(markWidth, sizeWidth), 7)
		text(page.Point{X: c.X, Y: c.Y - 0.4}, labelMark, font.Bold, 0, l.mark)
		size(page.Point{X: c.X, Y: c.Y + 3.2})
	case wide >= markWidth+sizeWidth+3.5 && high >= 4:
		c := v.clearIn(l.box, markWidth+sizeWidth+2, 3)
		text(page.Point{X: c.X - float64((sizeWidth+2)/2), Y: c.Y + 1.3}, labelMark, font.Bold, 0, l.mark)
		size(page.Point{X: c.X + float64((markWidth+2)/2), Y: c.Y + 1})
	case wide >= markWidth+1 && high >= 4:
		c := v.clearIn(l.box, markWidth, 3)
		text(page.Point{X: c.X, Y: c.Y + 1.3}, labelMark, font.Bold, 0, l.mark)
	case wide >= 3.4 && high >= markWidth+1:
		c := l.box.Centre()
		text(page.Point{X: c.X + 1.1, Y: c.Y}, 3, font.Bold, -90, l.mark)
	case wide >= 2.4 && high >= 2.4:
		c := v.clearIn(l.box, 2, 2)
		text(page.Point{X: c.X, Y: c.Y + 0.8}, 2.2, font.Bold, 0, l.mark)
	}
}

// clearIn returns the middle of a place of that size in a box where least stands in
// the way, as near to the middle of the box as can be.
func (v *diagramView) clearIn(box page.Box, width, height float64) page.Point {
	v.free.take(v.out.Items)
	c := box.Centre()
	best, least := c, math.Inf(1)
	spareX, spareY := float64(max(0, box.Width()-width-1)/2), float64(max(0, box.Height()-height-0.6)/2)
	for _, ty := range []float64{0, 1, -1} {
		for _, tx := range []float64{0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1} {
			at := page.Point{X: c.X + float64(tx*spareX), Y: c.Y + float64(ty*spareY)}
			cost := v.free.cost(page.NewBox(at.X-float64(width/2)-0.3, at.Y-float64(height/2)-0.2, width+0.6, height+0.4)) + float64(math.Abs(tx)*0.3) + float64(math.Abs(ty)*0.3)
			if cost < least {
				best, least = at, cost
			}
		}
	}
	return best
}

// grain draws a short double arrow along the grain in the piece's lower part.
func (v *diagramView) grain(box page.Box, address string) {
	if box.Width() < 16 || box.Height() < 16 {
		return
	}
	y, c := box.Max.Y-2, box.Centre().X
	path := page.Line(page.Point{X: c - 5, Y: y}, page.Point{X: c + 5, Y: y})
	path = path.Move(page.Point{X: c - 4, Y: y - 0.8}).Line(page.Point{X: c - 5, Y: y}).Line(page.Point{X: c - 4, Y: y + 0.8})
	path = path.Move(page.Point{X: c + 4, Y: y - 0.8}).Line(page.Point{X: c + 5, Y: y}).Line(page.Point{X: c + 4, Y: y + 0.8})
	v.out.Add(address, page.Stroke{Path: path, Width: page.W018, Colour: page.InkSoft})
}

func (v *diagramView) left(l plan.Left) {
	box := v.box(l.Rect)
	if box.Width() < 0.3 || box.Height() < 0.3 {
		return
	}
	if !l.Keep {
		v.out.Add("", page.Hatch{Path: page.Rectangle(box), Angle: -45, Pitch: 1.6, Width: page.W018, Colour: page.Rule})
		return
	}
	v.out.Add("", page.Fill{Path: page.Rectangle(box), Colour: page.Bench})
	v.out.Add("", page.Stroke{Path: page.Rectangle(box), Width: page.W018, Dash: page.Hidden, Colour: page.Ink})
	size := v.speech.Figure(l.Rect.Length.Nm) + " × " + v.speech.Figure(l.Rect.Width.Nm)
	v.labels = append(v.labels, pieceLabel{box, "", word(v.speech, "drawing.keep"), size})
}

// defect crosses a marked flaw out and names it where there is room.
func (v *diagramView) defect(d plan.Defect) {
	box := v.box(d.Rect)
	v.out.Add("", page.Fill{Path: page.Rectangle(box), Colour: page.Bench})
	v.out.Add("", page.Hatch{Path: page.Rectangle(box), Angle: 45, Pitch: 1.2, Width: page.W018, Colour: page.Ink})
	v.out.Add("", page.Hatch{Path: page.Rectangle(box), Angle: -45, Pitch: 1.2, Width: page.W018, Colour: page.Ink})
	v.out.Add("", page.Stroke{Path: page.Rectangle(box), Width: page.W025, Colour: page.Ink})
	if box.Width() > 9 && box.Height() > 4 {
		v.labels = append(v.labels, pieceLabel{box, "", word(v.speech, "defect."+d.Kind), ""})
	}
}

// ends returns where the middle of a saw cut runs.
func (v *diagramView) ends(c plan.SawCut, kerf float64) (p, q page.Point) {
	in := c.In
	a0, c0 := in.Along.Nm.Millimetres(), in.Across.Nm.Millimetres()
	length, width := in.Length.Nm.Millimetres(), in.Width.Nm.Millimetres()
	at := c.At.Nm.Millimetres() + float64(kerf/2)
	if c.Kind == "rip" || c.Kind == "trim edge" {
		return v.at(a0, c0+at), v.at(a0+length, c0+at)
	}
	return v.at(a0+at, c0), v.at(a0+at, c0+width)
}

// line draws the kerf of one saw cut.
func (v *diagramView) line(c plan.SawCut, kerf float64) {
	p, q := v.ends(c, kerf)
	thick := page.W025
	if float64(kerf*v.scale) > 0.4 {
		thick = page.W035
	}
	v.out.Add("", page.Stroke{Path: page.Line(p, q), Width: thick, Colour: page.Act})
}

// ring puts the number of a cut on its line, as near to its start as nothing
// else stands there.
func (v *diagramView) ring(p, q page.Point, n int) {
	const r = 1.7
	step := q.Sub(p)
	long := step.Norm()
	if long < 2*r {
		return
	}
	v.free.take(v.out.Items)
	at, best := p, math.Inf(1)
	for reach := 1.0; reach <= long-1 || reach == 1.0; reach += 0.8 {
		c := p.Add(step.Mul(reach / long))
		// On the line, or beside it where another number stands there already.
		for _, off := range []float64{0, r, -r} {
			c := page.Point{X: c.X - float64(step.Y/long*off), Y: c.Y + float64(step.X/long*off)}
			cost := v.free.cost(page.NewBox(c.X-r-0.2, c.Y-r-0.2, 2*r+0.4, 2*r+0.4)) + reach/long + float64(math.Abs(off)*10)
			if cost < best {
				at, best = c, cost
			}
		}
	}
	v.out.Add("", page.Fill{Path: page.Circle(at, r), Colour: page.Ground})
	v.out.Add("", page.Stroke{Path: page.Circle(at, r), Width: page.W018, Colour: page.Act})
	v.out.Add("", page.Text{At: page.Point{X: at.X, Y: at.Y + 0.75}, Size: 2.1, Weight: font.Bold, Align: page.Middle, Colour: page.Act, String: fmt.Sprint(n)})
}
