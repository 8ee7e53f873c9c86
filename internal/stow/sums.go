package stow

import (
	"strconv"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// tooFew reports columns and rows that do not hold all, with the edits that would.
func (x *reading) tooFew(cells int) {
	lot := x.lot
	up := func(a, b int) int { return (a + b - 1) / b }
	var remedies []diag.Remedy
	for _, r := range []struct {
		attribute string
		to        int
	}{{"rows", up(cells, lot.Columns)}, {"columns", up(cells, lot.Rows)}} {
		if a := x.Block.Attribute(r.attribute); a != nil {
			remedies = append(remedies, x.File.Replace(a.Value.Place(), strconv.Itoa(r.to)))
		}
	}
	x.failed = true
	x.FaultWith(CodeTooFewCells, x.Where("rows"), remedies, message.Count("things", cells), message.Count("columns", lot.Columns), message.Count("rows", lot.Rows), message.Count("cells", lot.Columns*lot.Rows))
}

// sums writes the inside sizes as sums: things, play, dividers, room around, room
// for fingers; along the height lining, things and what is left over them.
func (x *reading) sums() {
	lot := &x.lot
	for axis, count := range []string{"columns", "rows"} {
		n := []int{lot.Columns, lot.Rows}[axis]
		play, word := lot.Play, "play"
		if x.kind == Sheet && axis == x.runs {
			play, word = x.flip, "flip"
		}
		cell := []piece.Figure{lot.Size[axis]}
		if play.Nm > 0 {
			cell = append(cell, play)
		}
		name := x.name + []string{".cell_wide", ".cell_deep"}[axis]
		lot.Cell[axis] = x.ledger().Sum(name, cell...)
		x.times(axis, "things", x.counts[count], n, lot.Size[axis])
		x.times(axis, word, x.counts[count], n, play)
		x.times(axis, "dividers", x.less(x.counts[count]), n-1, lot.Divider)
		x.times(axis, "around", x.plain(2), 2, lot.Around)
		if axis == 1 {
			x.times(axis, "finger", x.plain(1), 1, lot.Finger)
		}
	}
	x.times(2, "lining", x.plain(1), 1, lot.Lining)
	x.times(2, "things", x.counts["stack"], lot.Stack, lot.Size[2])
	x.times(2, "above", x.plain(1), 1, lot.Above)
	for axis, name := range []string{".wide", ".deep", ".high"} {
		terms := make([]piece.Figure, len(lot.Sums[axis]))
		for i, a := range lot.Sums[axis] {
			terms[i] = a.Figure
		}
		lot.Needs[axis] = x.ledger().Sum(x.name+name, terms...)
	}
}

// times adds so many times a figure to a sum; nothing adds nothing.
func (x *reading) times(axis int, word string, count ledger.ID, n int, each piece.Figure) {
	if each.Nm == 0 || n == 0 {
		return
	}
	all := each
	if n != 1 {
		all = x.ledger().Figure(x.product(count, each.Entry))
	}
	x.lot.Sums[axis] = append(x.lot.Sums[axis], piece.Addend{Word: word, Times: n, Each: each, Figure: all})
}

func (x *reading) product(a, b ledger.ID) ledger.ID {
	id, err := x.ledger().Make("", ledger.OpMul, "", a, b)
	if err != nil {
		x.failed = true
	}
	return id
}

// plain is a count that is written nowhere; less is one count less one.
func (x *reading) plain(n int) ledger.ID {
	return x.ledger().Given(ledger.Entry{Value: unit.OfCount(n), Origin: ledger.Derived})
}

func (x *reading) less(count ledger.ID) ledger.ID {
	id, err := x.ledger().Make("", ledger.OpSub, "", count, x.plain(1))
	if err != nil {
		x.failed = true
	}
	return id
}
