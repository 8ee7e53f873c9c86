package cutting

import (
	"context"
	"fmt"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/optimise"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// CodeNotCut says that the blanks of one stock could not be cut.
const CodeNotCut diag.Code = "not-cut"

// Stock is one kind of board or sheet as it can be had.
type Stock struct {
	ID, Label                string
	Sheet                    bool
	Length, Width, Thickness ledger.Figure
	// End is trimmed off each end and Edge off each edge, saw cut included.
	End, Edge ledger.Figure
	Have      int
	Price     int64 // hundredths; 0 is unknown
	// Buyable says that more can be had than the rack holds.
	Buyable bool
}

// Input is what the decision rests on.
type Input struct {
	Workpieces []plan.Workpiece
	Stock      []Stock
	Kerf       ledger.Figure
	// KeepLength and KeepWidth are the least remnant worth keeping.
	KeepLength, KeepWidth unit.Length
	// Feed is the least piece that the saw may be fed.
	FeedLong, FeedShort unit.Length
	Budget              problem.Budget
	Ledger              *ledger.Ledger
}

// Result is what was decided.
type Result struct {
	Diagrams []plan.Diagram
	// Used counts boards by stock: from the rack and to be bought.
	Used []Used
	// From names the diagram that each workpiece is cut from.
	From map[string]string
}

// Used is how many of one stock are cut.
type Used struct {
	Stock     Stock
	Rack, Buy int
	Marks     []string
}

// Decide finds the diagrams for every stock that a workpiece names.
func Decide(ctx context.Context, in Input) (Result, diag.List) {
	res := Result{From: map[string]string{}}
	var diags diag.List
	for _, s := range in.Stock {
		var pieces []plan.Workpiece
		for _, w := range in.Workpieces {
			if w.Stock == s.ID {
				pieces = append(pieces, w)
			}
		}
		if len(pieces) == 0 {
			continue
		}
		q := newQuestion(in, s, pieces)
		answer, err := optimise.Solve(ctx, q.problem, in.Budget)
		if err != nil {
			diags = append(diags, diag.Diagnostic{Severity: diag.Error, Code: CodeNotCut,
				Text: message.New("cutting.not-cut", message.Text("stock", s.Label), message.Text("why", err.Error()))})
			continue
		}
		q.read(answer, &res)
	}
	return res, diags
}

// question is one problem put to the engine with what its answer is read by.
type question struct {
	in      Input
	stock   Stock
	problem problem.Problem
	// waiting are the workpieces of each part of the problem that are not placed
	// yet.
	waiting [][]plan.Workpiece
}

// newQuestion puts the workpieces of one stock as a problem: equal ones are one
// part.
func newQuestion(in Input, s Stock, pieces []plan.Workpiece) *question {
	q := &question{in: in, stock: s}
	q.problem = problem.Problem{
		Name: s.ID, Form: problem.Sheets, Kerf: in.Kerf.Nm,
		Cutting: problem.Cutting{Stages: 3, First: problem.Crosscut},
		Feed:    problem.Feed{Long: in.FeedLong, Short: in.FeedShort},
		Useful:  problem.Size{Length: in.KeepLength, Width: in.KeepWidth},
	}
	if s.Sheet {
		q.problem.Cutting.First = problem.Rip
	}
	size := problem.Size{Length: s.Length.Nm, Width: s.Width.Nm}
	trim := problem.Trim{Start: s.End.Nm, End: s.End.Nm, Low: s.Edge.Nm, High: s.Edge.Nm}
	price := s.Price
	if price <= 0 {
		price = 1000
	}
	if s.Have > 0 {
		q.problem.Stock = append(q.problem.Stock, problem.Stock{ID: s.ID + " in the rack", Size: size, Cost: problem.Cost(price/10 + 1), Limit: s.Have, Trim: trim})
	}
	if s.Buyable || s.Have == 0 {
		q.problem.Stock = append(q.problem.Stock, problem.Stock{ID: s.ID, Size: size, Cost: problem.Cost(price), Trim: trim})
	}
	index := map[problem.Size]int{}
	for _, w := range pieces {
		size := problem.Size{Length: w.Length.Nm, Width: w.Width.Nm}
		i, ok := index[size]
		if !ok {
			i = len(q.problem.Parts)
			index[size] = i
			q.problem.Parts = append(q.problem.Parts, problem.Part{ID: w.ID, Size: size})
			q.waiting = append(q.waiting, nil)
		}
		q.problem.Parts[i].Quantity++
		q.waiting[i] = append(q.waiting[i], w)
	}
	return q
}

// read turns the engine's answer into diagrams, one for each board.
func (q *question) read(a problem.Answer, res *Result) {
	used := Used{Stock: q.stock}
	boards := 0
	for _, d := range a.Diagrams {
		for range d.Copies {
			boards++
			bought := q.problem.Stock[d.Stock].Limit == 0
			if bought {
				used.Buy++
			} else {
				used.Rack++
			}
			out := q.diagram(fmt.Sprintf("%s #%d", q.stock.ID, boards), d.Root)
			for _, p := range out.Pieces {
				res.From[p.Workpiece] = out.ID
				used.Marks = append(used.Marks, p.Mark)
			}
			res.Diagrams = append(res.Diagrams, out)
		}
	}
	slices.Sort(used.Marks)
	used.Marks = slices.Compact(used.Marks)
	note := q.bound(a, boards)
	for i := len(res.Diagrams) - boards; i < len(res.Diagrams); i++ {
		res.Diagrams[i].Bound = note
	}
	res.Used = append(res.Used, used)
}

// bound says how good the answer is.
func (q *question) bound(a problem.Answer, boards int) message.Message {
	if a.Status == problem.Proved {
		return message.New("cutting.proved", message.Text("stock", q.stock.Label), message.Count("boards", boards))
	}
	gap := 0.0
	if a.Cost > 0 {
		gap = 100 * float64(a.Cost-a.Bound) / float64(a.Cost)
	}
	return message.New("cutting.gap", message.Text("stock", q.stock.Label), message.Count("boards", boards), message.Percent("gap", gap))
}
