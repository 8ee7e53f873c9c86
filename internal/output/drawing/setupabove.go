package drawing

import (
	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// SetupAbove sketches a placement from above, the maker at the lower edge: fence
// or mitre gauge, stops, cutter, and an arrow for the feed. It is not to scale;
// the figures are the card's own. It returns false where no stop is set.
func SetupAbove(p *plan.Plan, card plan.Setup, pm plan.Placement, roomWidth float64, speech Speech) (page.Drawing, bool) {
	_, ok := markedPart(p, pm.Mark)
	if !ok {
		return page.Drawing{}, false
	}
	s := above{sketch: sketch{speech: speech, read: reader(p, card, pm, speech), mark: pm.Mark}, width: roomWidth}
	s.left, s.hasLeft = setting(card, pm, "stop left")
	s.right, s.hasRight = setting(card, pm, "stop right")
	s.leftEdge, _ = setting(card, pm, "stop left to cutter edge")
	s.rightEdge, _ = setting(card, pm, "stop right to cutter edge")
	key := "drawing.above-alt"
	switch blade, atBlade := setting(card, pm, "stop to blade"); {
	case s.hasLeft || s.hasRight:
		s.atFence()
	case atBlade:
		key = "drawing.gauge-alt"
		s.atGauge(blade)
	default:
		return page.Drawing{}, false
	}
	s.out.Name = card.ID
	s.out.Alt = speech.Say(message.New(key, message.Text("mark", pm.Mark)))
	return s.out, true
}

type above struct {
	sketch
	width                            float64
	left, right, leftEdge, rightEdge unit.Length
	hasLeft, hasRight                bool
}

// Sizes of the view from above on paper, in millimetres.
const (
	railHigh = 4.0
	workHigh = 11.0
	stopWide = 4.0
	boreWide = 2.6 // radius of the cutter
)

// atFence draws a router table: the fence behind, stops on it, the feed from
// right to left.
func (s *above) atFence() {
	cutter := float64(s.width / 2)
	switch {
	case !s.hasRight:
		cutter = float64(s.width * 0.68)
	case !s.hasLeft:
		cutter = float64(s.width * 0.32)
	}
	s.rail(0)
	low, high := stopWide, s.width-stopWide
	work := page.NewBox(low, railHigh, high-low, workHigh)
	switch {
	case s.hasLeft && s.hasRight:
		// The work fills less than the way between the stops: it stands at the
		// right one, where the cut begins.
		work.Min.X = low + float64((cutter-low)*0.45)
	case s.hasLeft:
		work.Max.X = cutter + float64((high-cutter)*0.6)
	default:
		work.Min.X = low + float64((cutter-low)*0.4)
	}
	s.board(work)
	centre := page.Point{X: cutter, Y: railHigh + workHigh*0.45}
	s.out.Add("", page.Fill{Path: page.Circle(centre, boreWide), Colour: page.Ground})
	s.out.Add("", page.Stroke{Path: page.Circle(centre, boreWide), Width: page.W035, Colour: page.Act})
	base := railHigh + workHigh
	if s.hasLeft {
		s.stop(0)
		s.pair(low, cutter, cutter-boreWide, base, s.left, s.leftEdge)
	}
	if s.hasRight {
		s.stop(high)
		s.pair(high, cutter, cutter+boreWide, base, s.right, s.rightEdge)
	}
	s.arrow(page.Point{X: s.width, Y: base + 22}, page.Point{X: s.width - 14, Y: base + 22})
}

// pair draws the two distances of a stop: to the cutter's edge and its centre.
func (s *above) pair(stop, cutter, edge, base float64, centre, toEdge unit.Length) {
	at := func(x float64) page.Point { return page.Point{X: x, Y: base} }
	size := max(figureSize(s.read(centre)), figureSize(s.read(toEdge)))
	list := []dimension{{a: at(stop), b: at(cutter), line: base + float64(4*size), text: s.read(centre), plate: true}}
	if toEdge > 0 {
		list = append(list, dimension{a: at(stop), b: at(edge), line: base + float64(2*size), text: s.read(toEdge), plate: true})
	}
	drawAll(&s.out, list...)
}

// atGauge draws a crosscut: the mitre gauge on the maker's side, the stop at its
// left, the blade, the feed away from the maker.
func (s *above) atGauge(length unit.Length) {
	blade := float64(s.width * 0.74)
	s.board(page.NewBox(stopWide, 7, blade-stopWide+8, workHigh))
	base := 7 + workHigh
	s.rail(base)
	s.stopAt(page.NewBox(0, 7+workHigh*0.3, stopWide, workHigh*0.7))
	s.out.Add("", page.Fill{Path: page.Rectangle(page.NewBox(blade, 0, 1.2, 7+workHigh*0.8)), Colour: page.Act})
	at := func(x float64) page.Point { return page.Point{X: x, Y: base + railHigh} }
	dimension{a: at(stopWide), b: at(blade), line: base + railHigh + 6, text: s.read(length)}.draw(&s.out)
	s.arrow(page.Point{X: s.width - 4, Y: base + railHigh}, page.Point{X: s.width - 4, Y: base - 8})
}

// rail is the fence, or the face of the mitre gauge.
func (s *above) rail(y float64) {
	box := page.NewBox(0, y, s.width, railHigh)
	s.out.Add("", page.Hatch{Path: page.Rectangle(box), Angle: 45, Pitch: 2, Width: page.W018, Colour: page.Rule})
	edge := box.Max.Y
	if y > 0 {
		edge = box.Min.Y
	}
	s.out.Add("", page.Stroke{Path: page.Line(page.Point{X: 0, Y: edge}, page.Point{X: s.width, Y: edge}), Width: page.W050, Colour: page.Ink})
}

func (s *above) board(box page.Box) {
	s.out.Add("", page.Fill{Path: page.Rectangle(box), Colour: page.Straw})
	s.out.Add("", page.Stroke{Path: page.Rectangle(box), Width: page.W035, Colour: page.Ink})
	s.out.Add("", page.Text{At: page.Point{X: box.Min.X + float64(box.Width()/3), Y: box.Centre().Y + 1}, Size: textSize, Weight: font.Bold, Align: page.Middle, Colour: page.Ink, String: s.speech.Own(s.mark)})
}

// stop is a block on the fence.
func (s *above) stop(x float64) { s.stopAt(page.NewBox(x, railHigh, stopWide, workHigh*0.7)) }

func (s *above) stopAt(box page.Box) {
	s.out.Add("", page.Fill{Path: page.Rectangle(box), Colour: page.Ink})
}

// arrow shows the feed.
func (s *above) arrow(from, to page.Point) {
	step := to.Sub(from)
	u := step.Mul(1 / step.Norm())
	side := page.Point{X: -u.Y, Y: u.X}
	back := to.Sub(u.Mul(2.6))
	s.out.Add("", page.Stroke{Path: page.Line(from, back), Width: page.W035, Colour: page.Act})
	s.out.Add("", page.Fill{Path: page.Polygon(to, back.Add(side.Mul(1.1)), back.Sub(side.Mul(1.1))), Colour: page.Act})
	at, align := page.Point{X: to.X - 1.5, Y: to.Y + 0.9}, page.End
	if u.Y < 0 {
		at, align = page.Point{X: to.X, Y: to.Y - 1.5}, page.Middle
	}
	s.out.Add("", page.Text{At: at, Size: labelSize, Align: align, Colour: page.InkSoft, String: word(s.speech, "drawing.feed")})
}
