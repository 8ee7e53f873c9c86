package drawing

import (
	"strings"

	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Setup sketches a placement at a table machine, seen along the feed: table,
// fence, the work standing on its lower side, the cutter at its height. It is to
// scale where the work is wide enough; the figures are the card's own. It
// returns false where the machine has no fence to sketch.
func Setup(p *plan.Plan, card plan.Setup, pm plan.Placement, roomWidth, roomHeight float64, speech Speech) (page.Drawing, bool) {
	edge, okEdge := setting(card, pm, "fence to cutter edge")
	height, okHeight := setting(card, pm, "height")
	if !okEdge || !okHeight || pm.Down == "" || pm.Fence == "" {
		return page.Drawing{}, false
	}
	var row plan.PartRow
	for _, r := range p.Parts {
		if r.Mark == pm.Mark {
			row = r
		}
	}
	if len(row.Members) == 0 {
		return page.Drawing{}, false
	}
	part, ok := partOf(p.Piece, row.Members[0])
	if !ok {
		return page.Drawing{}, false
	}
	s := sketch{speech: speech, edge: edge, height: height, cutter: card.CutterSize.Nm, round: strings.Contains(card.CutterLabel, "round")}
	fence, _ := pm.Fence.Axis()
	down, _ := pm.Down.Axis()
	s.wide, s.thick = part.Sizes()[fence].Nm, part.Sizes()[down].Nm
	s.sides = [2]piece.Side{pm.Down, pm.Fence}
	s.draw(roomWidth, roomHeight)
	s.out.Name = card.ID
	s.out.Alt = speech.Say(message.New("drawing.setup-alt", message.Text("mark", pm.Mark), message.Length("edge", edge), message.Length("height", height)))
	return s.out, true
}

// setting returns a figure of the placement, or of its card.
func setting(card plan.Setup, pm plan.Placement, name string) (unit.Length, bool) {
	for _, list := range [][]plan.Setting{pm.Settings, card.Settings} {
		for _, s := range list {
			if s.Word == name {
				return s.Figure.Nm, true
			}
		}
	}
	return 0, false
}

type sketch struct {
	speech               Speech
	edge, height, cutter unit.Length
	wide, thick          unit.Length
	round                bool
	sides                [2]piece.Side
	out                  page.Drawing
}

func (s *sketch) draw(roomWidth, roomHeight float64) {
	const fenceWide, above, below, right = 6.0, 12.0, 14.0, 18.0
	wide, thick := s.wide.Millimetres(), s.thick.Millimetres()
	f := min((roomWidth-fenceWide-right)/wide, (roomHeight-above-below)/thick, 2)
	table := above + thick*f
	face := fenceWide
	// table, fence, work
	s.out.Add("", page.Hatch{Path: page.Rectangle(page.NewBox(0, above-6, fenceWide, table-above+6)), Angle: 45, Pitch: 2, Width: page.W018, Colour: page.Rule})
	s.out.Add("", page.Stroke{Path: page.Line(page.Point{X: face, Y: above - 6}, page.Point{X: face, Y: table}), Width: page.W050, Colour: page.Ink})
	work := page.NewBox(face, above, wide*f, thick*f)
	s.out.Add("", page.Fill{Path: page.Rectangle(work), Colour: page.Straw})
	s.cutterShape(face, table, f)
	s.out.Add("", page.Stroke{Path: page.Rectangle(work), Width: page.W035, Colour: page.Ink})
	s.out.Add("", page.Stroke{Path: page.Line(page.Point{X: 0, Y: table}, page.Point{X: face + wide*f + right, Y: table}), Width: page.W050, Colour: page.Ink})
	s.figures(face, table, f, work)
}

func (s *sketch) cutterShape(face, table, f float64) {
	d := s.cutter.Millimetres() * f
	left := face + s.edge.Millimetres()*f
	top := table - s.height.Millimetres()*f
	path := page.From(page.Point{X: left, Y: table + 5}).Line(page.Point{X: left, Y: top}).
		Line(page.Point{X: left + d, Y: top}).Line(page.Point{X: left + d, Y: table + 5}).Close()
	if r := d / 2; s.round && r > 0 {
		mid := page.Point{X: left + r, Y: top + r}
		path = page.From(page.Point{X: left, Y: table + 5}).Line(page.Point{X: left, Y: mid.Y}).
			Arc(page.Point{X: left + d, Y: mid.Y}, mid, false).Line(page.Point{X: left + d, Y: table + 5}).Close()
	}
	s.out.Add("", page.Fill{Path: path, Colour: page.Ground})
	s.out.Add("", page.Stroke{Path: path, Width: page.W035, Colour: page.Act})
}

func (s *sketch) figures(face, table, f float64, work page.Box) {
	edge := face + s.edge.Millimetres()*f
	dimension{a: page.Point{X: face, Y: table}, b: page.Point{X: edge, Y: table}, line: table + 8, text: s.speech.Length(s.edge)}.draw(&s.out)
	right := work.Max.X
	top := table - s.height.Millimetres()*f
	dimension{a: page.Point{X: right, Y: table}, b: page.Point{X: right, Y: top}, vertical: true, line: right + 6, text: s.speech.Length(s.height)}.draw(&s.out)
	label := func(at page.Point, key string) {
		s.out.Add("", page.Text{At: at, Size: 2.6, Weight: font.Regular, Colour: page.InkSoft, String: word(s.speech, key)})
	}
	label(page.Point{X: face + 1, Y: work.Min.Y - 1.5}, "side."+string(s.sides[1]))
	label(page.Point{X: face, Y: 3}, "drawing.fence")
}
