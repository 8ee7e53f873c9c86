package movement

import (
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "movement", Kind: analysis.Derive,
	Doc: "What will the seasons do to every fit, what is to be left today, and what then remains?",
}, func(c *analysis.Context) ([]plan.Clearance, diag.List) {
	c.Ledger.Learn(Functions())
	return DeriveIn(c.Shop.Woods(), c.Piece, c.Shop.Climate.Season, c.Ledger), nil
})
