package page

import "math"

// Verb is what a segment of a path does.
type Verb uint8

// The verbs of a path.
const (
	MoveTo  Verb = iota // start a new line at To
	LineTo              // straight to To
	ArcTo               // along the circle about Centre to To
	CurveTo             // cubic Bézier with handles C1 and C2 to To
	Close               // straight back to the start of the line
)

// Segment is one step of a path. To is where it ends; the other fields belong
// to the verbs that name them.
type Segment struct {
	Verb   Verb
	To     Point
	Centre Point // ArcTo
	// Left makes an ArcTo run anticlockwise as seen, else clockwise. An arc
	// that ends where it starts is the whole circle.
	Left   bool
	C1, C2 Point // CurveTo
}

// Path is a line of segments, or several. Build it with [From] and the methods
// that return the longer path, or whole with [Line], [Polyline], [Polygon],
// [Rectangle], [Circle] and [Arc].
type Path []Segment

// From starts a path at p.
func From(p Point) Path { return Path{{Verb: MoveTo, To: p}} }

// Move starts another line of the path at p.
func (s Path) Move(p Point) Path { return append(s, Segment{Verb: MoveTo, To: p}) }

// Line goes straight to p.
func (s Path) Line(p Point) Path { return append(s, Segment{Verb: LineTo, To: p}) }

// Arc goes along the circle about centre to p, anticlockwise as seen if left.
func (s Path) Arc(p, centre Point, left bool) Path {
	return append(s, Segment{Verb: ArcTo, To: p, Centre: centre, Left: left})
}

// Curve goes to p along a cubic Bézier with the handles c1 and c2.
func (s Path) Curve(c1, c2, p Point) Path {
	return append(s, Segment{Verb: CurveTo, To: p, C1: c1, C2: c2})
}

// Close goes straight back to the start of the line.
func (s Path) Close() Path { return append(s, Segment{Verb: Close}) }

// Line returns the path from a to b.
func Line(a, b Point) Path { return From(a).Line(b) }

// Polyline returns the open path through the points.
func Polyline(points ...Point) Path {
	var s Path
	for i, p := range points {
		if i == 0 {
			s = From(p)
		} else {
			s = s.Line(p)
		}
	}
	return s
}

// Polygon returns the closed path through the points.
func Polygon(points ...Point) Path { return Polyline(points...).Close() }

// Rectangle returns the outline of a box.
func Rectangle(b Box) Path {
	return Polygon(b.Min, Point{b.Max.X, b.Min.Y}, b.Max, Point{b.Min.X, b.Max.Y})
}

// Circle returns a whole circle.
func Circle(centre Point, radius float64) Path {
	a, b := Point{centre.X + radius, centre.Y}, Point{centre.X - radius, centre.Y}
	return From(a).Arc(b, centre, false).Arc(a, centre, false).Close()
}

// Arc returns the arc about centre from one angle to another, in degrees,
// clockwise as seen if the second is greater and anticlockwise if it is less.
func Arc(centre Point, radius, from, to float64) Path {
	at := func(deg float64) Point { return centre.Add(Point{radius, 0}.Turn(deg)) }
	return From(at(from)).Arc(at(to), centre, to < from)
}

// mapped returns the path with every point put through f. If flip, arcs change
// their sense (f mirrors).
func (s Path) mapped(f func(Point) Point) Path {
	out := make(Path, len(s))
	for i, g := range s {
		out[i] = Segment{g.Verb, f(g.To), f(g.Centre), g.Left, f(g.C1), f(g.C2)}
	}
	return out
}

// Sweep returns the angle of an ArcTo that starts at from, in radians, always
// positive, and its start angle.
func (g Segment) Sweep(from Point) (start, sweep float64) {
	a, b := from.Sub(g.Centre), g.To.Sub(g.Centre)
	start = math.Atan2(a.Y, a.X)
	end := math.Atan2(b.Y, b.X)
	sweep = end - start
	if g.Left {
		sweep = -sweep
	}
	for sweep <= 1e-9 {
		sweep += 2 * math.Pi
	}
	return start, sweep
}

// Curves returns the path with every arc turned into cubic Béziers of at most a
// quarter circle (radial error under 0.03 % of the radius), for writers without arcs.
func (s Path) Curves() Path {
	out := make(Path, 0, len(s))
	var at, begin Point
	for _, g := range s {
		switch g.Verb {
		case ArcTo:
			out = append(out, g.cubics(at)...)
			at = g.To
			continue
		case Close:
			at = begin
		case MoveTo:
			at, begin = g.To, g.To
		default:
			at = g.To
		}
		out = append(out, g)
	}
	return out
}

func (g Segment) cubics(from Point) (out Path) {
	start, sweep := g.Sweep(from)
	n := int(math.Ceil(sweep/(math.Pi/2) - 1e-9))
	r := from.Sub(g.Centre).Norm()
	step := sweep / float64(n)
	// Handle length 4/3·tan(step/4): the usual cubic that touches the circle at
	// both ends and in the middle.
	h := 4.0 / 3 * math.Tan(step/4)
	if g.Left {
		step, h = -step, -h
	}
	dir := func(a float64) Point { return Point{math.Cos(a), math.Sin(a)} }
	a := start
	for i := range n {
		b := start + float64(step*float64(i+1))
		u, v := dir(a), dir(b)
		p := g.Centre.Add(u.Mul(r)).Add(Point{-u.Y, u.X}.Mul(float64(h * r)))
		q := g.Centre.Add(v.Mul(r)).Sub(Point{-v.Y, v.X}.Mul(float64(h * r)))
		to := g.Centre.Add(v.Mul(r))
		if i == n-1 {
			to = g.To
		}
		out = out.Curve(p, q, to)
		a = b
	}
	return out
}
