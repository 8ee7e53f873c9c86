package pins

import (
	_ "embed" // the help
	"slices"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeEndGrain: a rebate in end grain is held by glue alone.
	//
	// Example: a box corner in a rebate, glued, without pins.
	CodeEndGrain diag.Code = "end-grain-without-pins"
	// CodeNotMade: a rebate could not be made, so that its grain is not known.
	//
	// Example: a rebate of two parts that do not meet.
	CodeNotMade diag.Code = "rebate-not-made"
	// CodeHeld: every rebate in end grain is held by more than glue.
	//
	// Example: a box corner in a rebate with four pins.
	CodeHeld diag.Code = "rebates-held"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "pins", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out, index := verdict.Of("pins", c), bodies.Of(c)
	for i := range c.Piece.Joints {
		j := &c.Piece.Joints[i]
		if j.Kind != piece.RebateJoint {
			continue
		}
		a, b := index.Part(j.A), index.Part(j.B)
		k := slices.IndexFunc(c.Joints, func(l joinery.Lowered) bool { return l.Joint == j.Address })
		if a == nil || b == nil || k < 0 {
			out.Unknown(CodeNotMade, message.New("check.pins.not-made", message.Address("joint", j.Address)), j.Address, j.Where)
			continue
		}
		entry, _ := c.Joints[k].Entry.Axis()
		if local, _ := a.Frame.LocalOf(entry); local != piece.AlongLength || index.Sheet(a) || index.Sheet(b) || held(c.Piece, j) {
			continue
		}
		out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeEndGrain, Address: j.Address, Where: j.Where, Source: "proportion.rebate-depth (practice)",
			Text: message.New("check.pins.end-grain", message.Text("mark", out.Mark(j.A)), message.Text("other", out.Mark(j.B)))}, j.A, j.B)
	}
	return out.Done(CodeHeld, message.New("check.pins.held")), nil
})

// held reports whether pins, screws, nails or dowels go through this or another
// joint of the same two parts.
func held(p *piece.Piece, j *piece.Joint) bool {
	return slices.ContainsFunc(p.Joints, func(k piece.Joint) bool {
		same := k.A == j.A && k.B == j.B || k.A == j.B && k.B == j.A
		return same && (k.Fasteners != nil && k.Fasteners.Count > 0 || k.Dowels != nil && k.Dowels.Count > 0)
	})
}
