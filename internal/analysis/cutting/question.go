package cutting

import (
	"slices"

	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/optimise/problem"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// question is one problem put to the engine with what its answer is read by.
type question struct {
	in      Input
	problem problem.Problem
	// from are the kinds of stock behind the problem's, and bought tells which of
	// these are not in the rack.
	from   []Stock
	bought []bool
	// waiting are the workpieces of each part of the problem that are not placed
	// yet.
	waiting [][]plan.Workpiece
	// rows are the parts that stay together, as the problem's sequences, and faults
	// those of them that cannot.
	rows   []piece.Together
	faults diag.List
}

// newQuestion puts workpieces as a problem: equal ones are one part.
func newQuestion(in Input, kind []Stock, pieces []plan.Workpiece) *question {
	q := &question{in: in}
	q.problem = problem.Problem{
		Name: kind[0].ID, Form: problem.Sheets, Kerf: in.Kerf.Nm,
		Cutting: problem.Cutting{Stages: 3, First: problem.Crosscut},
		Feed:    problem.Feed{Long: in.FeedLong, Short: in.FeedShort},
		Useful:  problem.Size{Length: in.KeepLength, Width: in.KeepWidth},
	}
	if kind[0].Sheet {
		q.problem.Cutting.First = problem.Rip
	}
	rack, bought := costs(kind)
	for i, s := range kind {
		size := problem.Size{Length: s.Length.Nm, Width: s.Width.Nm}
		trim := problem.Trim{Start: s.End.Nm, End: s.End.Nm, Low: s.Edge.Nm, High: s.Edge.Nm}
		if s.Have > 0 {
			q.stock(s, false, problem.Stock{ID: s.ID + " in the rack", Size: size, Cost: rack[i], Limit: s.Have, Trim: trim, Defects: s.boxes()})
		}
		if s.Buyable || s.Have == 0 {
			q.stock(s, true, problem.Stock{ID: s.ID, Size: size, Cost: bought[i], Trim: trim})
		}
	}
	q.parts(pieces, kind[0].Turns)
	return q
}

// boxes are the defects as the engine takes them.
func (s Stock) boxes() []problem.Box {
	var out []problem.Box
	for _, d := range s.Defects {
		out = append(out, problem.Box{
			Point: problem.Point{Along: d.From.Nm, Across: d.Near.Nm},
			Size:  problem.Size{Length: d.To.Nm - d.From.Nm, Width: d.Far.Nm - d.Near.Nm},
		})
	}
	return out
}

// parts adds the workpieces: first the rows that stay together, then the rest.
func (q *question) parts(pieces []plan.Workpiece, turns bool) {
	type like struct {
		size problem.Size
		row  int
	}
	index := map[like]int{}
	add := func(w plan.Workpiece, row int, turns bool) int {
		size := problem.Size{Length: w.Length.Nm, Width: w.Width.Nm}
		i, ok := index[like{size, row}]
		if !ok {
			i = len(q.problem.Parts)
			index[like{size, row}] = i
			q.problem.Parts = append(q.problem.Parts, problem.Part{ID: w.ID, Size: size, Turn: turns})
			q.waiting = append(q.waiting, nil)
		}
		q.problem.Parts[i].Quantity++
		q.waiting[i] = append(q.waiting[i], w)
		return i
	}
	placed := map[string]bool{}
	for _, t := range q.in.Together {
		row, fault := q.row(t, pieces, placed)
		if fault != nil {
			q.faults = append(q.faults, *fault)
		}
		if len(row) < 2 {
			continue
		}
		s := problem.Sequence{Direction: problem.Crosscut}
		if t.Across {
			s.Direction = problem.Rip
		}
		q.rows = append(q.rows, t)
		for _, w := range row {
			placed[w.ID] = true
			s.Parts = append(s.Parts, add(w, len(q.rows), false))
		}
		q.problem.Sequences = append(q.problem.Sequences, s)
	}
	for _, w := range pieces {
		if !placed[w.ID] {
			add(w, 0, turns)
		}
	}
}

// row returns the workpieces of parts that stay together, in order: none where
// they are of other stock, and a fault where some are, or are glued up, or share a
// blank with another part.
func (q *question) row(t piece.Together, pieces []plan.Workpiece, placed map[string]bool) ([]plan.Workpiece, *diag.Diagnostic) {
	var row []plan.Workpiece
	for _, part := range t.Parts {
		i := slices.IndexFunc(pieces, func(w plan.Workpiece) bool {
			return w.Kind == plan.BlankPiece && len(w.Parts) == 1 && w.Parts[0] == part && w.Count <= 1 && !placed[w.ID]
		})
		if i >= 0 {
			row = append(row, pieces[i])
		}
	}
	if len(row) == 0 || len(row) == len(t.Parts) {
		return row, nil
	}
	x := apart(t, message.Word("why", "cutting.not-together-blanks"))
	return nil, &x
}

func (q *question) stock(from Stock, bought bool, s problem.Stock) {
	q.problem.Stock = append(q.problem.Stock, s)
	q.from, q.bought = append(q.from, from), append(q.bought, bought)
}

func (q *question) buys(a problem.Answer) bool {
	return slices.ContainsFunc(a.Diagrams, func(d problem.Diagram) bool { return q.bought[d.Stock] })
}

// costs returns what one piece of each stock costs the engine, from the rack and
// bought: in the ratio of the prices, or of the areas where a price is not known;
// and so that all of the rack together costs less than anything that is bought.
func costs(kind []Stock) (rack, bought []problem.Cost) {
	const fine = 1000
	worth := make([]float64, len(kind))
	priced := !slices.ContainsFunc(kind, func(s Stock) bool { return s.Price <= 0 })
	for i, s := range kind {
		worth[i] = area(problem.Size{Length: s.Length.Nm, Width: s.Width.Nm})
		if priced {
			worth[i] = float64(s.Price)
		}
	}
	most := slices.Max(worth)
	sum, least := problem.Cost(0), problem.Cost(fine)
	for i, s := range kind {
		c := max(1, problem.Cost(float64(fine*worth[i])/max(most, 1e-9)))
		rack = append(rack, c)
		sum, least = sum+c*problem.Cost(s.Have), min(least, c)
	}
	times := max(10, sum/least+1)
	for _, c := range rack {
		bought = append(bought, c*times)
	}
	return rack, bought
}
