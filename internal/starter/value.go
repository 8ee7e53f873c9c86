package starter

import (
	"math/big"
	"strconv"
	"strings"

	"scantling/internal/document"
	"scantling/internal/unit"
)

// value returns the text of an attribute for the new document: as the recipe has
// it, lengths in the new document's units.
func (w *writer) value(a *document.Attribute, length bool) string {
	if !length || w.system == unit.Metric {
		return w.file.Written(a.Value.Place())
	}
	return w.formula(a.Value)
}

// formula writes a length, or an object of lengths, in the new units; anything
// else stays as it is.
func (w *writer) formula(x document.Expr) string {
	switch x := x.(type) {
	case *document.Number:
		nm := new(big.Rat).Mul(x.Value, big.NewRat(int64(unit.Millimetre), 1))
		if l, ok := unit.Of(unit.DimLength, nm).Length(); ok {
			return w.inUnits(l)
		}
	case *document.Object:
		var fields []string
		for _, f := range x.Fields {
			fields = append(fields, f.Name+" = "+w.formula(f.Value))
		}
		return "{ " + strings.Join(fields, ", ") + " }"
	}
	return w.file.Written(x.Place())
}

// inUnits writes a length as a bare number of the new document: in inches
// rounded to sixteenths, fractions in quotation marks.
func (w *writer) inUnits(l unit.Length) string {
	show := unit.Show{System: w.system, Resolution: unit.Micrometre, Denominator: 16}
	text := show.Format(l)
	if strings.Contains(text, "/") {
		return quote(text)
	}
	return text
}

// quote writes a text of our own documents as the language does.
func quote(text string) string { return strconv.Quote(text) }
