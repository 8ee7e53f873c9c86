package sag

import (
	_ "embed" // the help
	"slices"

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
	j := judge{index: bodies.Of(c), out: verdict.Of("sag", c), source: verdict.Cite(figure.PracticeSource("strength.seen-sag"))}
	if c.Shop != nil {
		if own := c.Shop.LengthRule(strength.RuleSag); own.Known() && own.Value > 0 {
			j.source = verdict.Cite(own.Source)
		}
	}
	shelves := strength.Analysis.Get(c).Shelves
	for _, s := range shelves {
		if j.sags(s) {
			j.told = append(j.told, s)
		}
	}
	for _, s := range shelves {
		j.unknown(s)
	}
	return j.out.Done(CodeStiff, message.New("check.sag.stiff")), nil
})

type judge struct {
	index *bodies.Index
	out   *verdict.Findings
	// source says whose the limit is.
	source string
	// told are the shelves that are told to sag.
	told []plan.Shelf
}

// sags judges one shelf by its contents or the load of the house, and reports whether it
// is told.
func (j judge) sags(s plan.Shelf) bool {
	load, known := loadOf(s)
	_, _, high, ok := load.AtOnce.Lengths()
	if ok {
		j.out.Judged()
	}
	if !ok || !known || high <= s.Seen.Nm {
		return false
	}
	key, args := "check.sag.sags", j.args(s, load)
	switch {
	case s.On != "":
		key, args = "check.sag.sags-on", append(args, message.Text("other", j.out.Mark(s.On)))
	case load.Upright.Known():
		key, args = "check.sag.sags-bears", append(args, message.Ratio("hands", load.Upright.Value.Float()))
	}
	figures := []plan.Quantity{verdict.Quantity(plan.RoleIs, load.AtOnce), verdict.Quantity(plan.RoleAfter, load.Lasting), verdict.Quantity(plan.RoleLoad, load.Load)}
	f := load.AtOnce.Figure()
	j.out.Add(plan.Finding{
		Status: plan.Fail, Severity: diag.Warning, Code: CodeSags, Address: s.Part, Where: j.where(s.Part), Is: &f, Limit: verdict.Figure(s.Seen), Figures: figures,
		Rule: strength.RuleSag, Source: j.source + "; " + verdict.Cite(load.AtOnce.Source), Text: message.New(key, args...),
	}, s.Part)
	return true
}

// unknown tells what is missing of a shelf that would sag under books, or whose stiffness
// nobody knows. Of one that is like another which is told to sag, and bridges as much,
// nothing more is told: what helps the one helps both.
func (j judge) unknown(s plan.Shelf) {
	load, known := loadOf(s)
	_, _, high, ok := load.AtOnce.Lengths()
	switch {
	case !ok && s.Span.Nm > 0 && known:
		j.out.Unknown(CodeUnknown, message.New("check.sag.no-stiffness", message.Text("mark", j.out.Mark(s.Part))), s.Part, j.where(s.Part), s.Part)
	case ok && !known && high > s.Seen.Nm && !slices.ContainsFunc(j.told, func(t plan.Shelf) bool { return j.like(s, t) }):
		j.out.Unknown(CodeUnknown, message.New("check.sag.unknown", j.args(s, load)...), s.Part, j.where(s.Part), s.Part)
	}
}

// like reports whether two shelves bend alike: of one wood and thickness, bridging as much
// the same way of the grain.
func (j judge) like(s, t plan.Shelf) bool {
	p, q := j.index.Part(s.Part), j.index.Part(t.Part)
	return p != nil && q != nil && s.Span.Nm == t.Span.Nm && s.Across == t.Across && p.Material == q.Material && p.Thickness.Nm == q.Thickness.Nm
}

// args are what a text about a sag says.
func (j judge) args(s plan.Shelf, load plan.ShelfSag) []message.Arg {
	sag, low, high, _ := load.AtOnce.Lengths()
	lasting, _, _, _ := load.Lasting.Lengths()
	return []message.Arg{
		message.Text("mark", j.out.Mark(s.Part)), message.Length("span", s.Span.Nm),
		message.Range("is", message.Length("value", sag), message.Length("low", low), message.Length("high", high)),
		message.Length("lasting", lasting), message.LengthRounded("limit", s.Seen.Nm, unit.Down),
	}
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
