package evaluate

import (
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
	if !ok || !c.w().positive(diameter, c.b.Attribute("diameter"), c.name+".diameter") {
		return false
	}
	out := &piece.Bore{Open: side, Diameter: c.w().figure(diameter)}
	if out.At, ok = c.centre(open); !ok {
		return false
	}
	if c.b.Has("through") {
		v, _ := c.d.s.maker.Truth(c.e.value(c.b, "through", ""))
		out.Through = v.Is.Truth()
	}
	out.Depth = c.p.sizeAlong(open)
	if !out.Through {
		depth, ok := c.need("depth")
		if !ok || !c.w().positive(depth, c.b.Attribute("depth"), c.name+".depth") {
			return false
		}
		if out.Depth.Nm <= c.w().figure(depth).Nm {
			c.w().fault(CodeCutThrough, c.b.Where, message.Text("name", c.d.name), message.Length("depth", c.w().figure(depth).Nm), message.Length("thickness", out.Depth.Nm))
			return false
		}
		out.Depth = c.w().figure(depth)
	}
	c.out.Bore = out
	return true
}

// centre reads where a hole is from two sides of the part, and gives it along
// the two local axes that it does not run along, in their order.
func (c *cutting) centre(open piece.Axis) (at [2]piece.Figure, ok bool) {
	if !c.b.Has("at") {
		c.d.s.missing(c.b, "at")
		return at, false
	}
	v := c.e.value(c.b, "at", "")
	if v.OK() && v.Kind != formula.Object {
		c.w().fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
	}
	if v.Kind != formula.Object {
		return at, false
	}
	openLocal, _ := c.p.form().frame.LocalOf(open)
	set := [2]bool{}
	for _, f := range v.Fields {
		axis, low, isFace := faceOf(f.Name)
		if !isFace || axis == open {
			c.w().fault(CodeUnknownField, f.Value.Where, message.Text("word", f.Name), message.Text("block", "at"), message.Text("known", joinWords(otherWords(open))))
			return at, false
		}
		l, good := c.d.s.maker.Length(f.Value, c.name+".at."+f.Name)
		if !good {
			return at, false
		}
		if !low {
			l = quantity(c.w().ledger.Less("", c.p.sizeAlong(axis), c.w().figure(l)))
		}
		local, _ := c.p.form().frame.LocalOf(axis)
		i := 0
		if int(local) > 3-int(openLocal)-int(local) {
			i = 1
		}
		at[i], set[i] = c.local(axis, l), true
	}
	if !set[0] || !set[1] {
		c.w().fault(CodeCutPlace, c.b.Where, message.Text("name", c.d.name))
		return at, false
	}
	return at, true
}

func otherWords(open piece.Axis) []string {
	var out []string
	for axis := range 3 {
		if piece.Axis(axis) != open {
			out = append(out, lowWords[axis], highWords[axis])
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
	f := c.p.form()
	if open == f.thick {
		c.w().fault(CodeNotAnEdge, c.b.Attribute("edge").Value.Place(), message.Text("name", c.d.name))
		return false
	}
	along := 3 - open - f.thick
	centre, okC := c.need("centre")
	chord, okW := c.need("chord")
	depth, okD := c.need("depth")
	if !okC || !okW || !okD || !c.w().positive(chord, c.b.Attribute("chord"), c.name+".chord") ||
		!c.w().positive(depth, c.b.Attribute("depth"), c.name+".depth") {
		return false
	}
	out := &piece.Dip{Open: side, Centre: c.local(along, centre), Chord: c.w().figure(chord), Depth: c.w().figure(depth)}
	switch size := c.p.sizeAlong(open); {
	case out.Depth.Nm >= size.Nm:
		c.w().fault(CodeCutThrough, c.b.Where, message.Text("name", c.d.name), message.Length("depth", out.Depth.Nm), message.Length("thickness", size.Nm))
		return false
	case 2*out.Depth.Nm > out.Chord.Nm:
		c.w().fault(CodeScoop, c.b.Where, message.Text("name", c.d.name), message.Length("depth", out.Depth.Nm), message.Length("chord", out.Chord.Nm))
		return false
	}
	c.out.Dip = out
	return true
}

// eased works out edges taken off; each edge named is a cut of its own.
func (c *cutting) eased() bool {
	c.out.Kind = piece.Eased
	attribute := "radius"
	if c.b.Has("chamfer") {
		attribute = "chamfer"
	}
	size, ok := c.need(attribute)
	if !ok || !c.w().positive(size, c.b.Attribute(attribute), c.name+"."+attribute) {
		return false
	}
	edges := c.e.value(c.b, "edges", "")
	if !c.b.Has("edges") {
		c.d.s.missing(c.b, "edges")
		return false
	}
	for i, item := range edges.Items {
		a, b, ok := c.edge(item)
		if !ok {
			return false
		}
		cut := c.out
		if len(edges.Items) > 1 {
			cut.Address = c.p.addr.Nth(slug(c.d.name), i+1)
		}
		cut.Ease = &piece.Ease{Sides: [2]piece.Side{a, b}, Radius: c.w().figure(size), Chamfer: attribute == "chamfer"}
		c.w().out.Cuts = append(c.w().out.Cuts, cut)
	}
	return false // they have been written already
}

// edge reads two faces that meet: ["top", "front"].
func (c *cutting) edge(v formula.Value) (a, b piece.Side, ok bool) {
	if v.Kind != formula.List || len(v.Items) != 2 {
		c.w().fault(CodeEdges, v.Where, message.Text("name", c.d.name))
		return "", "", false
	}
	var sides [2]piece.Side
	for i, item := range v.Items {
		word, isText := c.d.s.maker.Words(item)
		d, known := c.p.faceWord(word)
		if !isText || !known {
			c.w().fault(CodeEdges, item.Where, message.Text("name", c.d.name))
			return "", "", false
		}
		sides[i] = c.p.form().frame.SideToward(d)
	}
	axisA, _ := sides[0].Axis()
	axisB, _ := sides[1].Axis()
	if axisA == axisB {
		c.w().fault(CodeEdges, v.Where, message.Text("name", c.d.name))
		return "", "", false
	}
	return sides[0], sides[1], true
}
