package carve

import (
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/message"
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
