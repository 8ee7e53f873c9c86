package setups

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/stages"
	"scantling/internal/diag"
)

// Analysis is [Decide] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "set-ups", Kind: analysis.Decide,
	Doc:      "What is each machine set to, for which parts together, and in which order is no cut trapped?",
	Requires: []analysis.Analysis{stages.Analysis, cutting.Strips, operations.Analysis},
}, func(c *analysis.Context) (Result, diag.List) {
	return Decide(Input{
		Piece: c.Piece, Rows: stages.Analysis.Get(c).Rows, Workpieces: cutting.Strips.Get(c).Workpieces,
		Derived: operations.Analysis.Get(c), Shop: operations.Of(c.Shop), Ledger: c.Ledger,
	})
})
