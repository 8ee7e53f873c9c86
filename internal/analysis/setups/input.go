package setups

import (
	"scantling/internal/address"
	"scantling/internal/analysis/operations"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// CodeTrapped says that no order and no side of the fence gives a safe cut, so
// that the cut was given to the hand.
//
// Example: two overlapping housings that are both stopped at the same edge and
// may only be offered from the side that is already cut.
const CodeTrapped diag.Code = "trapped-cut"

// Input is what the decision needs.
type Input struct {
	Piece      *piece.Piece
	Rows       []plan.PartRow
	Workpieces []plan.Workpiece
	Derived    operations.Result
	Shop       operations.Workshop
	Ledger     *ledger.Ledger
}

// Result is what was decided.
type Result struct {
	// Setups are the cards in working order.
	Setups []plan.Setup
	// Operations are those of the input with their card filled in.
	Operations []plan.Operation
}

// decider carries the state of one decision.
type decider struct {
	Input
	l     *ledger.Ledger
	rules operations.Rules
	rows  map[string]plan.PartRow
	ops   []plan.Operation
	nth   map[string]int // operation id: index
	jobs  map[string][]*operations.Job
	parts map[address.Address]piece.Part
	// voids are the slots already cut, by row and by side and run, across from the
	// low side.
	voids  map[voidKey][]gone
	used   map[string]int  // card ids
	strips map[string]bool // strips that are planed before any panel is glued up
	// planing is the stage in which the boards of each group are planed.
	planing map[string]string
	cards   []plan.Setup
	diags   diag.List
}

type voidKey struct {
	mark string
	down piece.Side
	run  piece.Local
}

// Decide makes the cards.
func Decide(in Input) (Result, diag.List) {
	d := decider{
		Input: in, l: in.Ledger, rules: in.Shop.Rules.Completed(),
		rows: map[string]plan.PartRow{}, nth: map[string]int{}, jobs: map[string][]*operations.Job{},
		parts: map[address.Address]piece.Part{}, voids: map[voidKey][]gone{}, used: map[string]int{},
		strips: map[string]bool{},
	}
	for _, w := range in.Workpieces {
		d.strips[w.ID] = w.Kind == plan.StripPiece
	}
	for _, w := range in.Workpieces {
		for _, from := range w.From {
			if w.InWidths { // planed at one setting with the narrow panels beside it
				d.strips[from] = false
			}
		}
	}
	for _, r := range in.Rows {
		d.rows[r.Mark] = r
	}
	for _, p := range in.Piece.Parts {
		d.parts[p.Address] = p
	}
	for i := range in.Derived.Jobs {
		j := &in.Derived.Jobs[i]
		d.jobs[j.Operation] = append(d.jobs[j.Operation], j)
	}
	d.ops = append([]plan.Operation(nil), in.Derived.Operations...)
	for i, op := range d.ops {
		d.nth[op.ID] = i
	}
	for _, batch := range d.batches() {
		d.card(batch)
	}
	return Result{d.cards, d.ops}, d.diags
}

// zero is a figure of nought.
func (d *decider) zero() piece.Figure { return d.l.Leaf("zero", 0, ledger.Derived, "") }

// halfDown is half a figure, rounded down to the nanometre so that sums with it
// close.
func (d *decider) halfDown(name string, f piece.Figure) piece.Figure {
	return d.l.Round(name, d.l.Half(name, f), unit.Nanometre, unit.Down)
}

// negative turns a figure's sign, for the terms of a sum.
func (d *decider) negative(name string, f piece.Figure) piece.Figure {
	return d.l.Times(name, f, -1, 1)
}

// words is short for a message without arguments.
func words(key string) message.Message { return message.New(key) }
