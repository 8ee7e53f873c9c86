package verdict

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Findings collects what one check says.
type Findings struct {
	check   string
	context *analysis.Context
	marks   map[address.Address]string
	list    []plan.Finding
	told    map[fault]int
	// rules are the rules of the house by the entry of the limit that they change.
	rules map[ledger.ID]string
	// judged says that there was something to judge.
	judged bool
}

// fault is what makes two findings the same.
type fault struct {
	code      diag.Code
	status    plan.Status
	where     diag.Place
	address   address.Address
	is, limit unit.Length
}

// Of starts the findings of a check. The check must require [marks.Analysis].
func Of(check string, c *analysis.Context) *Findings {
	f := &Findings{check: check, context: c, marks: map[address.Address]string{}, told: map[fault]int{}, rules: map[ledger.ID]string{}}
	for _, row := range marks.Analysis.Get(c) {
		for _, m := range row.Members {
			f.marks[m] = row.Mark
		}
	}
	return f
}

// Mark returns the mark of a part, or its address if it has none.
func (f *Findings) Mark(part address.Address) string {
	if m, ok := f.marks[part]; ok {
		return m
	}
	return string(part)
}

// Add adds a finding about parts. The same fault, with the same figures, of the
// same line of the document is one finding, which then names all the marks.
func (f *Findings) Add(x plan.Finding, parts ...address.Address) {
	x.Check = f.check
	key := fault{code: x.Code, status: x.Status, where: x.Where}
	if x.Where.IsZero() {
		key.address = x.Address
	}
	if x.Is != nil {
		key.is = x.Is.Nm
	}
	if x.Limit != nil {
		key.limit = x.Limit.Nm
		if x.Rule == "" {
			x.Rule = f.rules[x.Limit.Entry]
		}
	}
	at, known := f.told[key]
	if !known {
		at = len(f.list)
		f.told[key] = at
		f.list = append(f.list, x)
	}
	for _, p := range parts {
		if m, ok := f.marks[p]; ok && !slices.Contains(f.list[at].Marks, m) {
			f.list[at].Marks = append(f.list[at].Marks, m)
		}
	}
}

// Unknown adds a finding that says what is missing.
func (f *Findings) Unknown(code diag.Code, text message.Message, at address.Address, where diag.Place, parts ...address.Address) {
	f.Add(plan.Finding{Status: plan.Unknown, Severity: diag.Warning, Code: code, Text: text, Address: at, Where: where}, parts...)
}

// Judged says that a thing was held against what is asked of it, whatever came of it.
func (f *Findings) Judged() { f.judged = true }

// Done returns the findings; where there are none, one pass that says so, or, if nothing
// was ever [Findings.Judged], that there was nothing to judge.
func (f *Findings) Done(code diag.Code, text message.Message) []plan.Finding {
	if len(f.list) > 0 {
		return f.list
	}
	pass := plan.Finding{Check: f.check, Status: plan.Pass, Severity: diag.Note, Code: code, Text: text}
	if !f.judged {
		pass.Idle = "idle." + strings.ReplaceAll(f.check, " ", "-")
		pass.Text = message.New("check.idle", message.Word("what", pass.Idle))
	}
	return []plan.Finding{pass}
}

// Figure returns a figure as findings hold it.
func Figure(f piece.Figure) *plan.Figure { return &f }

// Quantity returns a quantity of a finding that is no plain length of it: an estimate
// with its range, a force, a mass.
func Quantity(role string, e plan.Estimate) plan.Quantity {
	return plan.Quantity{Role: role, Estimate: e}
}

// OfPiece is the source of what the document's own sizes come to.
var OfPiece = figure.Source{Key: "piece.sizes", Status: figure.Stated}

// Ratio returns how one size stands to another; nothing where there is nothing to divide
// by.
func (f *Findings) Ratio(role, name string, of, to piece.Figure, source figure.Source) []plan.Quantity {
	if to.Nm == 0 {
		return nil
	}
	id, err := f.context.Ledger.Make(name, ledger.OpDiv, "", of.Entry, to.Entry)
	if err != nil {
		return nil
	}
	v := f.context.Ledger.Value(id)
	return []plan.Quantity{{Role: role, Estimate: plan.Estimate{Value: v, Entry: id, Source: source}}}
}

// Given enters a quantity of any dimension that a finding tells and nothing else made.
func (f *Findings) Given(role, name string, v unit.Value, in string, source figure.Source) plan.Quantity {
	id := f.context.Ledger.Given(ledger.Entry{Name: name, Value: v, Origin: ledger.Reference, Source: Cite(source), Status: string(source.Status)})
	return plan.Quantity{Role: role, Estimate: plan.Estimate{Value: v, Entry: id, Unit: in, Source: source}}
}
