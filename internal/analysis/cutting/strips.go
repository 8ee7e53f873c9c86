package cutting

import (
	"context"
	"slices"

	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/strips"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
)

// Questions is how often the engine is asked about strips, the answer with equal ones
// among them, and trial the work that it may do for each question but the last two,
// which have as much as the diagrams.
const (
	Questions = 12
	trial     = work / 4
)

// Chosen are the workpieces with the strips that were chosen for panels.
type Chosen struct {
	Workpieces []plan.Workpiece
	strips.Choice
}

// Share derives the workpieces and shares panels out into strips together with the
// boards of the question, whose own workpieces are not looked at. Equal strips stay
// unless others save boards or money, judged at last with the question's whole budget.
func Share(ctx context.Context, from blanks.Input, in Input) (Chosen, diag.List) {
	panels := blanks.Choices(from)
	if !slices.ContainsFunc(panels, func(p blanks.Panels) bool { return len(p.Sharings) > 1 }) {
		out, diags := blanks.Derive(from)
		return Chosen{Workpieces: out}, diags
	}
	var stock []string
	for _, p := range panels {
		stock = append(stock, p.Stock)
	}
	at := func(budget problem.Budget) strips.Saw {
		return func(layouts map[string]blanks.Layout) strips.Boards {
			return Reckon(ctx, budgeted(ofPanels(tried(from, in, layouts), stock), budget))
		}
	}
	whole, small := in.Budget, in.Budget
	small.Work = min(small.Work, trial)
	choice := strips.Choose(panels, at(small), Questions-2, enough(ofPanels(tried(from, in, nil), stock)))
	if len(choice.Layouts) > 0 {
		choice = choice.Confirm(at(whole))
	}
	from.Layouts = choice.Layouts
	out, diags := blanks.Derive(from)
	for i, w := range out {
		if _, ok := choice.Layouts[w.Mark]; ok && w.Kind == plan.PanelPiece {
			out[i].Why = append(out[i].Why, why(w, out, choice))
		}
	}
	return Chosen{out, choice}, diags
}

// tried puts the workpieces of a way to share panels out into a question. Their figures
// stand in a ledger that is thrown away: only their sizes are looked at.
func tried(from blanks.Input, in Input, layouts map[string]blanks.Layout) Input {
	from.Ledger, from.Layouts = from.Ledger.Clone(), layouts
	in.Workpieces, _ = blanks.Derive(from)
	return in
}

func budgeted(in Input, b problem.Budget) Input {
	in.Budget = b
	return in
}

// why says what a panel's strips save.
func why(panel plan.Workpiece, all []plan.Workpiece, c strips.Choice) message.Message {
	var widths []message.Arg
	stock := ""
	for _, s := range plan.StripsOf(all, panel) {
		widths, stock = append(widths, message.Length("", s.Width.Nm)), s.Stock
	}
	list, count := message.List("widths", widths...), message.Count("strips", len(widths))
	switch equal, is := c.Equal.Boards, c.Chosen.Boards; {
	case is.Faults < equal.Faults:
		return message.New("strips.can-be-cut", count, list, message.Text("stock", stock))
	case is.Bought < equal.Bought:
		return message.New("strips.fewer-bought", count, list, message.Text("stock", stock), message.Count("boards", equal.Bought-is.Bought))
	case is.Price < equal.Price:
		return message.New("strips.cheaper", count, list, message.Text("stock", stock))
	}
	return message.New("strips.fewer-used", count, list, message.Text("stock", stock), message.Count("boards", c.Equal.Rack-c.Chosen.Rack))
}
