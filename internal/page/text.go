package page

import "scantling/internal/font"

// Align says which point of a text lies at its place.
type Align uint8

// The alignments.
const (
	Start Align = iota
	Middle
	End
)

// Text is one line of text. Its baseline starts, is centred or ends at At.
//
// Fractions (digits, U+2044, digits) are stacked and signs that the faces lack
// are drawn: [Text.Line] gives the pieces, the same for every writer.
type Text struct {
	At   Point
	Size float64 // the em in millimetres
	// Weight, Colour and Align say how it looks and lies.
	Weight font.Weight
	Colour Colour
	Align  Align
	// Turn is the angle of the baseline in degrees, clockwise as seen: -90 reads
	// from below.
	Turn   float64
	String string
}

// Line lays the text out in em along its baseline.
func (t Text) Line() font.Line { return font.Lay(t.Weight, t.String) }

// Origin returns where the baseline starts.
func (t Text) Origin(width float64) Point {
	switch t.Align {
	case Middle:
		return t.At.Sub(Point{float64(width * t.Size / 2), 0}.Turn(t.Turn))
	case End:
		return t.At.Sub(Point{float64(width * t.Size), 0}.Turn(t.Turn))
	}
	return t.At
}

// Corners returns the four corners of the box around the text's ink, from its
// top left as read, clockwise. A blank text has no height.
func (t Text) Corners() [4]Point {
	line := t.Line()
	o := t.Origin(line.Width)
	w, top, bottom := float64(line.Width*t.Size), -float64(line.Top*t.Size), float64(line.Bottom*t.Size)
	at := func(x, y float64) Point { return o.Add(Point{x, y}.Turn(t.Turn)) }
	return [4]Point{at(0, top), at(w, top), at(w, bottom), at(0, bottom)}
}

// Bounds implements [Shape].
func (t Text) Bounds() Box {
	c := t.Corners()
	return boxOf(c[:]...)
}

// TextWidth returns the advance of a string in millimetres.
func TextWidth(w font.Weight, size float64, s string) float64 {
	return float64(font.Width(w, s) * size)
}

// Marks returns what of the text is drawn rather than set: the bars of
// fractions and the signs that the faces lack, in place on the paper. Every
// writer draws these besides the glyphs.
func (t Text) Marks(line font.Line) (shapes []Mark) {
	o := t.Origin(line.Width)
	for i, p := range line.Pieces {
		em := float64(p.Scale * t.Size)
		at := func(q font.Point) Point {
			return o.Add(Point{float64(p.X*t.Size) + float64(q.X*em), float64(p.Y*t.Size) + float64(q.Y*em)}.Turn(t.Turn))
		}
		switch p.Kind {
		case font.Bar:
			w, h := p.Width, font.BarThick
			shapes = append(shapes, Mark{Piece: i, Path: Polygon(at(font.Point{}), at(font.Point{X: w}), at(font.Point{X: w, Y: h}), at(font.Point{Y: h}))})
		case font.Drawn:
			for _, outline := range p.Sign {
				shapes = append(shapes, Mark{Piece: i, Path: signPath(outline, at), Pen: float64(outline.Pen * em)})
			}
		}
	}
	return shapes
}

// Mark is a drawn part of a text: filled if Pen is zero, else a line of that
// width in millimetres with round ends and corners.
type Mark struct {
	Piece int // the piece of the line that it belongs to
	Path  Path
	Pen   float64
}

func signPath(o font.Outline, at func(font.Point) Point) (s Path) {
	for _, g := range o.Segments {
		switch g.Verb {
		case font.Move:
			s = s.Move(at(g.To))
		case font.Draw:
			s = s.Line(at(g.To))
		case font.Curve:
			s = s.Curve(at(g.C1), at(g.C2), at(g.To))
		case font.Close:
			s = s.Close()
		}
	}
	return s
}
