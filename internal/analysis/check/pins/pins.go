package pins

import (
	_ "embed" // the help

	"scantling/internal/address"
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
	pinned := held(c.Piece)
	made := map[address.Address]*joinery.Lowered{}
	for i := range c.Joints {
		made[c.Joints[i].Joint] = &c.Joints[i]
	}
	for i := range c.Piece.Joints {
		j := &c.Piece.Joints[i]
		if j.Kind != piece.RebateJoint {
			continue
		}
		a, b := index.Part(j.A), index.Part(j.B)
		l := made[j.Address]
		if a == nil || b == nil || l == nil {
			out.Unknown(CodeNotMade, message.New("check.pins.not-made", message.Address("joint", j.Address)), j.Address, j.Where)
			continue
		}
		entry, _ := l.Entry.Axis()
		if local, _ := a.Frame.LocalOf(entry); local != piece.AlongLength || index.Sheet(a) || index.Sheet(b) {
			continue
		}
		out.Judged()
		if pinned[pair(j)] {
			continue
		}
		out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeEndGrain, Address: j.Address, Where: j.Where, Source: "proportion.rebate-depth (practice)",
			Text: message.New("check.pins.end-grain", message.Text("mark", out.Mark(j.A)), message.Text("other", out.Mark(j.B)))}, j.A, j.B)
	}
	return out.Done(CodeHeld, message.New("check.pins.held")), nil
})

// pair names the two parts of a joint, whichever goes into which.
func pair(j *piece.Joint) [2]address.Address {
	if j.A > j.B {
		return [2]address.Address{j.B, j.A}
	}
	return [2]address.Address{j.A, j.B}
}

// held returns the pairs of parts that pins, screws, nails or dowels hold, through
// whichever joint.
func held(p *piece.Piece) map[[2]address.Address]bool {
	out := map[[2]address.Address]bool{}
	for i := range p.Joints {
		j := &p.Joints[i]
		if j.Fasteners != nil && j.Fasteners.Count > 0 || j.Dowels != nil && j.Dowels.Count > 0 {
			out[pair(j)] = true
		}
	}
	return out
}
