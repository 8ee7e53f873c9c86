package carve

import (
	"slices"

	"scantling/internal/carve/fault"
	"scantling/internal/carve/line"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// outside is how far the waste of a curved outline reaches out of the part.
const outside = 2 * unit.Millimetre

// curved works out a curved outline along an edge or an end: the line is given by
// how far it lies along the edge and in from it, and all outside of it goes. A
// symmetrical line is given to its middle.
func (c *cutting) curved() bool {
	c.out.Kind = piece.Curve
	side, open, ok := c.open("edge")
	if !ok {
		return false
	}
	thick, _ := c.Part.Frame.Thickness.Axis()
	if open == thick {
		c.Fault(fault.CodeNotAnEdge, c.Where("edge"), message.Text("name", c.Name))
		return false
	}
	if !c.Has("line") {
		c.Missing("line")
		return false
	}
	v := c.Value("line", "")
	written, ok := c.strokes(v, c.name+".line")
	if !ok {
		return false
	}
	along := 3 - open - thick
	dots := c.inwards(side, along, written)
	if c.yes("symmetrical") {
		dots = c.symmetrical(dots, along)
	}
	if len(dots) > 0 && line.MM(dots[0].At[0]) > line.MM(dots[len(dots)-1].At[0]) {
		slices.Reverse(dots)
	}
	points, ok := line.Joined(dots, false)
	if !ok || len(points) < 2 {
		c.Fault(fault.CodeOutline, v.Where, message.Text("name", c.Name))
		return false
	}
	points = c.closed(points, side, along)
	local, _ := side.Axis()
	if local == piece.AlongLength { // drawn with the edge's axis first, told with the length's
		for i := range points {
			points[i].Along, points[i].Across = points[i].Across, points[i].Along
			points[i].Bulge = -points[i].Bulge
		}
	}
	return c.pocketed(&piece.Pocket{Open: piece.SideOf(piece.AlongThickness, false), Through: true, Depth: c.size(thick)}, v, points)
}

// inwards brings the points of a line along an edge into the part's own axes: along
// the edge, then across.
func (c *cutting) inwards(side piece.Side, along piece.Axis, written []stroke) []line.Dot {
	axis, high := side.Axis()
	out := make([]line.Dot, len(written))
	for i, p := range written {
		in := c.figure(p.y)
		if high {
			in = c.Maker.Ledger.Less("", c.Part.Sizes()[axis], in)
		}
		out[i] = line.Dot{At: [2]piece.Figure{c.local(along, p.x), in}, Arc: p.arc}
	}
	return out
}

// symmetrical adds the other half of a line about the middle of the edge. A point
// in the middle is not doubled.
func (c *cutting) symmetrical(dots []line.Dot, along piece.Axis) []line.Dot {
	whole := c.size(along)
	out := slices.Clone(dots)
	for i, d := range slices.Backward(dots) {
		if i == len(dots)-1 && 2*d.At[0].Nm == whole.Nm {
			continue
		}
		d.At[0] = c.Maker.Ledger.Less("", whole, d.At[0])
		out = append(out, d)
	}
	return out
}

// closed leads a line round outside the part.
func (c *cutting) closed(points []piece.OutlinePoint, side piece.Side, along piece.Axis) []piece.OutlinePoint {
	l := c.Maker.Ledger
	reach := l.Leaf("outside", outside, ledger.Derived, "")
	axis, high := side.Axis()
	beside := l.Leaf("beside", -outside, ledger.Derived, "")
	if high {
		beside = l.Sum("", c.Part.Sizes()[axis], reach)
	}
	whole := c.size(along)
	first, last := points[0], points[len(points)-1]
	var before, after []piece.OutlinePoint
	from, to := first.Along, last.Along
	if from.Nm <= 0 {
		from = l.Less("", from, reach)
		before = append(before, piece.OutlinePoint{Along: from, Across: first.Across})
	}
	if to.Nm >= whole.Nm {
		to = l.Sum("", to, reach)
		after = append(after, piece.OutlinePoint{Along: to, Across: last.Across})
	}
	out := append(before, points...)
	out = append(out, after...)
	return append(out, piece.OutlinePoint{Along: to, Across: beside}, piece.OutlinePoint{Along: from, Across: beside})
}
