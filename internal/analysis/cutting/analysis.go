package cutting

import (
	"context"

	"scantling/internal/analysis"
	"scantling/internal/analysis/blanks"
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

// Analysis is [Decide] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cutting", Kind: analysis.Decide,
	Doc:      "Which boards and sheets are used, how is each cut, and can less wood do?",
	Requires: []analysis.Analysis{blanks.Analysis},
}, func(c *analysis.Context) (Result, diag.List) {
	in := Input{
		Workpieces: blanks.Analysis.Get(c), Stock: Of(c.Shop, blanks.JointEdge, c.Ledger),
		Kerf:       c.Ledger.Leaf("kerf", blanks.Kerf(c.Shop), ledger.HouseRule, "the shop's saw"),
		Together:   c.Piece.Together,
		KeepLength: keepLength, KeepWidth: keepWidth,
		Budget: problem.Budget{Work: work, Workers: 1}, Ledger: c.Ledger,
	}
	feed := FeedOf(c.Shop)
	in.FeedLong, in.FeedShort = feed.Long, feed.Short
	return Decide(context.Background(), in)
})
