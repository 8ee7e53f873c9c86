package carve

import (
	"slices"

	"scantling/internal/carve/fault"
	"scantling/internal/carve/line"
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
		s.Fault(fault.CodeManyPoints, v.Where, message.Count("got", len(v.Items)), message.Count("most", maxPoints))
		return nil, false
	}
	var out []stroke
	for _, item := range v.Items {
		point, arc := item, false
		if item.Kind == formula.Object {
			point, arc = item.Field("through")
			if !arc || len(item.Fields) != 1 {
				s.Fault(fault.CodePoint, item.Where)
				return nil, false
			}
		}
		if point.Kind != formula.List || len(point.Items) != 2 || arc && len(out) > 0 && out[len(out)-1].arc {
			s.Fault(fault.CodePoint, item.Where)
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

// placed brings the points of a line across an axis into the part's own two axes,
// in the order length, width, thickness.
func (c *cutting) placed(open piece.Axis, written []stroke) []line.Dot {
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
	out := make([]line.Dot, len(written))
	for i, p := range written {
		x, y := c.local(axes[0], p.x), c.local(axes[1], p.y)
		if first > second {
			x, y = y, x
		}
		out[i] = line.Dot{At: [2]piece.Figure{x, y}, Arc: p.arc}
	}
	return out
}

// whole sees to it that a line encloses something and does not cross itself.
func (s Site) whole(v formula.Value, outer []piece.OutlinePoint, holes ...[]piece.OutlinePoint) bool {
	p := polygon.Profile{Outer: line.Loop(outer)}
	for _, h := range holes {
		p.Holes = append(p.Holes, line.Loop(slices.Clone(h)))
	}
	if len(outer) < 2 || p.Check() != nil {
		s.Fault(fault.CodeOutline, v.Where, message.Text("name", s.Name))
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
	written, ok := c.strokes(v, c.name+".outline")
	if !ok {
		return false
	}
	points, ok := line.Joined(c.placed(open, written), true)
	if !ok || len(points) < 2 {
		c.Fault(fault.CodeOutline, v.Where, message.Text("name", c.Name))
		return false
	}
	out := &piece.Pocket{Open: side, Through: c.yes("through"), Depth: c.size(open)}
	if !out.Through {
		depth, ok := c.need("depth")
		if !ok || !c.Positive(depth, "depth", c.name+".depth") {
			return false
		}
		if c.figure(depth).Nm >= out.Depth.Nm {
			c.Fault(fault.CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", c.figure(depth).Nm), message.Length("thickness", out.Depth.Nm))
			return false
		}
		out.Depth = c.figure(depth)
	}
	return c.pocketed(out, v, points)
}

// pocketed keeps a pocket whose outline is sound and touches the part.
func (c *cutting) pocketed(out *piece.Pocket, v formula.Value, points []piece.OutlinePoint) bool {
	out.Outline = line.Wound(points, true)
	if !c.whole(v, out.Outline) {
		return false
	}
	low, high := polygon.Profile{Outer: line.Loop(out.Outline)}.Bounds()
	axis, _ := out.Open.Axis()
	k := 0
	for a, size := range c.Part.Sizes() {
		if piece.Local(a) == axis {
			continue
		}
		from, to := [2]float64{low.X, low.Y}[k], [2]float64{high.X, high.Y}[k]
		if to <= 0 || from >= line.MM(size) {
			c.Fault(fault.CodeCutMisses, v.Where, message.Text("name", c.Name), message.Length("near", unit.FromMillimetres(from)), message.Length("width", size.Nm))
			return false
		}
		k++
	}
	c.out.Pocket = out
	return true
}
