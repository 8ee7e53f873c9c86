package cutting

import (
	"context"
	"math"
	"slices"

	"scantling/internal/analysis/strips"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
)

// Reckon returns what boards it takes to cut the workpieces, without drawing up
// diagrams: nothing is entered in the ledger. A price is in hundredths, or, where that
// of any of the stock is not known, an area in square millimetres.
func Reckon(ctx context.Context, in Input) strips.Boards {
	answers, diags := ask(ctx, in)
	out := strips.Boards{Faults: len(diags)}
	priced := !slices.ContainsFunc(in.Stock, func(s Stock) bool { return s.Price <= 0 })
	for _, a := range answers {
		for _, d := range a.answer.Diagrams {
			if s := a.question.from[d.Stock]; a.question.bought[d.Stock] {
				out.Bought += d.Copies
				out.Price += int64(d.Copies) * s.worth(priced)
			} else {
				out.Rack += d.Copies
			}
		}
	}
	return out
}

// worth is a board's price, or its area.
func (s Stock) worth(priced bool) int64 {
	if priced {
		return s.Price
	}
	return int64(area(problem.Size{Length: s.Length.Nm, Width: s.Width.Nm}))
}

// ofPanels narrows a question to the timber that panels are made of: the stock that
// their strips are cut from and what can stand in for it.
func ofPanels(in Input, stock []string) Input {
	kinds := map[string]bool{}
	for _, s := range in.Stock {
		if s.Kind != "" && slices.Contains(stock, s.ID) {
			kinds[s.Kind] = true
		}
	}
	ids := map[string]bool{}
	in.Stock = slices.DeleteFunc(slices.Clone(in.Stock), func(s Stock) bool {
		ids[s.ID] = kinds[s.Kind] || slices.Contains(stock, s.ID)
		return !ids[s.ID]
	})
	in.Workpieces = slices.DeleteFunc(slices.Clone(in.Workpieces), func(w plan.Workpiece) bool { return !ids[w.Stock] && w.Kind != plan.PanelPiece })
	return in
}

// enough returns a test whether no way to share panels out can do with fewer boards: all
// that is made from a timber has too much area for one board less, where there is one
// kind of board of it. A panel's strips have at least its own area. It is nil where
// the timber comes in several sizes.
func enough(in Input) func(strips.Boards) bool {
	least := 0
	for i, s := range in.Stock {
		if s.Kind != "" && slices.ContainsFunc(in.Stock[:i], func(o Stock) bool { return o.Kind == s.Kind }) {
			return nil
		}
		marks := map[string]bool{}
		for _, w := range in.Workpieces {
			marks[w.Mark] = marks[w.Mark] || w.Stock == s.ID && w.Kind == plan.StripPiece
		}
		mm2 := 0.0
		for _, w := range in.Workpieces {
			if w.Kind == plan.PanelPiece && marks[w.Mark] || w.Kind == plan.BlankPiece && w.Stock == s.ID {
				mm2 += area(problem.Size{Length: w.Length.Nm, Width: w.Width.Nm})
			}
		}
		one := area(problem.Size{Length: s.usable().Length, Width: s.usable().Width})
		least += int(math.Ceil(mm2 / one))
	}
	return func(b strips.Boards) bool { return b.Faults == 0 && b.Bought+b.Rack <= least }
}
