package drawing

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/font"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/message"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// PartOptions choose how a part is drawn.
type PartOptions struct {
	ThirdAngle bool
	// MostDimensions limits the dimension lines on one side of a view; what goes
	// beyond stands in the table of cuts only.
	MostDimensions int
}

// Part draws one part of a row: the face that is worked, an edge and an end,
// with overall sizes, the places of its cuts, and the reference marks that the
// set-up cards speak of. It returns the scale used.
func Part(p *plan.Plan, row plan.PartRow, s Solids, o PartOptions, roomWidth, roomHeight float64, speech Speech) (page.Drawing, Scale) {
	member := row.Members[0]
	part, ok := partOf(p.Piece, member)
	if !ok || s.Solid(member) == nil {
		return page.Drawing{Name: row.Mark}, Scale{1, 1}
	}
	if o.MostDimensions == 0 {
		o.MostDimensions = 5
	}
	d := partDrawing{part: part, solids: s, speech: speech, options: o, cuts: cutsOf(p.Piece, member)}
	d.face = workedFace(d.cuts)
	d.views = partViews(d.face, o.ThirdAngle)
	d.collect()
	d.layout(roomWidth, roomHeight)
	d.out.Name = row.Mark
	d.out.Alt = speech.Say(message.New("drawing.part-alt", message.Text("mark", row.Mark), message.Text("name", row.Name),
		message.Length("length", row.Length.Nm), message.Length("width", row.Width.Nm), message.Length("thickness", row.Thickness.Nm),
		message.Count("cuts", len(d.cuts))))
	return d.out, d.scale
}

type partDrawing struct {
	part    piece.Part
	solids  Solids
	speech  Speech
	options PartOptions
	cuts    []piece.Cut
	face    piece.Side
	views   views
	out     page.Drawing
	scale   Scale
	// places along the length, across the width and through the thickness that
	// are dimensioned from the low end, edge or face.
	along, across, through []mark
	// where the low corners of the three views lie on paper, and their sizes
	faceBox, edgeBox, endBox page.Box
}

// mark is a place on one local axis that is dimensioned, and what lies there.
type mark struct {
	at      unit.Length
	address address.Address
}

func partOf(p *piece.Piece, a address.Address) (piece.Part, bool) {
	i := slices.IndexFunc(p.Parts, func(q piece.Part) bool { return q.Address == a })
	if i < 0 {
		return piece.Part{}, false
	}
	return p.Parts[i], true
}

func cutsOf(p *piece.Piece, a address.Address) []piece.Cut {
	var out []piece.Cut
	for _, c := range p.Cuts {
		if c.Part == a {
			out = append(out, c)
		}
	}
	return out
}

// workedFace is the face that most cuts open on.
func workedFace(cuts []piece.Cut) piece.Side {
	low, high := 0, 0
	for _, c := range cuts {
		var open piece.Side
		switch {
		case c.Slot != nil:
			open = c.Slot.Open
		case c.Bore != nil:
			open = c.Bore.Open
		}
		switch open {
		case piece.FaceLow:
			low++
		case piece.FaceHigh:
			high++
		}
	}
	if low > high {
		return piece.FaceLow
	}
	return piece.FaceHigh
}

// collect gathers the places to dimension: limits of slots, centres of bores.
// A series of channels is dimensioned by its first and last centre only; the
// table of cuts has them all.
func (d *partDrawing) collect() {
	add := func(axis piece.Local, at unit.Length, a address.Address) {
		whole := d.part.Sizes()[axis].Nm
		if at <= 0 || at >= whole {
			return
		}
		list := [3]*[]mark{&d.along, &d.across, &d.through}[axis]
		if !slices.ContainsFunc(*list, func(m mark) bool { return m.at == at }) {
			*list = append(*list, mark{at, a})
		}
	}
	last := map[address.Address]int{}
	for _, c := range d.cuts {
		last[c.Series] = max(last[c.Series], c.Nth)
	}
	for _, c := range d.cuts {
		switch {
		case c.Slot != nil && c.Series != "":
			if c.Nth == 1 || c.Nth == last[c.Series] {
				add(c.Slot.Across(), (c.Slot.Near.Nm+c.Slot.Far.Nm)/2, c.Address)
			}
		case c.Slot != nil:
			d.collectSlot(c, add)
		case c.Bore != nil:
			axes := boreAxes(c.Bore.Open)
			add(axes[0], c.Bore.At[0].Nm, c.Address)
			add(axes[1], c.Bore.At[1].Nm, c.Address)
		case c.Dip != nil:
			axis := piece.AlongLength
			if open, _ := c.Dip.Open.Axis(); open == piece.AlongLength {
				axis = piece.AlongWidth
			}
			add(axis, c.Dip.Centre.Nm-c.Dip.Chord.Nm/2, c.Address)
			add(axis, c.Dip.Centre.Nm+c.Dip.Chord.Nm/2, c.Address)
		}
	}
	for _, list := range []*[]mark{&d.along, &d.across, &d.through} {
		slices.SortFunc(*list, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
		if n := d.options.MostDimensions; len(*list) > n {
			*list = (*list)[:n]
		}
	}
}

func (d *partDrawing) collectSlot(c piece.Cut, add func(piece.Local, unit.Length, address.Address)) {
	s := c.Slot
	add(s.Across(), s.Near.Nm, c.Address)
	add(s.Across(), s.Far.Nm, c.Address)
	if !s.StartOpen {
		add(s.Run, s.From.Nm, c.Address)
	}
	if !s.EndOpen {
		add(s.Run, s.To.Nm, c.Address)
	}
	open, high := s.Open.Axis()
	depth := s.Depth.Nm
	if high {
		depth = d.part.Sizes()[open].Nm - depth
	}
	add(open, depth, c.Address)
}

// boreAxes returns the two axes that a bore's centre is given along.
func boreAxes(open piece.Side) [2]piece.Local {
	axis, _ := open.Axis()
	switch axis {
	case piece.AlongLength:
		return [2]piece.Local{piece.AlongWidth, piece.AlongThickness}
	case piece.AlongWidth:
		return [2]piece.Local{piece.AlongLength, piece.AlongThickness}
	}
	return [2]piece.Local{piece.AlongLength, piece.AlongWidth}
}

// lines returns the room that n dimension lines take beyond an outline.
func lines(n int) float64 { return firstLine + float64(nextLine*float64(n)) }

// layout chooses the scale, places the three views and draws everything.
func (d *partDrawing) layout(roomWidth, roomHeight float64) {
	length, width, thick := d.part.Length.Nm.Millimetres(), d.part.Width.Nm.Millimetres(), d.part.Thickness.Nm.Millimetres()
	left := lines(len(d.across)) + 7
	between := 11.0
	right := lines(0) + 8
	above := lines(len(d.along))
	below := lines(0)
	d.scale = fitting(length+thick, width+thick, roomWidth-left-between-right, roomHeight-above-between-below-4, Scale{2, 1})
	f := d.scale.Factor()
	x0, y0 := left, above
	d.faceBox = page.NewBox(x0, y0, length*f, width*f)
	d.edgeBox = page.NewBox(x0, d.faceBox.Max.Y+between, length*f, thick*f)
	d.endBox = page.NewBox(d.faceBox.Max.X+between+4, y0, thick*f, width*f)
	d.view(d.views.face, d.faceBox)
	d.view(d.views.edge, d.edgeBox)
	d.view(d.views.end, d.endBox)
	d.dimensions()
	d.references()
}

// view draws the part seen by a camera into a box.
func (d *partDrawing) view(c camera, box page.Box) {
	body := solid.Placed{Solid: d.solids.Solid(d.part.Address), Frame: vec.World}
	seen := hidden.Draw([]solid.Placed{body}, hidden.View{Sight: c.toward().Mul(-1), Up: c.up, Hidden: true})
	low, high := d.flatBox(c)
	f := d.scale.Factor()
	pl := place{scale: f, origin: page.Point{X: box.Min.X - float64(low.X*f), Y: box.Min.Y + float64(high.Y*f)}}
	pl.add(&d.out, seen.Strokes, page.Thick, func(s hidden.Stroke) string {
		for _, t := range s.Tags {
			if a := d.solids.Cut(d.part.Address, t); a != "" {
				return string(a)
			}
		}
		return string(d.part.Address)
	})
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
			return box.Max.Y - at*f
		}
		return box.Min.Y + at*f
	}
	if c.right.Dot(axis) > 0 {
		return box.Min.X + at*f
	}
	return box.Max.X - at*f
}

func (d *partDrawing) dimensions() {
	f := d.scale.Factor()
	// along the length, above the face view, each from the low end; the whole
	// outermost
	start := on(d.views.face, alongLength, 0, d.faceBox, f, false)
	for i, m := range append(slices.Clone(d.along), mark{d.part.Length.Nm, d.part.Address}) {
		x := on(d.views.face, alongLength, m.at.Millimetres(), d.faceBox, f, false)
		y := d.faceBox.Min.Y
		dimension{a: page.Point{X: start, Y: y}, b: page.Point{X: x, Y: y}, line: y - firstLine - float64(nextLine*float64(i)),
			text: d.speech.Length(m.at), address: string(m.address)}.draw(&d.out)
	}
	edge := on(d.views.face, alongWidth, 0, d.faceBox, f, true)
	for i, m := range append(slices.Clone(d.across), mark{d.part.Width.Nm, d.part.Address}) {
		y := on(d.views.face, alongWidth, m.at.Millimetres(), d.faceBox, f, true)
		x := d.faceBox.Min.X
		dimension{a: page.Point{X: x, Y: edge}, b: page.Point{X: x, Y: y}, vertical: true, line: x - firstLine - float64(nextLine*float64(i)),
			text: d.speech.Length(m.at), address: string(m.address)}.draw(&d.out)
	}
	// thickness and depths beside the end view
	face := on(d.views.end, alongThickness, 0, d.endBox, f, false)
	x := on(d.views.end, alongThickness, d.part.Thickness.Nm.Millimetres(), d.endBox, f, false)
	y := d.endBox.Min.Y
	dimension{a: page.Point{X: face, Y: y}, b: page.Point{X: x, Y: y}, line: y - firstLine, text: d.speech.Length(d.part.Thickness.Nm), address: string(d.part.Address)}.draw(&d.out)
}

// references marks end 1 and edge 1, from which the cards measure, and the face
// that is shown.
func (d *partDrawing) references() {
	f := d.scale.Factor()
	x := on(d.views.face, alongLength, 0, d.faceBox, f, false)
	y := on(d.views.face, alongWidth, 0, d.faceBox, f, true)
	step := -1.0
	if y > d.faceBox.Centre().Y {
		step = 1
	}
	corner := page.Polygon(page.Point{X: x, Y: y}, page.Point{X: x + 3, Y: y}, page.Point{X: x, Y: y - 3*step})
	d.out.Add(string(d.part.Address), page.Fill{Path: corner, Colour: page.Ink})
	note := d.speech.Say(message.New("drawing.reference", message.Word("face", "side."+string(d.face))))
	d.out.Add("", page.Text{At: page.Point{X: d.faceBox.Min.X, Y: d.edgeBox.Max.Y + 4.2}, Size: 2.6, Weight: font.Regular, Colour: page.InkSoft, String: note})
}
