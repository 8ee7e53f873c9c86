package cutting

import (
	"context"

	"scantling/internal/analysis"
	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/stages"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// work is the budget of one stock's search, in the engine's units: a few
// hundredths of a second on a machine of 2020.
const work = 4_000_000

// Least remnants worth keeping. Common practice, no source.
const (
	keepLength = 300 * unit.Millimetre
	keepWidth  = 50 * unit.Millimetre
)

// Strips is [Share] as a declared analysis: the workpieces of the plan.
var Strips = analysis.Declare(analysis.Info{
	Name: "strips", Kind: analysis.Decide,
	Doc:      "What is each part made from, with which allowances, and of which strips are panels glued up so that the boards do?",
	Requires: []analysis.Analysis{stages.Analysis},
}, func(c *analysis.Context) (Chosen, diag.List) {
	from := blanks.Input{Piece: c.Piece, Cuts: c.AllCuts(), Rows: stages.Analysis.Get(c).Rows, Ledger: c.Ledger}
	from.Stock, from.Limits, from.Allowances = blanks.Of(c.Shop, c.Ledger)
	return Share(context.Background(), from, asked(c, c.Ledger.Clone()))
})

// Analysis is [Decide] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cutting", Kind: analysis.Decide,
	Doc:      "Which boards and sheets are used, how is each cut, and can less wood do?",
	Requires: []analysis.Analysis{Strips},
}, func(c *analysis.Context) (Result, diag.List) {
	in := asked(c, c.Ledger)
	in.Workpieces = Strips.Get(c).Workpieces
	return Decide(context.Background(), in)
})

// asked is the question of a piece, still without its workpieces, its figures in a
// ledger.
func asked(c *analysis.Context, l *ledger.Ledger) Input {
	in := Input{
		Stock:      Of(c.Shop, blanks.JointEdge, l),
		Kerf:       l.Leaf("kerf", blanks.Kerf(c.Shop), ledger.HouseRule, "the shop's saw"),
		Together:   c.Piece.Together,
		KeepLength: keepLength, KeepWidth: keepWidth,
		Budget: problem.Budget{Work: work, Workers: 1}, Ledger: l,
	}
	feed := FeedOf(c.Shop)
	in.FeedLong, in.FeedShort = feed.Long, feed.Short
	return in
}
