package bodies

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Box is limited along three axes: right, back and up of the piece, or length,
// width and thickness of a part, as the function that gives it says.
type Box [3]Span

// Span is a stretch along one axis.
type Span struct{ Low, High unit.Length }

// Size returns the stretch's length.
func (s Span) Size() unit.Length { return s.High - s.Low }

// Common returns what two stretches share; its size is not above nought where
// that is nothing.
func (s Span) Common(t Span) Span { return Span{max(s.Low, t.Low), min(s.High, t.High)} }

// Overlaps reports whether two stretches share more than a point.
func (s Span) Overlaps(t Span) bool { return s.Common(t).Size() > 0 }

func boxOf(e [3]piece.Extent) Box {
	var b Box
	for i := range e {
		b[i] = Span{e[i].Low.Nm, e[i].High.Nm}
	}
	return b
}

// Body returns the uncut body of a part in the piece.
func Body(p *piece.Part) Box { return boxOf(p.Extent) }

// Overlaps reports whether two boxes share a volume.
func (b Box) Overlaps(c Box) bool {
	return b[0].Overlaps(c[0]) && b[1].Overlaps(c[1]) && b[2].Overlaps(c[2])
}

// Common returns what two boxes share.
func (b Box) Common(c Box) Box { return Box{b[0].Common(c[0]), b[1].Common(c[1]), b[2].Common(c[2])} }

// Less returns what is left of a box without another, in at most six boxes.
func (b Box) Less(c Box) []Box {
	if !b.Overlaps(c) {
		return []Box{b}
	}
	var out []Box
	for i := range b {
		if b[i].Low < c[i].Low {
			part := b
			part[i].High = c[i].Low
			out = append(out, part)
			b[i].Low = c[i].Low
		}
		if b[i].High > c[i].High {
			part := b
			part[i].Low = c[i].High
			out = append(out, part)
			b[i].High = c[i].High
		}
	}
	return out
}

// LessAll returns what is left of boxes without another.
func LessAll(list []Box, c Box) []Box {
	var out []Box
	for _, b := range list {
		out = append(out, b.Less(c)...)
	}
	return out
}

// Without returns what is left of boxes of the piece without the finished wood of
// a part. Round cuts count as the boxes around them.
func (x *Index) Without(list []Box, p *piece.Part) []Box {
	body := Body(p)
	var out []Box
	for _, b := range list {
		if !b.Overlaps(body) {
			out = append(out, b)
			continue
		}
		out = append(out, b.Less(body)...)
		wood := []Box{b.Common(body)}
		for _, g := range x.gone[p.Address] {
			wood = LessAll(wood, g)
		}
		air := []Box{b.Common(body)}
		for _, w := range wood {
			air = LessAll(air, w)
		}
		out = append(out, air...)
	}
	return out
}

// Wood returns what of a box of the piece is finished wood of a part.
func (x *Index) Wood(b Box, p *piece.Part) []Box {
	body := Body(p)
	if !b.Overlaps(body) {
		return nil
	}
	wood := []Box{b.Common(body)}
	for _, g := range x.gone[p.Address] {
		wood = LessAll(wood, g)
	}
	return wood
}

// WoodOf returns the finished wood of a part as boxes of the piece; round cuts
// count as the boxes around them.
func (x *Index) WoodOf(p *piece.Part) []Box {
	if w, ok := x.wood[p.Address]; ok {
		return w
	}
	w := x.Wood(Body(p), p)
	x.wood[p.Address] = w
	return w
}

// Place returns the axis of the piece along which a local axis of a part lies,
// and a stretch of it in the piece.
func Place(p *piece.Part, a piece.Local, s Span) (piece.Axis, Span) {
	axis, sign := p.Frame.Directions()[a].Axis()
	at := p.Origin()[axis]
	if sign < 0 {
		return axis, Span{at - s.High, at - s.Low}
	}
	return axis, Span{at + s.Low, at + s.High}
}
