package sag

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
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
	// CodeSags: a shelf bends so far that it is seen.
	//
	// Example: 60 kg of records on 850 mm of plywood 17.6 thick.
	CodeSags diag.Code = "sags"
	// CodeUnknown: what a shelf carries is not known, and it would bend under books.
	//
	// Example: a shelf of 1100 mm without contents.
	CodeUnknown diag.Code = "load-not-known"
	// CodeStiff: nothing bends so that it is seen.
	//
	// Example: a shelf of 400 mm, 18 thick.
	CodeStiff diag.Code = "stiff-enough"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "sag", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{bodies.Of(c), verdict.Of("sag", c), verdict.Cite(figure.PracticeSource("strength.seen-sag"))}
	if c.Shop != nil {
		if own := c.Shop.LengthRule(strength.RuleSag); own.Known() && own.Value > 0 {
			j.source = verdict.Cite(own.Source)
		}
	}
	for _, s := range strength.Analysis.Get(c).Shelves {
		j.shelf(s)
	}
	return j.out.Done(CodeStiff, message.New("check.sag.stiff")), nil
})

type judge struct {
	index *bodies.Index
	out   *verdict.Findings
	// source says whose the limit is.
	source string
}

// shelf judges one shelf by its contents, or the load of the house, or books.
func (j judge) shelf(s plan.Shelf) {
	load, known := loadOf(s)
	sag, low, high, ok := load.AtOnce.Lengths()
	if !ok || high <= s.Seen.Nm {
		if !ok && s.Span.Nm > 0 && known {
			j.out.Unknown(CodeUnknown, message.New("check.sag.no-stiffness", message.Text("mark", j.out.Mark(s.Part))), s.Part, j.where(s.Part), s.Part)
		}
		return
	}
	lasting, _, _, _ := load.Lasting.Lengths()
	args := []message.Arg{
		message.Text("mark", j.out.Mark(s.Part)), message.Length("span", s.Span.Nm), message.Length("is", sag), message.Length("low", low), message.Length("high", high),
		message.Length("lasting", lasting), message.LengthRounded("limit", s.Seen.Nm, unit.Down),
	}
	if !known {
		j.out.Unknown(CodeUnknown, message.New("check.sag.unknown", args...), s.Part, j.where(s.Part), s.Part)
		return
	}
	f := load.AtOnce.Figure()
	j.out.Add(plan.Finding{
		Status: plan.Fail, Severity: diag.Warning, Code: CodeSags, Address: s.Part, Where: j.where(s.Part), Is: &f, Limit: verdict.Figure(s.Seen),
		Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, load.AtOnce), verdict.Quantity(plan.RoleAfter, load.Lasting), verdict.Quantity(plan.RoleLoad, load.Load)},
		Rule:    strength.RuleSag, Source: j.source + "; " + verdict.Cite(load.AtOnce.Source), Text: message.New("check.sag.sags", args...),
	}, s.Part)
}

// loadOf picks the load that a shelf is judged by, and whether it is what it will
// carry.
func loadOf(s plan.Shelf) (plan.ShelfSag, bool) {
	var out plan.ShelfSag
	for _, want := range []string{"contents", "shelf load", "books", "other"} {
		for _, l := range s.Loads {
			if l.Case == want && (out.Case == "" || !out.Load.Known()) && l.Load.Known() {
				out = l
			}
		}
	}
	return out, out.Case == "contents" || out.Case == "shelf load"
}

// where is the place of a part in the document.
func (j judge) where(a address.Address) diag.Place {
	if p := j.index.Part(a); p != nil {
		return p.Where
	}
	return diag.Place{}
}
