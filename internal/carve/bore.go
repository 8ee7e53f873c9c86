package carve

import (
	"strings"

	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// hole works out a round hole: at = { left = 30, bottom = 20 } counts from those
// sides of the part.
func (c *cutting) hole() bool {
	c.out.Kind = piece.Hole
	side, open, ok := c.open("side")
	if !ok {
		return false
	}
	diameter, ok := c.need("diameter")
	if !ok || !c.Positive(diameter, "diameter", c.name+".diameter") {
		return false
	}
	out := &piece.Bore{Open: side, Diameter: c.figure(diameter)}
	if out.At, ok = c.centre(open); !ok {
		return false
	}
	out.Through = c.yes("through")
	out.Depth = c.size(open)
	if !out.Through {
		depth, ok := c.need("depth")
		if !ok || !c.Positive(depth, "depth", c.name+".depth") {
			return false
		}
		if out.Depth.Nm <= c.figure(depth).Nm {
			c.Fault(fault.CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", c.figure(depth).Nm), message.Length("thickness", out.Depth.Nm))
			return false
		}
		out.Depth = c.figure(depth)
	}
	c.out.Bore = out
	return c.sunk(out)
}

// centre reads where a hole is from two sides of the part, and gives it along
// the two local axes that it does not run along, in their order.
func (c *cutting) centre(open piece.Axis) (at [2]piece.Figure, ok bool) {
	if !c.Has("at") {
		c.Missing("at")
		return at, false
	}
	v := c.Value("at", "")
	if v.OK() && v.Kind != formula.Object {
		c.Fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
	}
	if v.Kind != formula.Object {
		return at, false
	}
	openLocal, _ := c.Part.Frame.LocalOf(open)
	set := [2]bool{}
	for _, f := range v.Fields {
		axis, l, good := c.from(f, open)
		if !good {
			return at, false
		}
		local, _ := c.Part.Frame.LocalOf(axis)
		i := 0
		if int(local) > 3-int(openLocal)-int(local) {
			i = 1
		}
		at[i], set[i] = l, true
	}
	if !set[0] || !set[1] {
		c.Fault(fault.CodeCutPlace, c.Block.Where, message.Text("name", c.Name))
		return at, false
	}
	return at, true
}

// from reads how far something lies from a side that does not look along the open
// one, and gives it along the part's own axis.
func (c *cutting) from(f formula.Field, open piece.Axis) (piece.Axis, piece.Figure, bool) {
	axis, low, isFace := direction.Face(f.Name)
	if !isFace || axis == open {
		c.Fault(formula.CodeUnknownField, f.Value.Where, message.Text("word", f.Name), message.Text("block", "at"), message.Text("known", strings.Join(otherWords(open), ", ")))
		return 0, piece.Figure{}, false
	}
	l, ok := c.Maker.Length(f.Value, c.name+".at."+f.Name)
	if !ok {
		return 0, piece.Figure{}, false
	}
	if !low {
		l = quantity(c.Maker.Ledger.Less("", c.size(axis), c.figure(l)))
	}
	return axis, c.local(axis, l), true
}

func otherWords(open piece.Axis) []string {
	var out []string
	for axis := range 3 {
		if piece.Axis(axis) != open {
			out = append(out, direction.Low[axis], direction.High[axis])
		}
	}
	return out
}

// scoop works out an arc cut out of an edge.
func (c *cutting) scoop() bool {
	c.out.Kind = piece.Scoop
	side, open, ok := c.open("edge")
	if !ok {
		return false
	}
	thick, _ := c.Part.Frame.Thickness.Axis()
	if open == thick {
		c.Fault(fault.CodeNotAnEdge, c.Where("edge"), message.Text("name", c.Name))
		return false
	}
	along := 3 - open - thick
	centre, okC := c.need("centre")
	chord, okW := c.need("chord")
	depth, okD := c.need("depth")
	if !okC || !okW || !okD || !c.Positive(chord, "chord", c.name+".chord") ||
		!c.Positive(depth, "depth", c.name+".depth") {
		return false
	}
	out := &piece.Dip{Open: side, Centre: c.local(along, centre), Chord: c.figure(chord), Depth: c.figure(depth)}
	switch size := c.size(open); {
	case out.Depth.Nm >= size.Nm:
		c.Fault(fault.CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", out.Depth.Nm), message.Length("thickness", size.Nm))
		return false
	case 2*out.Depth.Nm > out.Chord.Nm:
		c.Fault(fault.CodeScoop, c.Block.Where, message.Text("name", c.Name), message.Length("depth", out.Depth.Nm), message.Length("chord", out.Chord.Nm))
		return false
	}
	c.out.Dip = out
	return true
}
