package drawing

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/output/tape"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// PartOptions choose how a part is drawn.
type PartOptions struct {
	ThirdAngle bool
	// MostDimensions limits the places that one row of figures shows; of a longer
	// one only the ends of each series are kept, the table of cuts has them all.
	// 0 is 24.
	MostDimensions int
}

// Part draws one part of a row: the face that is worked, an edge and an end,
// with overall sizes, the places of its cuts as running dimensions from end 1,
// edge 1 and face 1, and a letter for each row of its table of cuts. It returns
// the scale used: the largest at which all of it goes into the room.
func Part(p *plan.Plan, row plan.PartRow, s Solids, o PartOptions, roomWidth, roomHeight float64, speech Speech) (page.Drawing, Scale) {
	if len(row.Members) == 0 {
		return page.Drawing{Name: row.Mark}, Scale{1, 1}
	}
	member := row.Members[0]
	part, ok := partOf(p.Piece, member)
	if !ok || s.Solid(member) == nil {
		return page.Drawing{Name: row.Mark}, Scale{1, 1}
	}
	if o.MostDimensions == 0 {
		o.MostDimensions = 24
	}
	own := tape.Of(p, p.Units())
	d := partDrawing{part: part, tape: own, shown: own.Sizes(row), solids: s, speech: speech, options: o, rows: naming.CutRows(p.Piece, member), sheet: row.Sheet}
	for _, r := range d.rows {
		d.cuts = append(d.cuts, r.Cuts...)
	}
	d.face = workedFace(d.cuts)
	d.views = partViews(d.face, o.ThirdAngle)
	d.collect()
	for i, c := range []camera{d.views.face, d.views.edge, d.views.end} {
		body := solid.Placed{Solid: s.Solid(member), Frame: vec.World}
		d.seen[i] = hidden.Draw([]solid.Placed{body}, hidden.View{Sight: c.toward().Mul(-1), Up: c.up, Hidden: true}).Strokes
	}
	alt := speech.Say(message.New("drawing.part-alt", message.Text("mark", row.Mark), message.Text("name", row.Name),
		message.Length("length", d.shown[0]), message.Length("width", d.shown[1]), message.Length("thickness", d.shown[2]),
		message.Count("cuts", len(d.cuts))))
	for _, scale := range scales {
		if scale.Up > 2*scale.Down {
			continue
		}
		d.scale, d.out = scale, page.Drawing{Name: row.Mark, Alt: alt}
		d.layout()
		if area := d.out.Area(); area.Width() <= roomWidth-0.5 && area.Height() <= roomHeight {
			break
		}
	}
	d.callouts()
	d.grainArrow()
	return d.out, d.scale
}

type partDrawing struct {
	part    piece.Part
	tape    *tape.Tape
	shown   [3]unit.Length // its sizes as they are read off a tape
	sheet   bool
	solids  Solids
	speech  Speech
	options PartOptions
	rows    []naming.CutRow
	cuts    []piece.Cut
	face    piece.Side
	views   views
	seen    [3][]hidden.Stroke
	free    obstacles
	out     page.Drawing
	scale   Scale
	// places along the length, across the width and through the thickness that
	// are dimensioned from the low end, edge or face.
	along, across, through []mark
	// where the three views lie on paper
	faceBox, edgeBox, endBox page.Box
}

func partOf(p *piece.Piece, a address.Address) (piece.Part, bool) {
	i := slices.IndexFunc(p.Parts, func(q piece.Part) bool { return q.Address == a })
	if i < 0 {
		return piece.Part{}, false
	}
	return p.Parts[i], true
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
