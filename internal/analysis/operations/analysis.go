package operations

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/stages"
	"scantling/internal/diag"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "operations", Kind: analysis.Derive,
	Doc:      "Which passes make every workpiece and every cut: machine, cutter, side down, what comes first?",
	Requires: []analysis.Analysis{stages.Analysis, cutting.Strips, cutting.Analysis},
}, func(c *analysis.Context) (Result, diag.List) {
	s := stages.Analysis.Get(c)
	return Derive(Input{
		Piece: c.Piece, Cuts: c.AllCuts(), Rows: s.Rows, Stages: s.Stages, Workpieces: cutting.Strips.Get(c).Workpieces,
		Diagrams: cutting.Analysis.Get(c).Diagrams, Shop: Of(c.Shop), Ledger: c.Ledger,
	})
})
