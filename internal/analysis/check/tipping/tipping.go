package tipping

import (
	_ "embed" // the help

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/strength"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeFalls: the piece falls over with drawers out.
	//
	// Example: a chest with three full drawers pulled right out.
	CodeFalls diag.Code = "tips-over"
	// CodeEasily: a small pull tips it.
	//
	// Example: a tall narrow shelf that 30 N at its top tip.
	CodeEasily diag.Code = "tips-easily"
	// CodeUnknown: whether it stands is not known.
	//
	// Example: contents without a mass in drawers.
	CodeUnknown diag.Code = "tipping-not-known"
	// CodeStands: it stays on its feet.
	//
	// Example: a low box.
	CodeStands diag.Code = "stands"
)

// tall is how high a piece is from which on pulling it over is judged: lower ones
// stand on tables, or hurt nobody. Common practice, no source.
var tall = verdict.Practice("check.tipping-height", 600*unit.Millimetre)

// leastPull is the pull below which a piece tips easily, in newtons.
const leastPull = 50

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "tipping", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("tipping", c)
	falls, easily, unknown := false, false, false
	least := out.Given(plan.RoleLimit, "least pull", unit.OfInt(unit.DimForce, leastPull), "N", figure.PracticeSource("check.least-pull"))
	pulled := c.Piece.High() >= out.Limit("tipping height", tall).Nm
	for _, s := range strength.Analysis.Get(c).Standing {
		state := message.Word("state", "tipping."+s.Case)
		drawers := message.Count("out", len(s.Out))
		falling, pulling := "check.tipping.falls", "check.tipping.easily"
		if len(s.Out) == 0 { // of a piece without drawers too
			falling, pulling = "check.tipping.falls-shut", "check.tipping.easily-shut"
		}
		switch {
		case !s.Holds.Known():
			if pulled && !unknown && len(s.Out) > 0 && s.Case == "loaded" {
				unknown = true
				out.Unknown(CodeUnknown, message.New("check.tipping.unknown", drawers, state), "", diag.Place{})
			}
		case s.Holds.Low.Float() <= 0:
			if !falls {
				falls = true
				out.Add(plan.Finding{
					Status: plan.Fail, Severity: diag.Error, Code: CodeFalls, Source: verdict.Cite(s.Holds.Source),
					Figures: []plan.Quantity{verdict.Quantity(plan.RoleHolds, s.Holds), verdict.Quantity(plan.RoleLoad, s.Mass)},
					Text:    message.New(falling, drawers, state, message.Ratio("holds", s.Holds.Value.Float())),
				})
			}
		case pulled && s.Pull.Known() && s.Pull.Low.Float() < leastPull:
			if !easily && !falls {
				easily = true
				high := s.PullHigh
				out.Add(plan.Finding{
					Status: plan.Fail, Severity: diag.Warning, Code: CodeEasily, Source: "check.least-pull (practice); " + verdict.Cite(s.Pull.Source),
					Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, s.Pull), least},
					Text:    message.New(pulling, drawers, state, message.Ratio("pull", s.Pull.Value.Float()), message.Length("at", high.Nm), message.Count("limit", leastPull)),
				})
			}
		}
	}
	return out.Done(CodeStands, message.New("check.tipping.stands")), nil
})
