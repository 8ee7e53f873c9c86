package page

import "math"

// Item is one thing on the paper.
type Item struct {
	// Address names what the item shows, in document syntax ("drawer[2].front");
	// empty if it shows nothing of the piece.
	Address string
	// Node is the element of the structure tree that the item belongs to;
	// [Artifact] for decoration.
	Node NodeID
	// Shape is what is drawn.
	Shape Shape
}

// Shape is a [Stroke], [Fill], [Hatch], [Text] or [Link].
type Shape interface {
	// Bounds returns the least upright box around the shape's ink.
	Bounds() Box
	// moved returns the shape turned, scaled and moved: first k, then d.
	moved(k float64, d Point) Shape
}

// Stroke is a drawn line.
type Stroke struct {
	Path   Path
	Width  Width
	Dash   Dash
	Colour Colour
	// Round gives round ends and corners, for signs and sketched lines; drawings
	// keep square corners.
	Round bool
}

// Fill is a filled area. Where lines of the path lie inside each other, the even
// ones are holes.
type Fill struct {
	Path   Path
	Colour Colour
}

// Hatch fills an area with parallel lines. [Hatch.Lines] gives them.
type Hatch struct {
	Path Path
	// Angle of the lines in degrees, clockwise from X as seen; -45 rises to the right.
	Angle float64
	// Pitch is the distance between lines in millimetres, at least [MinPitch].
	Pitch  float64
	Width  Width
	Colour Colour
}

// Link is an area that leads somewhere when it is clicked. It has no ink.
type Link struct {
	Area Box
	// To is the name of an [Anchor] of the document, or, with a colon in it, an
	// address outside ("https://...").
	To string
	// Says is what the link is called for one who cannot see it.
	Says string
}

// Bounds implements [Shape].
func (s Stroke) Bounds() Box {
	b := s.Path.Box()
	if b.Empty() {
		return b
	}
	return b.Grow(s.Width.Millimetres() / 2)
}

// Bounds implements [Shape].
func (f Fill) Bounds() Box { return f.Path.Box() }

// Bounds implements [Shape].
func (h Hatch) Bounds() Box { return h.Path.Box() }

// Bounds implements [Shape].
func (l Link) Bounds() Box { return l.Area }

func (s Stroke) moved(k float64, d Point) Shape {
	s.Path = s.Path.mapped(scaleMove(k, d))
	return s
}

func (f Fill) moved(k float64, d Point) Shape {
	f.Path = f.Path.mapped(scaleMove(k, d))
	return f
}

func (h Hatch) moved(k float64, d Point) Shape {
	h.Path = h.Path.mapped(scaleMove(k, d))
	return h
}

func (l Link) moved(k float64, d Point) Shape {
	f := scaleMove(k, d)
	l.Area = Box{f(l.Area.Min), f(l.Area.Max)}
	return l
}

func (t Text) moved(k float64, d Point) Shape {
	t.At = scaleMove(k, d)(t.At)
	t.Size *= k
	return t
}

func scaleMove(k float64, d Point) func(Point) Point {
	return func(p Point) Point { return Point{float64(p.X*k) + d.X, float64(p.Y*k) + d.Y} }
}

// finite reports whether every number is one.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
