package contents

import (
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "contents", Kind: analysis.Derive,
	Doc: "How does each thing lie in the piece: how deep, how proud, with how much land beside it?",
}, func(c *analysis.Context) ([]plan.Held, diag.List) {
	c.Ledger.Learn(Functions())
	return Derive(c.Piece, c.Ledger), nil
})
