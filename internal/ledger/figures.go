package ledger

import (
	"scantling/internal/unit"
)

// The methods below do the sums that analyses need, on figures. They panic only
// on our own mistakes: a figure whose entry is not in this ledger.

// Figure returns the length entry id as a figure, rounded to the nanometre; the
// zero figure if the entry is not a length.
func (l *Ledger) Figure(id ID) Figure {
	nm, ok := l.Value(id).Length()
	if !ok {
		return Figure{}
	}
	return Figure{nm, id}
}

// Leaf records a given length and returns it as a figure.
func (l *Ledger) Leaf(name string, length unit.Length, origin Origin, source string) Figure {
	return Figure{length, l.Given(Entry{Name: name, Value: unit.OfLength(length), Origin: origin, Source: source})}
}

// Sum adds figures.
func (l *Ledger) Sum(name string, terms ...Figure) Figure { return l.combine(name, OpAdd, terms) }

// Less takes all later figures from the first.
func (l *Ledger) Less(name string, terms ...Figure) Figure { return l.combine(name, OpSub, terms) }

// Least returns the smallest figure.
func (l *Ledger) Least(name string, terms ...Figure) Figure { return l.combine(name, OpMin, terms) }

// Greatest returns the greatest figure.
func (l *Ledger) Greatest(name string, terms ...Figure) Figure { return l.combine(name, OpMax, terms) }

// Same gives a figure another name.
func (l *Ledger) Same(name string, f Figure) Figure { return l.combine(name, OpSame, []Figure{f}) }

// Times multiplies a figure by num/den, exactly; the figure is then rounded to
// the nanometre. A den of nought counts as one.
func (l *Ledger) Times(name string, f Figure, num, den int64) Figure {
	if den == 0 {
		den = 1
	}
	n := l.Given(Entry{Value: unit.OfInt(unit.DimUntyped, num), Origin: Derived})
	id := l.must(l.Make(name, OpMul, "", f.Entry, n))
	if den != 1 {
		d := l.Given(Entry{Value: unit.OfInt(unit.DimUntyped, den), Origin: Derived})
		id = l.must(l.Make(name, OpDiv, "", id, d))
	}
	return l.Figure(id)
}

// Half halves a figure.
func (l *Ledger) Half(name string, f Figure) Figure { return l.Times(name, f, 1, 2) }

// Round rounds a figure to a multiple of step on the given side.
func (l *Ledger) Round(name string, f Figure, step unit.Length, side unit.Rounding) Figure {
	s := l.Given(Entry{Value: unit.OfLength(step), Origin: Derived})
	return l.Figure(l.must(l.Make(name, OpRound, roundingName(side), f.Entry, s)))
}

// ShareOf returns part number k, from 1, of f shared into n parts that add up to
// f to the nanometre (see [unit.Length.Share]). It panics if there is no such
// part.
func (l *Ledger) ShareOf(name string, f Figure, k, n int) Figure {
	parts := l.Given(Entry{Value: unit.OfCount(n), Origin: Derived})
	part := l.Given(Entry{Value: unit.OfCount(k), Origin: Derived})
	return l.Figure(l.must(l.Make(name, OpShare, "", f.Entry, parts, part)))
}

// As returns an entry as one of dimension d; a bare number counts in the given
// unit beside lengths. An entry that is of that dimension is returned itself.
func (l *Ledger) As(name string, id ID, d unit.Dim, bare unit.Length) (ID, error) {
	switch v := l.Value(id); {
	case v.Dim() == d:
		return id, nil
	case d == unit.DimLength && bare > 0:
		one := l.Given(Entry{Value: unit.OfLength(bare), Origin: Derived})
		return l.Make(name, OpAs, string(d), id, one)
	}
	return l.Make(name, OpAs, string(d), id)
}

// Call applies a registered function to entries and returns the length it gives.
func (l *Ledger) Call(name, fn string, args ...ID) (Figure, error) {
	id, err := l.Make(name, OpCall, fn, args...)
	if err != nil {
		return Figure{}, err
	}
	return l.Figure(id), nil
}

func (l *Ledger) combine(name string, op Op, terms []Figure) Figure {
	args := make([]ID, len(terms))
	for i, t := range terms {
		args[i] = t.Entry
	}
	return l.Figure(l.must(l.Make(name, op, "", args...)))
}

func (l *Ledger) must(id ID, err error) ID {
	if err != nil {
		panic("ledger: " + err.Error())
	}
	return id
}

func roundingName(r unit.Rounding) string {
	switch r {
	case unit.Down:
		return "down"
	case unit.Up:
		return "up"
	}
	return "nearest"
}

// Share returns part number nth, from 1, of a figure shared into n parts that
// add up to it exactly.
func (l *Ledger) Share(name string, f Figure, n, nth int) Figure {
	count := l.Given(Entry{Value: unit.OfCount(n), Origin: Derived})
	which := l.Given(Entry{Value: unit.OfCount(nth), Origin: Derived})
	return l.Figure(l.must(l.Make(name, OpShare, "", f.Entry, count, which)))
}
