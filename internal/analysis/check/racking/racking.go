package racking

import (
	_ "embed" // the help
	"strings"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeWide: a drawer is wider than it is long.
	//
	// Example: a drawer 400 wide and 378 long.
	CodeWide diag.Code = "drawer-wider-than-long"
	// CodeNoParts: a group that moves has no parts.
	//
	// Example: a fit that moves an empty group.
	CodeNoParts diag.Code = "drawer-without-parts"
	// CodeRuns: every drawer is at least as long as it is wide.
	//
	// Example: a drawer 200 wide and 378 long.
	CodeRuns diag.Code = "drawers-run"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "racking", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("racking", c)
	for _, m := range bodies.Of(c).Moves() {
		if len(m.Parts) == 0 {
			out.Unknown(CodeNoParts, message.New("check.racking.no-parts", message.Address("group", m.Group.Address)), m.Group.Address, m.Group.Where)
			continue
		}
		name := string(m.Group.Address)
		width := c.Ledger.Less(name+".width", m.Extent[piece.Right].High, m.Extent[piece.Right].Low)
		length := c.Ledger.Less(name+".length", m.Extent[piece.Back].High, m.Extent[piece.Back].Low)
		if length.Nm >= width.Nm || guided(c.Piece, m) {
			continue
		}
		x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeWide, Address: m.Group.Address, Where: m.Group.Where,
			Is: verdict.Figure(length), Limit: verdict.Figure(width), Source: "check.drawer-length (practice)",
			Text: message.New("check.racking.wide", message.Address("group", m.Group.Address), message.Length("is", length.Nm), message.Length("limit", width.Nm),
				message.Ratio("ratio", length.Nm.Millimetres()/width.Nm.Millimetres())),
		}
		if f := m.Fronts(); len(f) > 0 {
			out.Add(x, f[0].Address)
		} else {
			out.Add(x)
		}
	}
	return out.Done(CodeRuns, message.New("check.racking.runs")), nil
})

// guided reports whether the drawer has runners or guides.
func guided(p *piece.Piece, m bodies.Move) bool {
	for _, h := range p.Hardware {
		if h.Count == 0 || !m.Holds(h.On) && !m.Holds(h.Address) {
			continue
		}
		for _, word := range []string{"runner", "slide", "guide"} {
			if strings.Contains(strings.ToLower(h.Kind), word) {
				return true
			}
		}
	}
	return false
}
