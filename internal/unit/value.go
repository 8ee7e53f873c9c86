package unit

import (
	"math"
	"math/big"
	"slices"
)

// Dim is the dimension of a [Value].
type Dim string

// The dimensions. Untyped is a bare literal, which is a plain number until it
// stands beside something with a dimension, as a constant in Go is.
const (
	DimUntyped  Dim = "number"
	DimLength   Dim = "length"      // nanometres
	DimAngle    Dim = "angle"       // degrees
	DimCount    Dim = "count"       // whole things
	DimRatio    Dim = "ratio"       // one by another of a kind
	DimArea     Dim = "area"        // square nanometres
	DimVolume   Dim = "volume"      // cubic nanometres
	DimMass     Dim = "mass"        // grams
	DimForce    Dim = "force"       // newtons
	DimMoney    Dim = "money"       // hundredths of the shop's currency
	DimTime     Dim = "time"        // minutes
	DimHumidity Dim = "humidity"    // percent relative humidity
	DimMoisture Dim = "moisture"    // percent of dry mass
	DimTemp     Dim = "temperature" // degrees Celsius
	DimText     Dim = "text"
	DimTruth    Dim = "truth" // yes or no
	DimList     Dim = "list"
)

// Value is an exact quantity with its dimension. The zero Value is no value.
// Values are immutable: Number returns a copy. Compare them with
// [Value.Equal], not with ==.
type Value struct {
	dim  Dim
	num  number
	more *more
}

// more holds what few values have.
type more struct {
	text string
	list []Value
}

// Of returns the quantity n of dimension d, in the unit of d listed at [Dim].
func Of(d Dim, n *big.Rat) Value { return Value{dim: d, num: ofRat(new(big.Rat).Set(n))} }

// OfInt returns a whole quantity.
func OfInt(d Dim, n int64) Value { return Value{dim: d, num: whole(n)} }

// OfFloat returns the quantity that is exactly x; no value if x is infinite or
// not a number. It is for the results of formulas; a length that comes from one
// is better made by [FromMillimetres], which rounds it.
func OfFloat(d Dim, x float64) Value {
	r := new(big.Rat)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Value{}
	}
	return Value{dim: d, num: ofRat(r.SetFloat64(x))}
}

// OfLength returns a length.
func OfLength(l Length) Value { return OfInt(DimLength, int64(l)) }

// OfCount returns a count.
func OfCount(n int) Value { return OfInt(DimCount, int64(n)) }

// OfText returns a text.
func OfText(s string) Value { return Value{dim: DimText, more: &more{text: s}} }

// OfTruth returns yes or no.
func OfTruth(b bool) Value {
	if b {
		return OfInt(DimTruth, 1)
	}
	return OfInt(DimTruth, 0)
}

// OfList returns a list; it keeps its own copy of the slice.
func OfList(vs ...Value) Value {
	return Value{dim: DimList, more: &more{list: slices.Clone(vs)}}
}

// Dim returns the dimension; empty for no value.
func (v Value) Dim() Dim { return v.dim }

// IsZero reports whether v is no value at all.
func (v Value) IsZero() bool { return v.dim == "" }

// IsNumeric reports whether v is a number of some dimension: neither a text, a
// truth, a list nor no value.
func (v Value) IsNumeric() bool { return !v.num.none() && v.dim != DimTruth }

// Number returns a copy of the exact number, or nil where there is none.
func (v Value) Number() *big.Rat {
	if v.num.none() {
		return nil
	}
	return new(big.Rat).Set(v.num.rat())
}

// Float returns the float nearest to the number, in the unit of the dimension;
// 0 where there is none. It is for formulas and for drawing.
func (v Value) Float() float64 {
	if v.num.none() {
		return 0
	}
	f, _ := v.num.rat().Float64()
	return f
}

// Text returns the text of a text value.
func (v Value) Text() string {
	if v.more == nil {
		return ""
	}
	return v.more.text
}

// List returns a copy of the values of a list.
func (v Value) List() []Value { return slices.Clone(v.items()) }

// Len returns how many values a list has; 0 for what is no list.
func (v Value) Len() int { return len(v.items()) }

// Item returns value number n of a list, from 1, and whether there is one.
func (v Value) Item(n int64) (Value, bool) {
	if n < 1 || n > int64(v.Len()) {
		return Value{}, false
	}
	return v.items()[n-1], true
}

func (v Value) items() []Value {
	if v.more == nil {
		return nil
	}
	return v.more.list
}

// Truth reports whether a truth value is yes.
func (v Value) Truth() bool { return v.dim == DimTruth && v.num.sign() != 0 }

// Length rounds a length value to the nearest nanometre, halves away from zero.
func (v Value) Length() (Length, bool) {
	if v.dim != DimLength {
		return 0, false
	}
	n, ok := v.num.round(Nearest).int64()
	return Length(n), ok
}

// Int returns a whole number of any numeric dimension, or false if v is not one.
func (v Value) Int() (int64, bool) { return v.num.int64() }

// Sign returns -1, 0 or 1 as a number is below, at or above nought.
func (v Value) Sign() int { return v.num.sign() }

// Equal reports whether two values are the same quantity of the same dimension.
func (v Value) Equal(w Value) bool {
	return v.dim == w.dim && v.num.equal(w.num) && v.Text() == w.Text() &&
		slices.EqualFunc(v.items(), w.items(), Value.Equal)
}

// Hash returns a number that is the same for equal values, on every machine.
func (v Value) Hash() uint64 {
	h := hashText(14695981039346656037, string(v.dim))
	h = hashWord(hashWord(h, uint64(v.num.n)), uint64(v.num.d))
	if v.num.big != nil {
		h = hashText(h, v.num.big.RatString())
	}
	h = hashText(h, v.Text())
	for _, item := range v.items() {
		h = hashWord(h, item.Hash())
	}
	return h
}

// hashText and hashWord are FNV-1a (Fowler, Noll, Vo; IETF draft
// draft-eastlake-fnv), the second by whole words.
func hashText(h uint64, s string) uint64 {
	for i := range len(s) {
		h = (h ^ uint64(s[i])) * 1099511628211
	}
	return h
}

func hashWord(h, w uint64) uint64 { return (h ^ w) * 1099511628211 }
