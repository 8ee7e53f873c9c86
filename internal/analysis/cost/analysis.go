package cost

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Result is the buying list with its sum.
type Result struct {
	Buying []plan.Buy
	Cost   plan.Cost
}

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cost", Kind: analysis.Derive,
	Doc:      "What must be got, in the merchant's terms, and what does it cost?",
	Requires: []analysis.Analysis{cutting.Analysis},
}, func(c *analysis.Context) (Result, diag.List) {
	fittings := map[string]Fitting{}
	for _, f := range c.Shop.Fittings {
		fittings[f.ID] = Fitting{Price: int64(f.Price.Amount), Have: f.Have}
	}
	var r Result
	r.Buying, r.Cost = Derive(cutting.Analysis.Get(c).Used, c.Piece, fittings)
	return r, nil
})
