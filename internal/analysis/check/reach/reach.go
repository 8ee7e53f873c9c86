package reach

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// mostSteps bounds how many lines of the ledger are looked at.
const mostSteps = 4096

// Number is a number of the document on which a figure rests.
type Number struct {
	Where diag.Place
	// Nm is the length that it is, Times how often the figure contains it.
	Nm    unit.Length
	Times *big.Rat
}

// Numbers returns the numbers of the document that a figure contains a fixed number of
// times, in their order in the document.
func Numbers(c *analysis.Context, f piece.Figure) []Number {
	w := walk{ledger: c.Ledger, file: c.Piece.File, at: map[diag.Place]*Number{}, bent: map[diag.Place]bool{}}
	w.follow(f.Entry, big.NewRat(1, 1))
	var out []Number
	for place, n := range w.at {
		if !w.bent[place] && n.Times.Sign() != 0 && w.steps < mostSteps {
			out = append(out, *n)
		}
	}
	slices.SortFunc(out, func(a, b Number) int { return cmp.Compare(a.Where.Start, b.Where.Start) })
	return out
}

// Rewrite returns a remedy that brings a figure from what it is to another: by the
// greatest number that it contains once. The number is rounded to what the document
// can say so that the figure ends on the side given. Without such a number the remedy
// has no edit.
func Rewrite(c *analysis.Context, text message.Message, f piece.Figure, to unit.Length, side unit.Rounding) diag.Remedy {
	r := diag.Remedy{Text: text}
	one := big.NewRat(1, 1)
	var best Number
	for _, n := range Numbers(c, f) {
		if size := new(big.Rat).Abs(n.Times); size.Cmp(one) == 0 && n.Nm > best.Nm {
			best = n
		}
	}
	if best.Nm <= 0 {
		return r
	}
	more := to - f.Nm
	if best.Times.Sign() < 0 {
		more = -more
		side = other(side)
	}
	if best.Nm+more <= 0 {
		return r
	}
	r.Edits = []diag.Edit{{File: best.Where.File, Start: best.Where.Start, End: best.Where.End, New: literal(c.Piece, best.Nm+more, side)}}
	return r
}

func other(side unit.Rounding) unit.Rounding {
	switch side {
	case unit.Up:
		return unit.Down
	case unit.Down:
		return unit.Up
	}
	return side
}

// literal writes a length as a bare number of the document: to the hundredth of a
// millimetre or the 64th of an inch.
func literal(p *piece.Piece, l unit.Length, side unit.Rounding) string {
	one, step := unit.Millimetre, unit.Millimetre/100
	if unit.System(p.Units) == unit.Inches {
		one, step = unit.Inch, unit.SixtyFourth
	}
	text := big.NewRat(int64(l.Round(step, side)), int64(one)).FloatString(6)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// walk is one search through the ledger.
type walk struct {
	ledger *ledger.Ledger
	file   string
	at     map[diag.Place]*Number
	// bent are the numbers that also count in some other way than a fixed number of times.
	bent  map[diag.Place]bool
	steps int
}

// follow goes down from a line that counts so many times.
func (w *walk) follow(id ledger.ID, times *big.Rat) {
	if w.steps++; w.steps >= mostSteps {
		return
	}
	e, ok := w.ledger.Entry(id)
	if !ok {
		return
	}
	minus := new(big.Rat).Neg(times)
	switch e.Op {
	case ledger.OpGiven:
		w.leaf(e, times)
	case ledger.OpSame, ledger.OpAs:
		w.follow(e.Args[0], times)
		for _, a := range e.Args[1:] {
			w.bend(a)
		}
	case ledger.OpAdd:
		for _, a := range e.Args {
			w.follow(a, times)
		}
	case ledger.OpSub:
		for i, a := range e.Args {
			if i == 0 {
				w.follow(a, times)
			} else {
				w.follow(a, minus)
			}
		}
	case ledger.OpNeg:
		w.follow(e.Args[0], minus)
	default:
		w.bend(id)
	}
}

// bend marks the numbers below a line as not to be changed.
func (w *walk) bend(id ledger.ID) {
	if w.steps++; w.steps >= mostSteps {
		return
	}
	e, ok := w.ledger.Entry(id)
	if !ok {
		return
	}
	if e.Op == ledger.OpGiven {
		w.bent[e.Where] = true
	}
	for _, a := range e.Args {
		w.bend(a)
	}
}

func (w *walk) leaf(e ledger.Entry, times *big.Rat) {
	l, isLength := e.Value.Length()
	if !isLength {
		// A bare number stands beside a length as one only through OpAs; alone it is none.
		if !e.Value.IsNumeric() {
			return
		}
		l = unit.FromMillimetres(e.Value.Float())
	}
	if e.Where.IsZero() || e.Where.File != w.file || e.Origin != ledger.Document && e.Origin != ledger.Default {
		return
	}
	n := w.at[e.Where]
	if n == nil {
		n = &Number{Where: e.Where, Nm: l, Times: new(big.Rat)}
		w.at[e.Where] = n
	}
	n.Times.Add(n.Times, times)
}
