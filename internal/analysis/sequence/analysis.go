package sequence

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/setups"
	"scantling/internal/analysis/stages"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Analysis is [Decide] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "sequence", Kind: analysis.Decide,
	Doc:      "In which order does one person build the piece, and what waits for what?",
	Requires: []analysis.Analysis{stages.Analysis, cutting.Strips, cutting.Analysis, setups.Analysis},
}, func(c *analysis.Context) ([]plan.Step, diag.List) {
	s, cards := stages.Analysis.Get(c), setups.Analysis.Get(c)
	return Decide(Input{
		Piece: c.Piece, Cuts: c.AllCuts(), Rows: s.Rows, Stages: s.Stages, Measures: s.Measures,
		Workpieces: cutting.Strips.Get(c).Workpieces, Diagrams: cutting.Analysis.Get(c).Diagrams,
		Operations: cards.Operations, Setups: cards.Setups, Shop: c.Shop,
	})
})
