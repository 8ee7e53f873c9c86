package verdict

import (
	"math/big"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Rewrite returns a remedy that puts another value at the one place where a
// figure was written, in the document's own unit: downwards or upwards to what
// can be written there. It has no edit where the figure was not written as such
// but follows from others. Edits have no hash and no old text yet: whoever has
// the document fills them in.
func (f *Findings) Rewrite(text message.Message, figure piece.Figure, to unit.Length, side unit.Rounding) diag.Remedy {
	r := diag.Remedy{Text: text}
	if where, ok := f.written(figure.Entry); ok {
		r.Edits = []diag.Edit{{File: where.File, Start: where.Start, End: where.End, New: f.literal(to, side)}}
	}
	return r
}

// Written is the place of the one number that a figure is; nowhere if it follows from
// others.
func (f *Findings) Written(figure piece.Figure) diag.Place {
	where, ok := f.written(figure.Entry)
	if !ok {
		return diag.Place{}
	}
	return where
}

// Added returns what was added to one figure to make another, where the ledger has it
// so: the width of a cut between its near and its far side.
func (f *Findings) Added(to, sum piece.Figure) (piece.Figure, bool) {
	e, ok := f.context.Ledger.Entry(sum.Entry)
	if !ok || e.Op != ledger.OpAdd || len(e.Args) != 2 {
		return piece.Figure{}, false
	}
	for i, arg := range e.Args {
		if arg == to.Entry {
			other := f.context.Ledger.Figure(e.Args[1-i])
			return other, true
		}
	}
	return piece.Figure{}, false
}

// written finds the place of the number that an entry is, under whatever names.
func (f *Findings) written(id ledger.ID) (diag.Place, bool) {
	for range 64 {
		e, ok := f.context.Ledger.Entry(id)
		switch {
		case !ok:
			return diag.Place{}, false
		case e.Op == ledger.OpSame || e.Op == ledger.OpAs:
			id = e.Args[0]
		case e.Op == ledger.OpGiven && (e.Origin == ledger.Document || e.Origin == ledger.Default) && !e.Where.IsZero():
			return e.Where, e.Where.File == f.context.Piece.File
		default:
			return diag.Place{}, false
		}
	}
	return diag.Place{}, false
}

// literal writes a length as a bare number of the document: to the hundredth of a
// millimetre or the 64th of an inch.
func (f *Findings) literal(l unit.Length, side unit.Rounding) string {
	one, step := unit.Millimetre, unit.Millimetre/100
	if unit.System(f.context.Piece.Units) == unit.Inches {
		one, step = unit.Inch, unit.SixtyFourth
	}
	text := big.NewRat(int64(l.Round(step, side)), int64(one)).FloatString(6)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}
