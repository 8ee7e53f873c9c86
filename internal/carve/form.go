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

// Form works out what makes a part no plain board: the outline and the holes of one
// cut out to a line, the profile of a turned one. False where something is wrong,
// which has been reported. The site's part is the part as far as it is known.
//
// Points of an outline count from the part's low places along the two directions of
// its face, in the order right, back, up; those of a profile are the place along the
// length and the diameter there.
func Form(s Site, out *piece.Part) bool {
	c := &cutting{Site: s, name: string(s.Address)}
	if out.Form == piece.Round {
		return c.round(out)
	}
	if !c.Has("outline") {
		c.Missing("outline")
		return false
	}
	v := c.Value("outline", "")
	points, ok := c.outline(v, "outline")
	if !ok {
		return false
	}
	out.Outline = line.Wound(points, true)
	if !c.whole(v, out.Outline) || !c.contains(v, out.Outline) {
		return false
	}
	if !c.Has("holes") {
		return true
	}
	holes := c.Value("holes", "")
	if holes.OK() && holes.Kind != formula.List {
		c.Fault(formula.CodeWrongKind, holes.Where, message.Word("got", holes.Word()), message.Word("want", "kind.list"))
	}
	if holes.Kind != formula.List {
		return false
	}
	if len(holes.Items) > maxPoints {
		c.Fault(fault.CodeManyPoints, holes.Where, message.Count("got", len(holes.Items)), message.Count("most", maxPoints))
		return false
	}
	for _, item := range holes.Items {
		points, ok := c.opening(item)
		if !ok {
			return false
		}
		out.Holes = append(out.Holes, line.Wound(points, false))
	}
	return c.whole(holes, out.Outline, out.Holes...)
}

// outline reads a closed line on the part's face.
func (c *cutting) outline(v formula.Value, word string) ([]piece.OutlinePoint, bool) {
	thick, _ := c.Part.Frame.Thickness.Axis()
	written, ok := c.strokes(v, c.name+"."+word)
	if !ok {
		return nil, false
	}
	points, ok := line.Joined(c.placed(thick, written), true)
	if !ok {
		c.Fault(fault.CodeOutline, v.Where, message.Text("name", c.Name))
	}
	return points, ok
}

// opening reads a hole of an outline: a closed line, or { centre = [x, y], diameter
// = d }.
func (c *cutting) opening(v formula.Value) ([]piece.OutlinePoint, bool) {
	if v.Kind != formula.Object {
		return c.outline(v, "holes")
	}
	centre, okC := v.Field("centre")
	_, okD := v.Field("diameter")
	if !okC || !okD || len(v.Fields) != 2 {
		c.Fault(fault.CodePoint, v.Where)
		return nil, false
	}
	d, ok := c.field(v, "holes", "diameter", c.name+".holes")
	if !ok {
		return nil, false
	}
	written, ok := c.strokes(formula.Value{Kind: formula.List, Items: []formula.Value{centre}, Where: v.Where}, c.name+".holes")
	if !ok || len(written) != 1 {
		return nil, false
	}
	thick, _ := c.Part.Frame.Thickness.Axis()
	at := c.placed(thick, written)[0].At
	l := c.Maker.Ledger
	r := l.Half("", d)
	return []piece.OutlinePoint{
		{Along: l.Less("", at[0], r), Across: at[1], Bulge: 1},
		{Along: l.Sum("", at[0], r), Across: at[1], Bulge: 1},
	}, true
}

// contains reports an outline that reaches beyond the sizes of its part.
func (c *cutting) contains(v formula.Value, points []piece.OutlinePoint) bool {
	low, high := polygon.Profile{Outer: line.Loop(points)}.Bounds()
	for i, size := range []piece.Figure{c.Part.Length, c.Part.Width} {
		from, to := [2]float64{low.X, low.Y}[i], [2]float64{high.X, high.Y}[i]
		over := max(unit.FromMillimetres(-from), unit.FromMillimetres(to)-size.Nm)
		if over > unit.Micrometre {
			c.Fault(fault.CodeBeyond, v.Where, message.Text("name", c.Name), message.LengthRounded("over", over, unit.Up), message.Length("size", size.Nm))
			return false
		}
	}
	return true
}

// round works out the profile of a turned part; without one it is a cylinder, as
// thick as it is wide.
func (c *cutting) round(out *piece.Part) bool {
	if out.Width.Nm != out.Thickness.Nm {
		c.Fault(fault.CodeNotRound, c.Block.Where, message.Text("name", c.Name), message.Length("wide", out.Width.Nm), message.Length("thick", out.Thickness.Nm))
		return false
	}
	if !c.Has("profile") {
		return true
	}
	v := c.Value("profile", "")
	written, ok := c.strokes(v, c.name+".profile")
	if !ok {
		return false
	}
	grain, sign := out.Frame.Length.Axis()
	dots := make([]line.Dot, len(written))
	for i, p := range written {
		dots[i] = line.Dot{At: [2]piece.Figure{c.Maker.Ledger.Half("", c.figure(p.y)), c.local(grain, p.x)}, Arc: p.arc}
	}
	if sign < 0 {
		slices.Reverse(dots)
	}
	points, ok := line.Joined(dots, false)
	if !ok || len(points) < 2 || !c.turnable(points) {
		c.Fault(fault.CodeProfile, v.Where, message.Text("name", c.Name), message.Length("length", out.Length.Nm), message.Length("diameter", out.Width.Nm))
		return false
	}
	for _, p := range points {
		out.Profile = append(out.Profile, piece.ProfilePoint{Along: p.Across, Radius: p.Along, Bulge: p.Bulge})
	}
	return true
}

// turnable reports whether a profile runs from end to end, never back, and stays
// within the diameter.
func (c *cutting) turnable(points []piece.OutlinePoint) bool {
	n := len(points)
	ok := points[0].Across.Nm == 0 && points[n-1].Across.Nm == c.Part.Length.Nm
	for i, p := range points {
		ok = ok && p.Along.Nm >= 0 && 2*p.Along.Nm <= c.Part.Width.Nm && (i == 0 || p.Across.Nm >= points[i-1].Across.Nm)
		ok = ok && (p.Along.Nm > 0 || i == 0 || i == n-1)
	}
	if !ok {
		return false
	}
	axis := slices.Concat(points, []piece.OutlinePoint{{Across: points[n-1].Across}, {Across: points[0].Across}})
	low, high := polygon.Profile{Outer: line.Loop(axis)}.Bounds()
	return low.X >= -1e-9 && high.X <= line.MM(c.Part.Width)/2+1e-6 && low.Y >= -1e-9 && high.Y <= line.MM(c.Part.Length)+1e-9
}
