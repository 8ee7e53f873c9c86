package cutting

import (
	"slices"

	"scantling/internal/optimise/problem"
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
	index := map[problem.Size]int{}
	for _, w := range pieces {
		size := problem.Size{Length: w.Length.Nm, Width: w.Width.Nm}
		i, ok := index[size]
		if !ok {
			i = len(q.problem.Parts)
			index[size] = i
			q.problem.Parts = append(q.problem.Parts, problem.Part{ID: w.ID, Size: size, Turn: kind[0].Turns})
			q.waiting = append(q.waiting, nil)
		}
		q.problem.Parts[i].Quantity++
		q.waiting[i] = append(q.waiting[i], w)
	}
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
