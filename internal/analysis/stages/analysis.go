package stages

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Result is the staged list.
type Result struct {
	Stages   []plan.Stage
	Measures []plan.Measure
	// Rows are the part rows with their stages.
	Rows []plan.PartRow
}

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "stages", Kind: analysis.Derive,
	Doc:      "What may be cut now, and what only after something has been measured?",
	Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) (Result, diag.List) {
	var r Result
	r.Stages, r.Measures, r.Rows = Derive(c.Piece, marks.Analysis.Get(c), c.Ledger)
	return r, nil
})
