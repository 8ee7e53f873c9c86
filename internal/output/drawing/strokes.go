package drawing

import (
	"math"

	"scantling/internal/address"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/page"
)

// Solids answers with the solids of parts, each in its part's local frame.
type Solids interface {
	Solid(part address.Address) *solid.Solid
	// Ready returns the part as it stands in the finished piece: in two where a lid was
	// sawn off it.
	Ready(part address.Address) []solid.Placed
	// Cut returns the cut that made the face with that tag, "" for the part's own
	// sides.
	Cut(part address.Address, tag solid.Tag) address.Address
}

// place puts strokes on paper: scaled, up turned down, moved.
type place struct {
	scale  float64
	origin page.Point // on paper, of the flat origin
}

func (p place) at(q polygon.P2) page.Point {
	return page.Point{X: p.origin.X + float64(q.X*p.scale), Y: p.origin.Y - float64(q.Y*p.scale)}
}

// path returns a stroke as a path; circles seen square on stay arcs, other
// ellipses become Bézier curves, chains stay chains.
func (p place) path(s hidden.Stroke) page.Path {
	switch s.Kind {
	case hidden.Line:
		return page.Line(p.at(s.From), p.at(s.To))
	case hidden.Chain:
		path := page.From(p.at(s.Chords[0]))
		for _, q := range s.Chords[1:] {
			path = path.Line(p.at(q))
		}
		return path
	}
	if circular(s) {
		// y is turned over on paper, so a positive sweep runs anticlockwise as seen.
		return page.From(p.at(s.At(s.Start))).Arc(p.at(s.At(s.Start+s.Sweep)), p.at(s.Centre), s.Sweep > 0)
	}
	return p.ellipse(s)
}

func circular(s hidden.Stroke) bool {
	a, b := s.Major.Norm(), s.Minor.Norm()
	turn := float64(s.Major.X*s.Minor.Y) - float64(s.Major.Y*s.Minor.X)
	return math.Abs(a-b) < 1e-6*a && turn > 0 && math.Abs(s.Sweep) < 2*math.Pi-1e-9
}

// ellipse draws an arc of an ellipse as one cubic for each quarter turn at most;
// the handles are 4/3 tan(sweep/4) of the tangents.
func (p place) ellipse(s hidden.Stroke) page.Path {
	n := max(1, int(math.Ceil(math.Abs(s.Sweep)/(math.Pi/2)-1e-9)))
	step := s.Sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	path := page.From(p.at(s.At(s.Start)))
	for i := range n {
		t0 := s.Start + float64(step*float64(i))
		t1 := t0 + step
		a, b := s.At(t0), s.At(t1)
		da, db := tangent(s, t0), tangent(s, t1)
		c1 := polygon.P2{X: a.X + float64(k*da.X), Y: a.Y + float64(k*da.Y)}
		c2 := polygon.P2{X: b.X - float64(k*db.X), Y: b.Y - float64(k*db.Y)}
		path = path.Curve(p.at(c1), p.at(c2), p.at(b))
	}
	return path
}

func tangent(s hidden.Stroke, t float64) polygon.P2 {
	sin, cos := math.Sin(t), math.Cos(t)
	return polygon.P2{
		X: float64(s.Minor.X*cos) - float64(s.Major.X*sin),
		Y: float64(s.Minor.Y*cos) - float64(s.Major.Y*sin),
	}
}

// add puts the strokes of a view on a drawing: visible outlines thick, hidden
// ones dashed and thin. addressOf names what a stroke belongs to.
func (p place) add(to *page.Drawing, strokes []hidden.Stroke, visible page.Width, addressOf func(hidden.Stroke) string) {
	for _, s := range strokes {
		line := page.Stroke{Path: p.path(s), Width: visible, Colour: page.Ink}
		if s.Hidden {
			line.Width, line.Dash, line.Colour = page.W018, page.Hidden, page.InkSoft
		}
		to.Add(addressOf(s), line)
	}
}

// extent returns the least box around strokes in flat coordinates.
func extent(strokes []hidden.Stroke) (low, high polygon.P2) {
	low = polygon.P2{X: math.Inf(1), Y: math.Inf(1)}
	high = polygon.P2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range strokes {
		for _, q := range s.Points(16) {
			low.X, low.Y = math.Min(low.X, q.X), math.Min(low.Y, q.Y)
			high.X, high.Y = math.Max(high.X, q.X), math.Max(high.Y, q.Y)
		}
	}
	return low, high
}
