package carve

import (
	"scantling/internal/carve/angle"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// sunk works out the widened mouth of a hole: a countersink by its diameter and
// angle (90 degrees unless said) or depth, a counterbore by diameter and depth.
func (c *cutting) sunk(b *piece.Bore) bool {
	for _, word := range []string{"countersink", "counterbore"} {
		if !c.Has(word) {
			continue
		}
		v := c.Value(word, "")
		if v.OK() && v.Kind != formula.Object {
			c.Fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
		}
		if v.Kind != formula.Object {
			return false
		}
		sink := &piece.Sink{Flat: word == "counterbore"}
		if !c.sink(word, v, b, sink) {
			return false
		}
		switch {
		case sink.Diameter.Nm <= b.Diameter.Nm:
			c.Fault(fault.CodeSink, v.Where, message.Text("name", c.Name), message.Length("diameter", sink.Diameter.Nm), message.Length("hole", b.Diameter.Nm))
			return false
		case sink.Depth.Nm > b.Depth.Nm:
			c.Fault(fault.CodeCutThrough, v.Where, message.Text("name", c.Name), message.Length("depth", sink.Depth.Nm), message.Length("thickness", b.Depth.Nm))
			return false
		}
		b.Sink = sink
	}
	return true
}

// sink reads the sizes of a widened mouth.
func (c *cutting) sink(word string, v formula.Value, b *piece.Bore, out *piece.Sink) bool {
	for _, f := range v.Fields {
		switch f.Name {
		case "diameter", "depth", "angle":
		default:
			c.Fault(formula.CodeUnknownField, f.Value.Where, message.Text("word", f.Name), message.Text("block", word), message.Text("known", "diameter, depth, angle"))
			return false
		}
	}
	name := c.name + "." + word
	d, ok := c.field(v, word, "diameter", name)
	if !ok {
		return false
	}
	out.Diameter = d
	if _, said := v.Field("depth"); said || out.Flat {
		out.Depth, ok = c.field(v, word, "depth", name)
		return ok
	}
	cone := formula.Value{Kind: formula.Quantity, Is: unit.OfInt(unit.DimAngle, 90), Where: v.Where}
	cone.Entry = c.Maker.Ledger.Given(ledger.Entry{Name: "countersink.angle", Value: cone.Is, Origin: ledger.HouseRule, Where: v.Where})
	if a, said := v.Field("angle"); said {
		if cone, ok = c.inRange(a, name+".angle", 20, 160); !ok {
			return false
		}
	}
	l := c.Maker.Ledger
	out.Depth, ok = angle.Run(c.Maker, name+".depth", l.Half("", l.Less("", d, b.Diameter)), angle.Half(c.Maker, cone))
	return ok
}

// field works out a length of an object that it cannot do without.
func (c *cutting) field(v formula.Value, block, word, name string) (piece.Figure, bool) {
	f, said := v.Field(word)
	if !said {
		c.Fault(formula.CodeMissing, v.Where, message.Text("name", word), message.Text("block", block))
		return piece.Figure{}, false
	}
	l, ok := c.Maker.Length(f, name+"."+word)
	if ok && l.Is.Sign() <= 0 {
		c.Fault(formula.CodeNotPositive, f.Where, message.Text("name", name+"."+word), message.Length("got", c.figure(l).Nm))
		return piece.Figure{}, false
	}
	return c.figure(l), ok
}
