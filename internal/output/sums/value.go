package sums

import (
	"math/big"
	"strconv"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// value writes a value exactly. Lengths are in the reader's system, those that
// are no sixty-fourth of an inch in millimetres; named says whether a length
// carries its unit.
func (t *teller) value(v unit.Value, named bool) string {
	switch v.Dim() {
	case unit.DimLength:
		if l, ok := v.Length(); ok {
			return t.length(l, named)
		}
	case unit.DimUntyped, unit.DimCount, unit.DimRatio:
		return number(v.Number())
	case unit.DimText:
		return strconv.Quote(v.Text())
	case unit.DimList:
		return t.words.Label("sums.list", message.Count("n", v.Len()))
	}
	return v.String()
}

func (t *teller) length(l unit.Length, named bool) string {
	return Exact(t.words.Show().Works(), l, named)
}

// Exact writes a length exactly: in millimetres, or as a fraction of an inch; what
// is no sixty-fourth is in millimetres and says so. Named adds the unit.
func Exact(system unit.System, l unit.Length, named bool) string {
	if system == unit.Inches {
		if l%unit.SixtyFourth == 0 {
			return shown(unit.Show{System: unit.Inches, Denominator: 64}, l, named)
		}
		named = true
	}
	return shown(unit.Show{System: unit.Metric, Resolution: 1}, l, named)
}

func shown(s unit.Show, l unit.Length, named bool) string {
	if named {
		return s.FormatUnit(l)
	}
	return s.Format(l)
}

// number writes a number as a decimal of at most six places or as a fraction.
func number(n *big.Rat) string {
	if n == nil {
		return "?"
	}
	if n.IsInt() {
		return n.Num().String()
	}
	if places, exact := n.FloatPrec(); exact && places <= 6 {
		return n.FloatString(places)
	}
	return n.RatString()
}

// Text writes a line without its indent: name, value, sum, and in brackets where
// it was written and, for what is no sum, whose word it is. Home is the document
// whose name need not be said.
func (l Line) Text(w *words.Words, home string) string {
	out := l.Name + " = " + l.Value
	if l.Sum != "" {
		out += " = " + l.Sum
	}
	var notes []string
	if l.Sum == "" && !l.Above && l.Origin != ledger.Document && l.Origin != ledger.Derived {
		notes = append(notes, w.Label("origin."+string(l.Origin)))
	}
	if l.Source != "" {
		notes = append(notes, l.Source)
	}
	if where := place(w, l.Where, home); where != "" {
		notes = append(notes, where)
	}
	switch {
	case l.Above:
		notes = append(notes, w.Label("sums.above"))
	case l.Below:
		notes = append(notes, w.Label("sums.below"))
	}
	if len(notes) == 0 {
		return out
	}
	out += "  ("
	for i, n := range notes {
		if i > 0 {
			out += "; "
		}
		out += n
	}
	return out + ")"
}

func place(w *words.Words, p diag.Place, home string) string {
	switch {
	case p.Line == 0:
		return ""
	case p.File == home || p.File == "":
		return w.Label("sums.line", message.Count("line", p.Line))
	}
	return w.Label("sums.line-of", message.Text("file", p.File), message.Count("line", p.Line))
}
