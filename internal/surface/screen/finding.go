package screen

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/words"
)

// The pages on which a finding may stand.
const (
	holdsPage  = "holds"
	timberPage = "timber"
	cutPage    = "cut"
	setPage    = "set"
	buildPage  = "build"
	overPage   = "over"
)

// subjects tell the page of a finding by a word of its check or code, the first
// that matches.
var subjects = []struct{ word, page string }{
	{"rehears", buildPage}, {"sequence", buildPage}, {"assembl", buildPage}, {"step", buildPage}, {"caution", buildPage},
	{"diagram", cutPage}, {"cutting", cutPage}, {"kerf", cutPage},
	{"setup", setPage}, {"set-up", setPage}, {"machine", setPage}, {"trapped", setPage}, {"fence", setPage}, {"cutter", setPage}, {"operation", setPage},
	{"blank", timberPage}, {"stock", timberPage}, {"board", timberPage}, {"buy", timberPage}, {"cost", timberPage}, {"material", timberPage}, {"price", timberPage},
	{"record", overPage}, {"unplaced", overPage}, {"standard", overPage},
}

// pageOf returns the page on which a finding is shown first: what it holds,
// unless it concerns something later.
func pageOf(p *plan.Plan, f plan.Finding) string {
	for _, id := range f.Near {
		switch {
		case slices.ContainsFunc(p.Setups, func(s plan.Setup) bool { return s.ID == id }):
			return setPage
		case slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return s.ID == id }):
			return buildPage
		case slices.ContainsFunc(p.Diagrams, func(d plan.Diagram) bool { return d.ID == id }):
			return cutPage
		}
	}
	for _, s := range subjects {
		if strings.Contains(f.Check, s.word) || strings.Contains(string(f.Code), s.word) {
			return s.page
		}
	}
	return holdsPage
}

// signOf returns how a finding is marked.
func signOf(status plan.Status, severity diag.Severity) Sign {
	switch {
	case status == plan.Pass:
		return RightSign
	case status == plan.Unknown || status == "" || severity == diag.Note:
		return NoteSign
	case severity == diag.Error:
		return StopSign
	}
	return CheckSign
}

// signs are in the order of reading; what there was nothing to judge of comes last.
var signs = []Sign{StopSign, CheckSign, NoteSign, RightSign, IdleSign}

func (b *builder) findings() []Finding {
	out := []Finding{}
	for i, f := range b.Plan.Findings {
		sign := signOf(f.Status, f.Severity)
		if f.Idle != "" {
			sign = IdleSign
		}
		id := fmt.Sprintf("finding-%d", i+1)
		out = append(out, Finding{
			ID: id, Check: f.Check, Sign: sign, Word: b.say.Label("sign." + string(sign)),
			Status: b.say.Label(f.Word()), Severity: string(f.Severity),
			Text: b.names.Phrase(f.Text), Address: string(f.Address), Marks: list(f.Marks), Near: list(f.Near),
			Page: pageOf(b.Plan, f), Figures: b.names.Figures(f), Source: b.names.Grounds(f), Remedies: remedies(id, f.Remedy, b.names.Phrase),
		})
	}
	slices.SortStableFunc(out, func(x, y Finding) int {
		return cmp.Compare(slices.Index(signs, x.Sign), slices.Index(signs, y.Sign))
	})
	return out
}

// tally counts what was judged.
func (b *builder) tally(fs []Finding) []Tally {
	out := []Tally{}
	for _, s := range signs {
		if s == IdleSign {
			continue
		}
		n := 0
		for _, f := range fs {
			if f.Sign == s {
				n++
			}
		}
		out = append(out, Tally{s, n, b.say.Label("sign.tally-"+string(s), message.Count("n", n))})
	}
	return out
}

func remedies(of string, list []diag.Remedy, say func(message.Message) string) []Remedy {
	out := []Remedy{}
	for i, r := range list {
		out = append(out, Remedy{ID: fmt.Sprintf("%s.%d", of, i+1), Text: say(r.Text), Applies: len(r.Edits) > 0})
	}
	return out
}

// FindRemedy returns the remedy of that id in a plan and the diagnostics beside
// it, or false.
func FindRemedy(p *plan.Plan, beside diag.List, id string) (diag.Remedy, bool) {
	pick := func(of string, list []diag.Remedy) (diag.Remedy, bool) {
		for i, r := range list {
			if fmt.Sprintf("%s.%d", of, i+1) == id {
				return r, true
			}
		}
		return diag.Remedy{}, false
	}
	for i, f := range p.Findings {
		if r, ok := pick(fmt.Sprintf("finding-%d", i+1), f.Remedy); ok {
			return r, true
		}
	}
	for i, d := range beside {
		if r, ok := pick(fmt.Sprintf("document-%d", i+1), d.Remedies); ok {
			return r, true
		}
	}
	return diag.Remedy{}, false
}

// Diagnostics puts into words what is wrong in the documents.
func Diagnostics(l diag.List, w *words.Words) []Diagnostic {
	out := []Diagnostic{}
	for i, d := range l {
		sign := signOf(plan.Fail, d.Severity)
		where := ""
		if d.Where.Line > 0 {
			where = w.Label("screen.where", message.Text("file", d.Where.File), message.Count("line", d.Where.Line))
		}
		out = append(out, Diagnostic{
			Sign: sign, Word: w.Label("sign." + string(sign)), Code: string(d.Code), Text: w.Say(d.Text), Where: where,
			Remedies: remedies(fmt.Sprintf("document-%d", i+1), d.Remedies, w.Say),
		})
	}
	return out
}
