package carve

import (
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// angle works out an attribute that holds an angle between two limits in degrees.
func (c *cutting) angle(attribute string, least, most float64) (formula.Value, bool) {
	if !c.Has(attribute) {
		c.Missing(attribute)
		return formula.Value{}, false
	}
	return c.inRange(c.Value(attribute, c.name+"."+attribute), c.name+"."+attribute, least, most)
}

// inRange holds a value as an angle against limits in degrees.
func (c *cutting) inRange(v formula.Value, name string, least, most float64) (formula.Value, bool) {
	a, ok := c.Maker.Angle(v, name)
	if !ok {
		return formula.Value{}, false
	}
	if x := a.Is.Float(); x < least || x > most {
		c.Fault(fault.CodeAngle, v.Where, message.Text("name", name), message.Ratio("got", x), message.Ratio("least", least), message.Ratio("most", most))
		return formula.Value{}, false
	}
	return a, true
}

// halved is half an angle.
func (c *cutting) halved(a formula.Value) formula.Value {
	two := c.Maker.Ledger.Given(ledger.Entry{Value: unit.OfInt(unit.DimUntyped, 2), Origin: ledger.Derived})
	id := c.make(ledger.OpDiv, a.Entry, two)
	a.Entry, a.Is = id, c.Maker.Ledger.Value(id)
	return a
}

// scaled multiplies a length by a ratio of the ledger, or divides it by one, to the
// nanometre.
func (c *cutting) scaled(name string, f piece.Figure, op ledger.Op, ratio ledger.ID) piece.Figure {
	id := c.make(op, f.Entry, ratio)
	return c.Maker.Ledger.Round(name, c.Maker.Ledger.Figure(id), unit.Nanometre, unit.Nearest)
}
