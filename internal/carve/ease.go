package carve

import (
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// easeSizes is the attribute that gives the size of an edge taken off: of each word
// for it the radius, or the leg of a chamfer.
var easeSizes = map[string]string{"chamfer": "leg", "round-over": "radius", "cove": "radius", "eased": "radius"}

// eased works out edges taken off: rounded over, chamfered or hollowed, whole or
// from one place to another. Each edge named is a cut of its own.
func (c *cutting) eased(word string) bool {
	c.out.Kind = piece.Eased
	attribute := easeSizes[word]
	if word == "eased" && c.Has("chamfer") {
		attribute = "chamfer"
	}
	size, ok := c.need(attribute)
	if !ok || !c.Positive(size, attribute, c.name+"."+attribute) {
		return false
	}
	edges := c.Value("edges", "")
	if !c.Has("edges") {
		c.Missing("edges")
		return false
	}
	out := piece.Ease{Radius: c.figure(size), Chamfer: attribute != "radius", Cove: word == "cove"}
	for i, item := range edges.Items {
		cut, ease := c.out, out
		if ease.Sides[0], ease.Sides[1], ok = c.edge(item); !ok || !c.stopped(&ease) {
			c.more = nil
			return false
		}
		if len(edges.Items) > 1 {
			cut.Address = c.Nth(i + 1)
		}
		cut.Ease = &ease
		c.more = append(c.more, cut)
	}
	return false // they are several
}

// stopped works out where an edge is taken off, if not along its whole length, and
// sees to it that the part is wider than what is taken.
func (c *cutting) stopped(e *piece.Ease) bool {
	a, _ := e.Sides[0].Axis()
	b, _ := e.Sides[1].Axis()
	for _, local := range []piece.Local{a, b} {
		if whole := c.Part.Sizes()[local]; e.Radius.Nm >= whole.Nm {
			c.Fault(fault.CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", e.Radius.Nm), message.Length("thickness", whole.Nm))
			return false
		}
	}
	if !c.Has("from") && !c.Has("to") {
		return true
	}
	run, _ := c.Part.Frame.Directions()[3-int(a)-int(b)].Axis()
	whole := c.size(run)
	start, end, ok := c.stations(run, whole, piece.Figure{})
	if !ok {
		return false
	}
	e.From, e.To = c.stretch(run, start, end)
	if e.From.Nm >= e.To.Nm {
		c.Fault(formula.CodeNotPositive, c.Block.Where, message.Text("name", c.name), message.Length("got", e.To.Nm-e.From.Nm))
		return false
	}
	return true
}

// edge reads two faces that meet: ["top", "front"].
func (c *cutting) edge(v formula.Value) (a, b piece.Side, ok bool) {
	if v.Kind != formula.List || len(v.Items) != 2 {
		c.Fault(fault.CodeEdges, v.Where, message.Text("name", c.Name))
		return "", "", false
	}
	var sides [2]piece.Side
	for i, item := range v.Items {
		word, isText := c.Maker.Words(item)
		d, known := direction.Facing(word, c.Part.Hand)
		if !isText || !known {
			c.Fault(fault.CodeEdges, item.Where, message.Text("name", c.Name))
			return "", "", false
		}
		sides[i] = c.Part.Frame.SideToward(d)
	}
	axisA, _ := sides[0].Axis()
	axisB, _ := sides[1].Axis()
	if axisA == axisB {
		c.Fault(fault.CodeEdges, v.Where, message.Text("name", c.Name))
		return "", "", false
	}
	return sides[0], sides[1], true
}
