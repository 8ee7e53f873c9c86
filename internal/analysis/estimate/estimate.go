package estimate

import (
	"math"
	"slices"

	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Arg is an argument: an entry, and the ends of its range if it has one.
type Arg struct {
	ID        ledger.ID
	Low, High unit.Value
	Source    figure.Source
	// Missing is set instead of all else where there is no such datum.
	Missing plan.Datum
}

// Of returns a figure of the ledger as an argument without a range.
func Of(f ledger.Figure) Arg { return Arg{ID: f.Entry} }

// Entry returns an entry as an argument without a range.
func Entry(id ledger.ID) Arg { return Arg{ID: id} }

// Lack returns an argument that is missing.
func Lack(d plan.Datum) Arg { return Arg{Missing: d} }

// Maker makes estimates in a ledger with the functions given, which it teaches to it.
type Maker struct {
	Ledger *ledger.Ledger
	funcs  ledger.Functions
}

// New returns a maker.
func New(l *ledger.Ledger, funcs ledger.Functions) *Maker {
	l.Learn(funcs)
	return &Maker{l, funcs}
}

// Number records a bare number from a table, with its range, as an argument; a
// figure that is not known is missing as the datum given.
func Number[N ~float64](m *Maker, name string, f figure.Of[N], lacking plan.Datum) Arg {
	return record(m, name, f, lacking, func(x N) unit.Value { return Value(unit.DimUntyped, float64(x)) })
}

func record[N ~float64](m *Maker, name string, f figure.Of[N], lacking plan.Datum, value func(N) unit.Value) Arg {
	if !f.Known() {
		return Lack(lacking)
	}
	id := m.Ledger.Given(ledger.Entry{Name: name, Value: value(f.Value), Origin: ledger.Reference, Source: f.Source.String(), Status: string(f.Source.Status)})
	a := Arg{ID: id, Source: f.Source}
	if f.Low != f.Value || f.High != f.Value {
		a.Low, a.High = value(f.Low), value(f.High)
	}
	return a
}

// Given records a value that something outside the tables gives: a document, the
// shop, the solids.
func (m *Maker) Given(name string, v unit.Value, origin ledger.Origin, source string) Arg {
	return Arg{ID: m.Ledger.Given(ledger.Entry{Name: name, Value: v, Origin: origin, Source: source})}
}

// Text records a word.
func (m *Maker) Text(name, s string) Arg {
	return m.Given(name, unit.OfText(s), ledger.Reference, "")
}

// Again returns an estimate as an argument of another; its range goes with it.
func Again(e plan.Estimate) Arg {
	if !e.Known() {
		if len(e.Missing) == 0 {
			return Lack("")
		}
		return Lack(e.Missing[0])
	}
	a := Arg{ID: e.Entry, Source: e.Source}
	if !e.Low.Equal(e.Value) || !e.High.Equal(e.Value) {
		a.Low, a.High = e.Low, e.High
	}
	return a
}

// maxRanges is how many arguments with a range are taken to both ends; of more, the
// last keep their value.
const maxRanges = 5

// Estimate calls a function of the ledger. The low and the high end are the least
// and greatest of the values at all ends of the arguments' ranges. The estimate is
// as good as its weakest source. Where an argument is missing, or the function
// refuses, there is no value; a refusal without anything missing lacks the datum
// given.
func (m *Maker) Estimate(name, fn, in string, source figure.Source, refused plan.Datum, args ...Arg) plan.Estimate {
	out := plan.Estimate{Unit: in, Source: source}
	ids := make([]ledger.ID, len(args))
	for i, a := range args {
		if a.ID == 0 && !slices.Contains(out.Missing, a.Missing) {
			out.Missing = append(out.Missing, a.Missing)
		}
		ids[i] = a.ID
		if a.Source.Status != "" {
			out.Source.Status = figure.Weaker(out.Source.Status, a.Source.Status)
		}
	}
	if out.Missing != nil {
		return out
	}
	id, err := m.Ledger.Make(name, ledger.OpCall, fn, ids...)
	if err != nil {
		out.Missing = []plan.Datum{refused}
		return out
	}
	out.Entry, out.Value = id, m.Ledger.Value(id)
	out.Low, out.High = m.ends(fn, out.Value, args)
	return out
}

// ends calls the function at all ends of the ranges.
func (m *Maker) ends(fn string, value unit.Value, args []Arg) (low, high unit.Value) {
	values := make([]unit.Value, len(args))
	var ranged []int
	for i, a := range args {
		values[i] = m.Ledger.Value(a.ID)
		if !a.Low.IsZero() && len(ranged) < maxRanges {
			ranged = append(ranged, i)
		}
	}
	low, high = value, value
	if len(ranged) == 0 {
		return low, high
	}
	for corner := range 1 << len(ranged) {
		at := slices.Clone(values)
		for bit, i := range ranged {
			at[i] = args[i].Low
			if corner>>bit&1 == 1 {
				at[i] = args[i].High
			}
		}
		v, err := m.funcs[fn](at)
		if err != nil {
			continue
		}
		if l, err := low.Min(v, 0); err == nil {
			low = l
		}
		if h, err := high.Max(v, 0); err == nil {
			high = h
		}
	}
	return low, high
}

// Value returns a quantity rounded to six significant digits: what a formula
// about wood gives is worth no more, and every machine stores the same.
func Value(d unit.Dim, x float64) unit.Value {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return unit.OfInt(d, 0)
	}
	scale := int64(1)
	for size := math.Abs(x); size < 99999.5 && scale < 1e12; size *= 10 {
		scale *= 10
	}
	n := unit.OfInt(d, int64(math.Round(x*float64(scale)))).Number()
	return unit.Of(d, n.Quo(n, unit.OfInt(unit.DimUntyped, scale).Number()))
}
