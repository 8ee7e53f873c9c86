package measured

import (
	_ "embed" // the help
	"slices"
	"strings"

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
	// CodeNoMeasure: no measure names the space of a fit.
	//
	// Example: a fit inside case.opening, and no measure block of it.
	CodeNoMeasure diag.Code = "opening-not-measured"
	// CodeOneEnd: an opening is not measured at both ends.
	//
	// Example: take = ["width front", "height left"].
	CodeOneEnd diag.Code = "opening-measured-at-one-end"
	// CodeDiagonals: the diagonals of an opening are not asked for.
	//
	// Example: take = ["width front", "width back", "height left", "height right"].
	CodeDiagonals diag.Code = "diagonals-not-measured"
	// CodeTooLate: what must fit does not wait for the readings.
	//
	// Example: a measure of case.opening without before = [drawer].
	CodeTooLate diag.Code = "cut-before-measured"
	// CodeMeasured: every opening is measured before anything is cut to it.
	//
	// Example: a measure with both widths, both heights and the diagonals, before
	// the drawers.
	CodeMeasured diag.Code = "openings-measured"
)

//go:embed doc.go
var source string

// wanted are the readings that an opening asks for, in pairs.
var wanted = []string{"width front", "width back", "height left", "height right"}

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "measured", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("measured", c)
	index := bodies.Of(c)
	for _, m := range index.Moves() {
		if m.Fit != nil {
			judge(c.Piece, m, out)
		}
	}
	return out.Done(CodeMeasured, message.New("check.measured.measured")), nil
})

func judge(p *piece.Piece, m bodies.Move, out *verdict.Findings) {
	space := m.Fit.Inside
	if m.Space != nil {
		space = m.Space.Address
	}
	var take []string
	waits, any := false, false
	var at piece.Measure
	for _, x := range p.Measures {
		if !names(x.Of, space) {
			continue
		}
		any, at = true, x
		take = append(take, x.Take...)
		waits = waits || holdsBack(x, m)
	}
	address := message.Address("space", space)
	fail := func(code diag.Code, severity diag.Severity, text message.Message, add ...string) {
		x := plan.Finding{Status: plan.Fail, Severity: severity, Code: code, Text: text, Address: at.Address, Where: at.Where, Source: "check.measure-openings (practice)"}
		if len(add) > 0 && !at.Last.IsZero() && at.Last.File == p.File {
			x.Remedy = []diag.Remedy{{Text: message.New("check.measured.take", words(add)), Edits: []diag.Edit{{
				File: at.Last.File, Start: at.Last.End, End: at.Last.End, New: `, "` + strings.Join(add, `", "`) + `"`}}}}
		}
		out.Add(x)
	}
	if !any {
		out.Unknown(CodeNoMeasure, message.New("check.measured.none", address, message.Address("fit", m.Fit.Address)), m.Fit.Address, m.Fit.Where)
		return
	}
	out.Judged()
	missing := slices.DeleteFunc(slices.Clone(wanted), func(w string) bool { return slices.Contains(take, w) })
	if len(missing) > 0 {
		fail(CodeOneEnd, diag.Warning, message.New("check.measured.one-end", address, words(missing)), missing...)
	}
	if !slices.Contains(take, "diagonals") {
		fail(CodeDiagonals, diag.Warning, message.New("check.measured.diagonals", address), "diagonals")
	}
	if !waits {
		fail(CodeTooLate, diag.Warning, message.New("check.measured.too-late", address, message.Address("group", m.Group.Address)))
	}
}

// words lists readings.
func words(readings []string) message.Arg {
	var out []message.Arg
	for _, r := range readings {
		out = append(out, message.Word("", "reading."+r))
	}
	return message.List("missing", out...)
}

// names reports whether a list names an address, itself or all of its kind.
func names(list []address.Address, a address.Address) bool {
	return slices.ContainsFunc(list, func(of address.Address) bool { return bodies.Matches(of, a) })
}

// holdsBack reports whether a measure comes before what moves is cut.
func holdsBack(x piece.Measure, m bodies.Move) bool {
	if names(x.Before, m.Group.Address) {
		return true
	}
	return slices.ContainsFunc(m.Parts, func(p *piece.Part) bool {
		return names(x.Before, p.Address) || slices.Contains(p.CutAfter, x.Address)
	})
}
