package beam

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// Question is what is asked.
type Question struct {
	X, Y   int64
	Pieces []ceiling.Piece // in all ways that they may lie, those to try first first
	Left   []int           // by kind
	Value  []int64         // by kind, where One is set
	Rules  ceiling.Rules   // of the stages; All is not looked at
	// One asks for the sheet worth most; otherwise all pieces are to come from
	// at most Most sheets.
	One  bool
	Most int
}

// Guide is how partial plans are compared.
type Guide int

// The guides.
const (
	Waste       Guide = iota // by the share of waste
	Large                    // and large pieces first
	Larger                   // still more so
	Loss                     // by what an outlook has lost
	LossPerArea              // by that and the area used
)

// Plan is what was found: the strips of each sheet.
type Plan struct {
	Sheets [][]ceiling.Strip
	Value  int64 // where One is set
}

// Search runs one beam search of the given width. The guides of an outlook need
// one; others take nil. It returns false if no plan came out.
func Search(q Question, width int, guide Guide, view *Outlook, meter *work.Meter) (Plan, bool) {
	b := newSearch(q, width, guide, view, meter)
	p := b.run()
	if p == nil || p.parent == nil {
		return Plan{}, false
	}
	return Plan{Sheets: b.plan(p), Value: p.worth}, true
}
