package carve

import (
	"scantling/internal/carve/angle"
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// trench is how a straight cut lies: into which side, along which axes.
type trench struct {
	side              piece.Side
	open, run, across piece.Axis
}

// trench works out the side that a straight cut goes into and its run.
func (c *cutting) trench() (trench, bool) {
	side, open, ok := c.open("side")
	if !ok {
		return trench{}, false
	}
	run, ok := c.run(open)
	return trench{side, open, run, 3 - open - run}, ok
}

// slot works out a straight cut.
func (c *cutting) slot() bool {
	t, ok := c.trench()
	if !ok {
		return false
	}
	width, depth, ok := c.section(t)
	if !ok {
		return false
	}
	near, far, ok := c.between(t.across, width)
	if !ok {
		return false
	}
	s := &piece.Slot{Open: t.side, Depth: depth}
	s.Run, _ = c.Part.Frame.LocalOf(t.run)
	s.Near, s.Far = c.stretch(t.across, near, far)
	if !c.walls(s) || !c.along(s, t.run) {
		return false
	}
	c.out.Slot = s
	return c.fits(s, t.open, t.across)
}

// section works out the width, where it follows from something else, and the
// depth of a straight cut.
func (c *cutting) section(t trench) (width formula.Value, depth piece.Figure, ok bool) {
	if c.out.Kind == piece.VChannel {
		return c.vee()
	}
	if k, found := c.Shop.Cutter(c.out.Cutter); found && c.Has("centre") && !c.Has("width") {
		id := c.Maker.Ledger.Given(ledger.Entry{Name: c.name + ".width", Value: unit.OfLength(k.Tool.Diameter), Origin: ledger.Bought, Where: k.Where})
		width = quantity(c.Maker.Ledger.Figure(id))
	}
	if c.yes("through") {
		return width, c.size(t.open), true
	}
	v, ok := c.need("depth")
	if !ok || !c.Positive(v, "depth", c.name+".depth") {
		return width, depth, false
	}
	return width, c.figure(v), true
}

// yes works out an attribute that is yes or no.
func (c *cutting) yes(attribute string) bool {
	if !c.Has(attribute) {
		return false
	}
	v, ok := c.Maker.Truth(c.Value(attribute, ""))
	return ok && v.Is.Truth()
}

// vee works out a V channel from two of width, depth and the angle between its
// walls: the width is twice the depth by the tangent of half the angle.
func (c *cutting) vee() (width formula.Value, depth piece.Figure, ok bool) {
	l := c.Maker.Ledger
	var half formula.Value
	if c.Has("angle") {
		whole, good := c.angle("angle", 20, 160)
		if !good {
			return width, depth, false
		}
		half = angle.Half(c.Maker, whole)
	}
	wide := c.Has("width") || c.Has("near") && c.Has("far")
	switch {
	case c.Has("depth"):
		v, good := c.need("depth")
		if !good || !c.Positive(v, "depth", c.name+".depth") {
			return width, depth, false
		}
		depth = c.figure(v)
		if !wide {
			if !half.OK() {
				c.Missing("angle")
				return width, depth, false
			}
			side, good := angle.Rise(c.Maker, "", depth, half)
			if !good {
				return width, depth, false
			}
			width = quantity(l.Sum(c.name+".width", side, side))
		}
		return width, depth, true
	case c.Has("width") && half.OK():
		v, good := c.need("width")
		if !good || !c.Positive(v, "width", c.name+".width") {
			return width, depth, false
		}
		depth, ok = angle.Run(c.Maker, c.name+".depth", l.Half("", c.figure(v)), half)
		return v, depth, ok
	}
	c.Missing("depth")
	return width, depth, false
}

// walls works out the radius of the bottom's corners and the lean of the walls.
func (c *cutting) walls(s *piece.Slot) bool {
	if c.out.Kind == piece.VChannel {
		s.LeanNear = c.Maker.Ledger.Half(c.name+".lean", c.Maker.Ledger.Less("", s.Far, s.Near))
		s.LeanFar = s.LeanNear
		return true
	}
	if c.Has("radius") {
		v, ok := c.need("radius")
		if !ok || !c.Positive(v, "radius", c.name+".radius") {
			return false
		}
		s.Corner = c.figure(v)
		return c.within("radius", s.Corner, c.Maker.Ledger.Half("", c.Maker.Ledger.Less("", s.Far, s.Near)))
	}
	if k, found := c.Shop.Cutter(c.out.Cutter); found && k.Tool.NoseRadius() > 0 {
		id := c.Maker.Ledger.Given(ledger.Entry{Name: c.name + ".corner", Value: unit.OfLength(k.Tool.NoseRadius()), Origin: ledger.Bought, Where: k.Where})
		s.Corner = c.Maker.Ledger.Figure(id)
	}
	return true
}

// within reports a radius that is greater than half the width that it rounds.
func (c *cutting) within(attribute string, radius, half piece.Figure) bool {
	if radius.Nm <= half.Nm {
		return true
	}
	c.Fault(fault.CodeRound, c.Where(attribute), message.Text("name", c.Name), message.Length("radius", radius.Nm), message.Length("half", half.Nm))
	return false
}

// ended works out the radius of the stopped ends, as seen from the open side: as
// said, or as the cutter leaves them.
func (c *cutting) ended(s *piece.Slot) (piece.Figure, bool) {
	l := c.Maker.Ledger
	half := l.Half("", l.Less("", s.Far, s.Near))
	if c.Has("corner") {
		v, ok := c.need("corner")
		if !ok || v.Is.Sign() < 0 {
			return piece.Figure{}, ok && c.Positive(v, "corner", c.name+".corner")
		}
		return c.figure(v), c.within("corner", c.figure(v), half)
	}
	word := c.Words("ends")
	k, turns := c.Shop.Cutter(c.out.Cutter)
	turns = turns && k.Tool.Shape == tool.Straight
	switch {
	case word == "square":
	case word != "" && word != "round":
		c.BadWord("ends", word, splitWords("round, square"))
		return piece.Figure{}, false
	case s.Corner.Nm > 0:
		return l.Least(c.name+".end", s.Corner, half), true
	case s.LeanNear.Nm > 0:
		return l.Same(c.name+".end", half), true
	case turns:
		id := l.Given(ledger.Entry{Name: k.ID + ".radius", Value: unit.OfLength(k.Tool.Diameter / 2), Origin: ledger.Bought, Where: k.Where})
		return l.Least(c.name+".end", l.Figure(id), half), true
	case word == "round":
		return l.Same(c.name+".end", half), true
	}
	return piece.Figure{}, true
}

// run works out the axis that a slot runs along: as said, or along the grain.
func (c *cutting) run(open piece.Axis) (piece.Axis, bool) {
	if !c.Has("runs") {
		grain, _ := c.Part.Frame.Length.Axis()
		if grain == open || c.Assembled {
			c.Missing("runs")
			return 0, false
		}
		return grain, true
	}
	word := c.Words("runs")
	d, ok := direction.Way(word)
	axis, _ := d.Axis()
	if !ok || axis == open {
		if word != "" {
			c.BadWord("runs", word, splitWords("right, back, up"))
		}
		return 0, false
	}
	return axis, true
}

// between works out where a slot lies across its run: near and far, or a centre
// and a width, or one side and a width. The width may be known.
func (c *cutting) between(across piece.Axis, width formula.Value) (near, far formula.Value, ok bool) {
	has := c.Block.Has
	wide := has("width") || width.OK()
	if wide && !width.OK() && (has("near") != has("far") || has("centre")) {
		if width, ok = c.need("width"); !ok {
			return near, far, false
		}
	}
	switch {
	case has("near") && has("far"):
		near, okN := c.need("near")
		far, okF := c.need("far")
		return near, far, okN && okF
	case has("centre") && wide:
		centre, ok := c.need("centre")
		if !ok {
			return near, far, false
		}
		half := c.Maker.Ledger.Half("", c.figure(width))
		return c.shifted(centre, ledger.OpSub, half), c.shifted(centre, ledger.OpAdd, half), true
	case has("near") && wide:
		near, ok := c.need("near")
		return near, c.shifted(near, ledger.OpAdd, c.figure(width)), ok
	case has("far") && wide:
		far, ok := c.need("far")
		return c.shifted(far, ledger.OpSub, c.figure(width)), far, ok
	}
	c.Fault(fault.CodeCutPlace, c.Block.Where, message.Text("name", c.Name))
	return near, far, false
}

// shifted moves a length or a position by another length.
func (c *cutting) shifted(v formula.Value, op ledger.Op, by piece.Figure) formula.Value {
	out := quantity(c.Maker.Ledger.Figure(c.make(op, v.Entry, by.Entry)))
	if v.Position != nil {
		out.Position = &formula.Position{Axis: v.Position.Axis, Frame: v.Position.Frame}
	}
	return out
}

// fits sees to it that a slot has a width and leaves something of the part.
func (c *cutting) fits(s *piece.Slot, open, across piece.Axis) bool {
	deep := c.size(open)
	switch {
	case s.Far.Nm <= s.Near.Nm || s.To.Nm <= s.From.Nm:
		c.Fault(formula.CodeNotPositive, c.Block.Where, message.Text("name", c.name), message.Length("got", min(s.Far.Nm-s.Near.Nm, s.To.Nm-s.From.Nm)))
		return false
	case s.Far.Nm <= 0 || s.Near.Nm >= c.size(across).Nm:
		c.Fault(fault.CodeCutMisses, c.Block.Where, message.Text("name", c.Name), message.Length("near", s.Near.Nm), message.Length("width", c.size(across).Nm))
		return false
	case s.To.Nm <= 0 || s.From.Nm >= c.Part.Sizes()[s.Run].Nm:
		c.Fault(fault.CodeCutMisses, c.Block.Where, message.Text("name", c.Name), message.Length("near", s.From.Nm), message.Length("width", c.Part.Sizes()[s.Run].Nm))
		return false
	case s.Depth.Nm >= deep.Nm && c.out.Kind != piece.Notch && !c.Has("through"):
		c.Fault(fault.CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", s.Depth.Nm), message.Length("thickness", deep.Nm))
		return false
	}
	return true
}
