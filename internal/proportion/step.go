package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Steps that a shop sets its machines to.
const (
	MetricStep = unit.Millimetre / 2
	InchStep   = unit.Inch / 32
)

// maxSize bounds the sizes that the rules take.
const maxSize = 5 * unit.Metre

// part returns a fraction of a size rounded to the step, at least one step.
func part(size unit.Length, over, under int64, step unit.Length) unit.Length {
	return max(step, (size*unit.Length(over)/unit.Length(under)).Round(step, unit.Nearest))
}

// ruled returns a figure of common practice with its rule's key.
func ruled(key string, value, low, high unit.Length) figure.Of[unit.Length] {
	return figure.Between(value, min(value, low), max(value, high), figure.PracticeSource("proportion."+key))
}

// sized checks a size that a rule starts from.
func sized(key, quantity string, size unit.Length) error {
	return figure.LengthRange("proportion."+key, "quantity."+quantity, size, unit.Millimetre, maxSize)
}
