package optimise

import (
	"context"

	"scantling/internal/optimise/boards"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/sheets"
	"scantling/internal/optimise/work"
)

// firstWork bounds the exact fillings of the first method; the plain ones that
// stand in for them are bounded by the problem's size.
const firstWork = 200_000_000

// Solve answers p within the budget. It returns a [*problem.Fault] if p is
// malformed, if a part fits on no stock, or if limited stock does not suffice;
// any other answer cuts every part (under MostValue: some). When ctx ends, the
// best answer so far comes back with status stopped.
func Solve(ctx context.Context, p problem.Problem, b problem.Budget) (problem.Answer, error) {
	if err := p.Check(); err != nil {
		return problem.Answer{}, err
	}
	limit := b.Work
	if limit <= 0 {
		limit = problem.DefaultWork
	}
	first := work.New(ctx, firstWork)
	meter := work.New(ctx, limit)
	method := boards.Solve
	if p.Form == problem.Sheets {
		method = sheets.Solve
	}
	a, err := method(p, first, meter, max(1, min(b.Workers, 2)))
	if err != nil {
		return problem.Answer{}, err
	}
	if ctx.Err() != nil && a.Status != problem.Proved {
		a.Status = problem.Stopped
	}
	a.Work = first.Used() + meter.Used()
	return a, nil
}
