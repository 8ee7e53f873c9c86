package page

import "math"

// Point is a place on paper, or a step from one place to another.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by k.
func (p Point) Mul(k float64) Point { return Point{float64(p.X * k), float64(p.Y * k)} }

// Norm returns the length of p.
func (p Point) Norm() float64 { return math.Sqrt(float64(p.X*p.X) + float64(p.Y*p.Y)) }

// Turn returns p turned about the origin by so many degrees, clockwise as seen.
// Quarter turns are exact.
func (p Point) Turn(degrees float64) Point {
	sin, cos := sinCos(degrees)
	return Point{float64(p.X*cos) - float64(p.Y*sin), float64(p.X*sin) + float64(p.Y*cos)}
}

func sinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	a := degrees * (math.Pi / 180)
	return math.Sin(a), math.Cos(a)
}

// Size is a width and a height.
type Size struct{ Width, Height float64 }

// Box is an upright rectangle; Min is its top left corner. The zero Box is
// empty and is the start of a union.
type Box struct{ Min, Max Point }

// NewBox returns the box with its top left corner at (x, y).
func NewBox(x, y, width, height float64) Box {
	return Box{Point{x, y}, Point{x + float64(width), y + float64(height)}}
}

// Width returns the extent in X.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height returns the extent in Y.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// Centre returns the middle of the box.
func (b Box) Centre() Point {
	return Point{float64((b.Min.X + b.Max.X) / 2), float64((b.Min.Y + b.Max.Y) / 2)}
}

// Empty reports whether the box is the zero Box.
func (b Box) Empty() bool { return b == Box{} }

// Union returns the least box around both; the zero Box adds nothing.
func (b Box) Union(c Box) Box {
	switch {
	case b.Empty():
		return c
	case c.Empty():
		return b
	}
	return Box{
		Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)},
		Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)},
	}
}

// Grow returns the box with all sides moved outwards by d, inwards if negative.
func (b Box) Grow(d float64) Box {
	d = float64(d) // rounded, where it comes from a product
	return Box{Point{b.Min.X - d, b.Min.Y - d}, Point{b.Max.X + d, b.Max.Y + d}}
}

// Move returns the box moved by d.
func (b Box) Move(d Point) Box { return Box{b.Min.Add(d), b.Max.Add(d)} }

// Contains reports whether c lies in b, up to slack.
func (b Box) Contains(c Box, slack float64) bool {
	return c.Min.X >= b.Min.X-slack && c.Min.Y >= b.Min.Y-slack &&
		c.Max.X <= b.Max.X+slack && c.Max.Y <= b.Max.Y+slack
}

// boxOf returns the least box around points.
func boxOf(points ...Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	b := Box{points[0], points[0]}
	for _, p := range points[1:] {
		b.Min.X, b.Min.Y = min(b.Min.X, p.X), min(b.Min.Y, p.Y)
		b.Max.X, b.Max.Y = max(b.Max.X, p.X), max(b.Max.Y, p.Y)
	}
	return b
}

// Paper is a size of paper. (A sheet is board material here.)
type Paper uint8

// The papers. Both stand upright; [Size.Turned] lays one on its side.
const (
	A4     Paper = iota // 210 × 297 mm, ISO 216:2007 table 1
	Letter              // 8 1/2 × 11 in = 215.9 × 279.4 mm, ANSI/ASME Y14.1 size A
)

// Papers lists the papers in order.
var Papers = []Paper{A4, Letter}

// Size returns the paper's size, upright.
func (p Paper) Size() Size {
	if p == Letter {
		return Size{215.9, 279.4}
	}
	return Size{210, 297}
}

// String returns "A4" or "Letter".
func (p Paper) String() string {
	if p == Letter {
		return "Letter"
	}
	return "A4"
}

// Turned returns the size with width and height exchanged.
func (s Size) Turned() Size { return Size{s.Height, s.Width} }

// Margins are the strips along the edges of a page that stay empty but for
// header and footer.
type Margins struct{ Left, Top, Right, Bottom float64 }

// Even returns the same margin on all four sides.
func Even(mm float64) Margins { return Margins{mm, mm, mm, mm} }

// Inside returns the area of the page inside the margins.
func (m Margins) Inside(s Size) Box {
	return Box{Point{m.Left, m.Top}, Point{s.Width - m.Right, s.Height - m.Bottom}}
}

// Pt returns the millimetres of a size in points of 1/72 in.
func Pt(points float64) float64 { return points * 25.4 / 72 }
