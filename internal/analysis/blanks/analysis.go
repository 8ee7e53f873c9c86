package blanks

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/stages"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "blanks", Kind: analysis.Derive,
	Doc:      "What is each part made from, with which allowances, and why so?",
	Requires: []analysis.Analysis{stages.Analysis},
}, func(c *analysis.Context) ([]plan.Workpiece, diag.List) {
	in := Input{Piece: c.Piece, Cuts: c.AllCuts(), Rows: stages.Analysis.Get(c).Rows, Ledger: c.Ledger}
	in.Stock, in.Limits, in.Allowances = Of(c.Shop, c.Ledger)
	return Derive(in)
})
