package require

import (
	_ "embed" // the help

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeBroken: a rule of the designer's own does not hold.
	//
	// Example: a shelf unit that requires 150 mm for a book and leaves 140.
	CodeBroken diag.Code = "rule-broken"
	// CodeKept: all of the designer's rules hold.
	//
	// Example: a document without rules.
	CodeKept diag.Code = "rules-kept"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "require", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("require", c)
	for _, r := range c.Piece.Requires {
		out.Judged()
		if r.Holds {
			continue
		}
		severity := diag.Error
		if r.Warn {
			severity = diag.Warning
		}
		out.Add(plan.Finding{
			Status: plan.Fail, Severity: severity, Code: CodeBroken, Address: r.Address, Where: r.Where, Source: "document.require (stated)",
			Text: message.New("check.require.broken", message.Text("text", r.Text)),
		})
	}
	return out.Done(CodeKept, message.New("check.require.kept")), nil
})
