package line

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/piece"
)

// Dot is a point in the part's own axes, before arcs have their bulges.
type Dot struct {
	At  [2]piece.Figure
	Arc bool
}

// MM is a figure in millimetres.
func MM(f piece.Figure) float64 { return f.Nm.Millimetres() }

func (d Dot) p2() polygon.P2 { return polygon.P2{X: MM(d.At[0]), Y: MM(d.At[1])} }

// bulge is that of the arc from a through b to c: tan of a quarter of its sweep,
// which is the cotangent of half the angle at b (the angle at the rim is half that
// at the centre; Euclid, Elements III.20). False where the arc would be a whole
// circle or more.
func bulge(a, b, c polygon.P2) (float64, bool) {
	p, q := a.Sub(b), c.Sub(b)
	cross, far := p.Cross(q), float64(p.Norm()*q.Norm())
	if far == 0 {
		return 0, false
	}
	if math.Abs(cross) <= 1e-9*far {
		return 0, p.Dot(q) < 0 // straight: b lies between
	}
	x := -(far + p.Dot(q)) / cross
	return x, math.Abs(x) < 100
}

// Joined makes corners with bulges of dots; a closed line's last arc ends at the
// first corner.
func Joined(dots []Dot, closed bool) ([]piece.OutlinePoint, bool) {
	if len(dots) == 0 || dots[0].Arc || !closed && dots[len(dots)-1].Arc {
		return nil, false
	}
	var out []piece.OutlinePoint
	for i, d := range dots {
		if !d.Arc {
			out = append(out, piece.OutlinePoint{Along: d.At[0], Across: d.At[1]})
			continue
		}
		b, ok := bulge(dots[i-1].p2(), d.p2(), dots[(i+1)%len(dots)].p2())
		if !ok {
			return nil, false
		}
		out[len(out)-1].Bulge = b
	}
	return out, true
}

// Loop is an outline as geometry.
func Loop(points []piece.OutlinePoint) polygon.Loop {
	out := make(polygon.Loop, len(points))
	for i, p := range points {
		out[i] = polygon.Vertex{P2: polygon.P2{X: MM(p.Along), Y: MM(p.Across)}, Bulge: p.Bulge}
	}
	return out
}

// Wound turns a closed outline so that it runs anticlockwise, or clockwise.
func Wound(points []piece.OutlinePoint, anticlockwise bool) []piece.OutlinePoint {
	if Loop(points).Area() > 0 == anticlockwise {
		return points
	}
	n := len(points)
	out := make([]piece.OutlinePoint, n)
	for i := range points {
		out[i] = points[(n-i)%n]
		out[i].Bulge = -points[(2*n-i-1)%n].Bulge
	}
	return out
}
