package drawing

import (
	"slices"

	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/output/tape"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Setup sketches a placement at a table machine, seen along the feed from where
// the work goes in: table, fence at the right, the work on its lower side, the
// cutter at its height; fence to cutter near edge and centre, and the height. It
// is to scale but where the work is broken off. It returns false where the
// machine has no fence to sketch.
func Setup(p *plan.Plan, card plan.Setup, pm plan.Placement, roomWidth, roomHeight float64, speech Speech) (page.Drawing, bool) {
	s, ok := newSketch(p, card, pm, speech)
	if !ok {
		return page.Drawing{}, false
	}
	s.section(roomWidth, roomHeight)
	s.out.Name = card.ID
	s.out.Alt = speech.Say(message.New("drawing.setup-alt", message.Text("mark", pm.Mark), message.Length("edge", s.near), message.Length("height", s.height)))
	return s.out, true
}

// sketch is a placement with the figures that a sketch shows.
type sketch struct {
	speech Speech
	// read gives the figure for a length of the card as the card prints it.
	read func(unit.Length) string
	mark string
	// near is from the fence to the cutter's near edge, negative where the fence
	// covers a part of it; covered shows the far edge instead.
	near, height, cutter unit.Length
	covered, round, vee  bool
	through              bool // a saw cut through the work: no height is set
	wide, thick          unit.Length
	down, fence          piece.Side
	out                  page.Drawing
}

func newSketch(p *plan.Plan, card plan.Setup, pm plan.Placement, speech Speech) (sketch, bool) {
	s := sketch{speech: speech, read: reader(p, card, pm, speech), mark: pm.Mark, cutter: card.CutterSize.Nm, round: card.CutterShape == "round-nose", vee: card.CutterShape == "v-groove", down: pm.Down, fence: pm.Fence}
	part, ok := markedPart(p, pm.Mark)
	if !ok || pm.Down == "" || pm.Fence == "" || s.cutter <= 0 {
		return s, false
	}
	sizes := part.Sizes()
	fence, _ := pm.Fence.Axis()
	down, _ := pm.Down.Axis()
	s.wide, s.thick = sizes[fence].Nm, sizes[down].Nm
	if s.height, ok = setting(card, pm, "height"); !ok {
		s.through, s.height = true, s.thick+unit.MM(3)
	}
	if far, ok := setting(card, pm, "fence to cutter far edge"); ok {
		s.near, s.covered = far-s.cutter, true
		return s, true
	}
	if s.near, ok = setting(card, pm, "fence to cutter edge"); !ok {
		s.near, ok = setting(card, pm, "blade to fence")
	}
	return s, ok
}

// reader gives lengths as a card prints its settings.
func reader(p *plan.Plan, card plan.Setup, pm plan.Placement, speech Speech) func(unit.Length) string {
	own, all := tape.Of(p, p.Units()), slices.Concat(pm.Settings, card.Settings)
	return func(l unit.Length) string { return speech.Figure(own.Read(l, all)) }
}

// markedPart returns the first part of the row with that mark.
func markedPart(p *plan.Plan, mark string) (piece.Part, bool) {
	for _, r := range p.Parts {
		if r.Mark == mark && len(r.Members) > 0 {
			return partOf(p.Piece, r.Members[0])
		}
	}
	return piece.Part{}, false
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

// Sizes of the section on paper, in millimetres.
const (
	fenceWide  = 7.0
	sketchLeft = 15.0 // for the height and its figure
	sketchTop  = 6.0
)

// section places fence, work and cutter and draws them.
func (s *sketch) section(roomWidth, roomHeight float64) {
	near, wide, thick, size := s.near.Millimetres(), s.wide.Millimetres(), s.thick.Millimetres(), s.cutter.Millimetres()
	high := max(thick, s.height.Millimetres())
	below := 7 + float64(1.7*s.lineStep()) // the shank and two lines of figures
	f := min((roomHeight-sketchTop-below)/high, 18/thick, 22/size, 3)
	roomWidth -= 11 // for the name of the side at the fence
	face := roomWidth - fenceWide
	most := (face - sketchLeft) * 0.5
	gap, gapBroken := near*f, false
	if gap > most {
		gap, gapBroken = most, true
	}
	right := face - gap             // the cutter's near edge
	left := right - float64(size*f) // and its far one
	beyond := float64((wide - near - size) * f)
	room := left - sketchLeft
	broken := beyond > room
	beyond = max(0, min(beyond, room))
	table := roomHeight - below
	work := page.NewBox(left-beyond, table-float64(thick*f), face-left+beyond, float64(thick*f))
	s.scenery(face, table, roomWidth)
	s.out.Add("", page.Fill{Path: page.Rectangle(work), Colour: page.Straw})
	s.tool(left, right, table, float64(s.height.Millimetres()*f))
	s.outline(work, broken)
	if gapBroken {
		s.breakAt((right+face)/2, work)
	}
	s.figures(face, left, right, table, float64(s.height.Millimetres()*f), work)
}

// lineStep is the distance of dimension lines that their figures need.
func (s *sketch) lineStep() float64 {
	size := textSize
	for _, l := range []unit.Length{s.near, s.near + s.cutter/2, s.near + s.cutter} {
		size = max(size, figureSize(s.read(l)))
	}
	return size * 2
}

// scenery draws the fence at the right and the table below.
func (s *sketch) scenery(face, table, roomWidth float64) {
	fence := page.NewBox(face, sketchTop, fenceWide, table-sketchTop)
	s.out.Add("", page.Hatch{Path: page.Rectangle(fence), Angle: 45, Pitch: 2, Width: page.W018, Colour: page.Rule})
	s.out.Add("", page.Stroke{Path: page.From(page.Point{X: roomWidth, Y: fence.Min.Y}).Line(fence.Min).Line(page.Point{X: face, Y: table}), Width: page.W050, Colour: page.Ink})
	s.out.Add("", page.Stroke{Path: page.Line(page.Point{X: 0, Y: table}, page.Point{X: roomWidth, Y: table}), Width: page.W070, Colour: page.Ink})
}

// tool draws the cutter, from below the table to its height.
func (s *sketch) tool(left, right, table, height float64) {
	const below = 3.5
	top := table - height
	path := page.From(page.Point{X: left, Y: table + below}).Line(page.Point{X: left, Y: top}).
		Line(page.Point{X: right, Y: top}).Line(page.Point{X: right, Y: table + below}).Close()
	if r := float64((right - left) / 2); s.round && r > 0 {
		mid := page.Point{X: left + r, Y: top + r}
		low := max(table+below, mid.Y)
		path = page.From(page.Point{X: left, Y: low}).Line(page.Point{X: left, Y: mid.Y}).
			Arc(page.Point{X: right, Y: mid.Y}, mid, false).Line(page.Point{X: right, Y: low}).Close()
	}
	if s.vee {
		path = page.From(page.Point{X: left, Y: table + below}).Line(page.Point{X: left, Y: table}).Line(page.Point{X: (left + right) / 2, Y: top}).
			Line(page.Point{X: right, Y: table}).Line(page.Point{X: right, Y: table + below}).Close()
	}
	s.out.Add("", page.Fill{Path: path, Colour: page.Ground})
	s.out.Add("", page.Hatch{Path: path, Angle: -45, Pitch: 1.2, Width: page.W018, Colour: page.Act})
	s.out.Add("", page.Stroke{Path: path, Width: page.W035, Colour: page.Act})
}

// outline draws the work's outline, open with a wavy end where it is broken off.
func (s *sketch) outline(work page.Box, broken bool) {
	line := func(p page.Path, w page.Width) {
		s.out.Add("", page.Stroke{Path: p, Width: w, Colour: page.Ink})
	}
	if !broken {
		line(page.Rectangle(work), page.W035)
		return
	}
	line(page.From(work.Min).Line(page.Point{X: work.Max.X, Y: work.Min.Y}).Line(work.Max).Line(page.Point{X: work.Min.X, Y: work.Max.Y}), page.W035)
	line(wave(work.Min.X, work.Min.Y-0.8, work.Max.Y), page.W018)
}

// breakAt takes a stretch out of the work.
func (s *sketch) breakAt(x float64, work page.Box) {
	s.out.Add("", page.Fill{Path: page.Rectangle(page.NewBox(x-0.9, work.Min.Y-0.3, 1.8, work.Height()+0.1)), Colour: page.Ground})
	for _, at := range []float64{x - 0.9, x + 0.9} {
		s.out.Add("", page.Stroke{Path: wave(at, work.Min.Y-0.8, work.Max.Y), Width: page.W018, Colour: page.Ink})
	}
}

// wave is the line of a break, from top to bottom.
func wave(x, top, bottom float64) page.Path {
	third := (bottom - top) / 3
	return page.From(page.Point{X: x, Y: top}).
		Curve(page.Point{X: x - 1.2, Y: top + third}, page.Point{X: x + 1.2, Y: bottom - third}, page.Point{X: x, Y: bottom})
}

// figures writes the distances of the fence below the table, the height at the
// left, and which side is which.
func (s *sketch) figures(face, left, right, table, height float64, work page.Box) {
	at := func(x, y float64) page.Point { return page.Point{X: x, Y: y} }
	middle, centre := (left+right)/2, s.near+s.cutter/2
	edge, shown := right, s.near
	if s.covered {
		edge, shown = left, s.near+s.cutter
	}
	low := table + 5 + float64(s.lineStep()/2)
	var list []dimension
	if s.through {
		list = append(list, dimension{a: at(right, table+3.5), b: at(face, table), line: low, text: s.read(s.near)})
	} else {
		if centre > 0 {
			list = append(list, dimension{a: at(middle, table+3.5), b: at(face, table), line: low, text: s.read(centre), before: true, plate: true})
			low += s.lineStep()
		}
		list = append(list, dimension{a: at(edge, table+3.5), b: at(face, table), line: low, text: s.read(shown), before: true, plate: true})
		list = append(list, dimension{a: at(work.Min.X, table), b: at(left, table-height), vertical: true, line: work.Min.X - 5, text: s.read(s.height), plate: true})
	}
	drawAll(&s.out, list...)
	// The mark stands over the larger part of the work, clear of the cutter.
	over := (work.Min.X + left) / 2
	if face-right > left-work.Min.X {
		over = (right + face) / 2
	}
	s.note(at(over, work.Min.Y-1.8), page.Middle, s.speech.Own(s.mark), true)
	s.note(at(face+fenceWide+1.2, (work.Min.Y+table)/2), page.Start, word(s.speech, "side."+string(s.fence)), false)
	s.note(at(0, table+4), page.Start, word(s.speech, "drawing.down", message.Word("side", "side."+string(s.down))), false)
	s.note(at(face+fenceWide, sketchTop-1.6), page.End, word(s.speech, "drawing.fence"), false)
}

func (s *sketch) note(at page.Point, align page.Align, text string, strong bool) {
	t := page.Text{At: at, Size: labelSize, Align: align, Colour: page.InkSoft, String: text}
	if strong {
		t.Weight, t.Colour, t.Size = font.Bold, page.Ink, textSize
	}
	s.out.Add("", t)
}
