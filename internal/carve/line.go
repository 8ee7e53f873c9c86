package carve

import (
	"math"
	"slices"

	"scantling/internal/formula"
	"scantling/internal/geom/polygon"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// maxPoints bounds the points of one line.
const maxPoints = 400

// stroke is one point of a line as it is written: a corner, or a point that the arc
// between its neighbours goes through.
type stroke struct {
	x, y formula.Value // along the two axes, in the order right, back, up
	arc  bool
}

// strokes reads a line: [60, 0] is a corner, { through = [150, 40] } a point of the
// arc between the corners before and after it.
func (s Site) strokes(v formula.Value, name string) ([]stroke, bool) {
	if v.OK() && v.Kind != formula.List {
		s.Fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.list"))
	}
	if v.Kind != formula.List {
		return nil, false
	}
	if len(v.Items) > maxPoints {
		s.Fault(CodeManyPoints, v.Where, message.Count("got", len(v.Items)), message.Count("most", maxPoints))
		return nil, false
	}
	var out []stroke
	for _, item := range v.Items {
		point, arc := item, false
		if item.Kind == formula.Object {
			point, arc = item.Field("through")
			if !arc || len(item.Fields) != 1 {
				s.Fault(CodePoint, item.Where)
				return nil, false
			}
		}
		if point.Kind != formula.List || len(point.Items) != 2 || arc && len(out) > 0 && out[len(out)-1].arc {
			s.Fault(CodePoint, item.Where)
			return nil, false
		}
		x, okX := s.Maker.Length(point.Items[0], name)
		y, okY := s.Maker.Length(point.Items[1], name)
		if !okX || !okY {
			return nil, false
		}
		out = append(out, stroke{x, y, arc})
	}
	return out, true
}

// dot is a point in the part's own axes, before arcs have their bulges.
type dot struct {
	at  [2]piece.Figure
	arc bool
}

// placed brings the points of a line across an axis into the part's own two axes,
// in the order length, width, thickness.
func (c *cutting) placed(open piece.Axis, line []stroke) []dot {
	var axes [2]piece.Axis
	k := 0
	for a := range piece.Axis(3) {
		if a != open {
			axes[k] = a
			k++
		}
	}
	first, _ := c.Part.Frame.LocalOf(axes[0])
	second, _ := c.Part.Frame.LocalOf(axes[1])
	out := make([]dot, len(line))
	for i, p := range line {
		x, y := c.local(axes[0], p.x), c.local(axes[1], p.y)
		if first > second {
			x, y = y, x
		}
		out[i] = dot{[2]piece.Figure{x, y}, p.arc}
	}
	return out
}

func mm(f piece.Figure) float64 { return f.Nm.Millimetres() }

func (d dot) p2() polygon.P2 { return polygon.P2{X: mm(d.at[0]), Y: mm(d.at[1])} }

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

// joined makes corners with bulges of dots; a closed line's last arc ends at the
// first corner.
func joined(dots []dot, closed bool) ([]piece.OutlinePoint, bool) {
	if len(dots) == 0 || dots[0].arc || !closed && dots[len(dots)-1].arc {
		return nil, false
	}
	var out []piece.OutlinePoint
	for i, d := range dots {
		if !d.arc {
			out = append(out, piece.OutlinePoint{Along: d.at[0], Across: d.at[1]})
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

// loop is an outline as geometry.
func loop(points []piece.OutlinePoint) polygon.Loop {
	out := make(polygon.Loop, len(points))
	for i, p := range points {
		out[i] = polygon.Vertex{P2: polygon.P2{X: mm(p.Along), Y: mm(p.Across)}, Bulge: p.Bulge}
	}
	return out
}

// wound turns a closed outline so that it runs anticlockwise, or clockwise.
func wound(points []piece.OutlinePoint, anticlockwise bool) []piece.OutlinePoint {
	if loop(points).Area() > 0 == anticlockwise {
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

// whole sees to it that a line encloses something and does not cross itself.
func (s Site) whole(v formula.Value, outer []piece.OutlinePoint, holes ...[]piece.OutlinePoint) bool {
	p := polygon.Profile{Outer: loop(outer)}
	for _, h := range holes {
		p.Holes = append(p.Holes, loop(slices.Clone(h)))
	}
	if len(outer) < 2 || p.Check() != nil {
		s.Fault(CodeOutline, v.Where, message.Text("name", s.Name))
		return false
	}
	return true
}

// pocket works out a recess or a notch of any outline, drawn on the side that it is
// cut into.
func (c *cutting) pocket() bool {
	side, open, ok := c.open("side")
	if !ok {
		return false
	}
	v := c.Value("outline", "")
	line, ok := c.strokes(v, c.name+".outline")
	if !ok {
		return false
	}
	points, ok := joined(c.placed(open, line), true)
	if !ok || len(points) < 2 {
		c.Fault(CodeOutline, v.Where, message.Text("name", c.Name))
		return false
	}
	out := &piece.Pocket{Open: side, Through: c.yes("through"), Depth: c.size(open)}
	if !out.Through {
		depth, ok := c.need("depth")
		if !ok || !c.Positive(depth, "depth", c.name+".depth") {
			return false
		}
		if c.figure(depth).Nm >= out.Depth.Nm {
			c.Fault(CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", c.figure(depth).Nm), message.Length("thickness", out.Depth.Nm))
			return false
		}
		out.Depth = c.figure(depth)
	}
	return c.pocketed(out, v, points)
}

// pocketed keeps a pocket whose outline is sound and touches the part.
func (c *cutting) pocketed(out *piece.Pocket, v formula.Value, points []piece.OutlinePoint) bool {
	out.Outline = wound(points, true)
	if !c.whole(v, out.Outline) {
		return false
	}
	low, high := polygon.Profile{Outer: loop(out.Outline)}.Bounds()
	axis, _ := out.Open.Axis()
	k := 0
	for a, size := range c.Part.Sizes() {
		if piece.Local(a) == axis {
			continue
		}
		from, to := [2]float64{low.X, low.Y}[k], [2]float64{high.X, high.Y}[k]
		if to <= 0 || from >= mm(size) {
			c.Fault(CodeCutMisses, v.Where, message.Text("name", c.Name), message.Length("near", unit.FromMillimetres(from)), message.Length("width", size.Nm))
			return false
		}
		k++
	}
	c.out.Pocket = out
	return true
}
