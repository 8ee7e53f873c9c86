package finishing

import (
	_ "embed" // the help

	"scantling/internal/address"
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
	// CodeSmells: oil inside a closed drawer or case.
	//
	// Example: Danish oil on the sides of a drawer.
	CodeSmells diag.Code = "oil-inside"
	// CodeGlued: parts are finished before they are glued.
	//
	// Example: shellac before assembly on sides that are glued to shelves.
	CodeGlued diag.Code = "finished-before-glue"
	// CodeUnknown: what a finish is made of is not known.
	//
	// Example: finish "inside" { kind = "soap" } on a drawer.
	CodeUnknown diag.Code = "finish-inside-unknown"
	// CodeRight: finishes go where and when they may.
	//
	// Example: shellac after assembly.
	CodeRight diag.Code = "finishes-right"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "finishing", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("finishing", c)
	moves := bodies.Of(c).Moves()
	for i := range c.Piece.Finishes {
		f := &c.Piece.Finishes[i]
		if inside := insideOf(f, moves); inside != "" {
			out.Judged()
			x, err := c.Shop.Finish(f.Kind)
			switch {
			case err != nil:
				out.Unknown(CodeUnknown, message.New("check.finishing.unknown", message.Text("kind", f.Kind), message.Text("mark", out.Mark(inside))), f.Address, f.Where, inside)
			case x.Oil:
				out.Add(plan.Finding{
					Status: plan.Fail, Severity: diag.Warning, Code: CodeSmells, Address: f.Address, Where: f.Where, Source: "check.no-oil-inside (practice)",
					Text: message.New("check.finishing.smells", message.Text("kind", f.Kind), message.Text("mark", out.Mark(inside))),
				}, inside)
			}
		}
		if f.When == "before assembly" {
			out.Judged()
			if part, joint := glued(c.Piece, f); joint != "" {
				out.Add(plan.Finding{
					Status: plan.Fail, Severity: diag.Warning, Code: CodeGlued, Address: f.Address, Where: f.Where, Source: "check.no-glue-on-finish (practice)",
					Text: message.New("check.finishing.glued", message.Text("mark", out.Mark(part)), message.Address("joint", joint)),
				}, part)
			}
		}
	}
	return out.Done(CodeRight, message.New("check.finishing.right")), nil
})

// insideOf returns a part of a drawer that the finish goes on.
func insideOf(f *piece.Finish, moves []bodies.Move) address.Address {
	for _, m := range moves {
		for _, p := range m.Parts {
			for _, on := range f.On {
				if on.Has(p.Address) {
					return p.Address
				}
			}
		}
	}
	return ""
}

// glued returns the first joint with glue of a part that the finish goes on.
func glued(p *piece.Piece, f *piece.Finish) (part, joint address.Address) {
	for i := range p.Joints {
		j := &p.Joints[i]
		if j.Glue == "" {
			continue
		}
		for _, on := range f.On {
			for _, a := range []address.Address{j.A, j.B} {
				if on.Has(a) {
					return a, j.Address
				}
			}
		}
	}
	return "", ""
}
