package blind

import (
	_ "embed" // the help

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/operations"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeNoWay: the shop has no safe way to make the cut by machine.
	//
	// Example: a channel closed at both ends in a shop with a router table alone, and
	// no rule that lets a cutter be raised into held work.
	CodeNoWay diag.Code = "blind-cut-without-a-way"
	// CodeShort: the work is too short to be held while the cutter is raised.
	//
	// Example: a tray of 304.9 where 305 is the least.
	CodeShort diag.Code = "blind-work-too-short"
	// CodeDeep: the cutter is raised too far at once.
	//
	// Example: a rule of the house of 4 for each pass.
	CodeDeep diag.Code = "blind-pass-too-deep"
	// CodeUnknown: nobody has said whether the router plunges.
	//
	// Example: a machine of kind "router" without plunges.
	CodeUnknown diag.Code = "plunging-unknown"
	// CodeSafe: every cut that begins inside the work has a safe way.
	//
	// Example: channels closed at both ends, and a plunge router.
	CodeSafe diag.Code = "blind-cuts-safe"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "blind", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, operations.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, out: verdict.Of("blind", c), rules: operations.Of(c.Shop).Rules}
	for _, job := range operations.Analysis.Get(c).Jobs {
		if job.Cut.Slot == nil || job.Way.Kind == tool.Router {
			continue
		}
		switch {
		case job.Way.Raise:
			j.table(job)
		case job.Way.Machine == operations.Hand && tempts(job.Cut):
			j.byHand(job)
		}
	}
	return j.out.Done(CodeSafe, message.New("check.blind.safe")), nil
})

type judge struct {
	*analysis.Context
	out   *verdict.Findings
	rules operations.Rules
}

// tempts reports whether a cut that is left to the hand is one that a router would be
// taken for: closed at both ends, upright walls, and no small socket.
func tempts(c piece.Cut) bool {
	if c.Slot.LeanNear.Nm != 0 || c.Slot.LeanFar.Nm != 0 {
		return false
	}
	switch c.Kind {
	case piece.Channel, piece.Groove, piece.Housing, piece.Trough:
		return !c.Slot.StartOpen && !c.Slot.EndOpen
	}
	return false
}

// byHand judges a cut that no machine of the shop may make.
func (j *judge) byHand(job operations.Job) {
	if len(j.Shop.Of(tool.RouterTable)) == 0 && len(j.Shop.Of(tool.Router)) == 0 {
		return // nothing to be tempted by
	}
	j.out.Judged()
	if j.unsaid(job) {
		return
	}
	least := j.least()
	if run := along(job); j.rules.Raising && run.Nm < least.Nm {
		j.short(job, run, least)
		return
	}
	j.noWay(job)
}

// table judges a cut into which the cutter is raised at a router table.
func (j *judge) table(job operations.Job) {
	j.out.Judged()
	if !j.rules.Raising {
		if !j.unsaid(job) {
			j.noWay(job)
		}
		return
	}
	if run, least := job.Way.Work[job.Way.Run], j.least(); run.Nm < least.Nm && !j.unsaid(job) {
		j.short(job, run, least)
	}
	deepest, at := unit.Length(0), unit.Length(0)
	for _, h := range job.Way.Heights {
		deepest, at = max(deepest, h-at), h
	}
	limit := j.out.Limit("blind pass", verdict.Practice("check.blind-pass", unit.MM(3)))
	if deepest > limit.Nm && !j.unsaid(job) {
		is := piece.Figure(j.Ledger.Leaf(string(job.Cut.Address)+".pass", deepest, ledger.HouseRule, "how much is taken in one pass"))
		j.add(job, plan.Finding{Code: CodeDeep, Is: &is, Limit: &limit.Figure, Source: limit.Source,
			Text: message.New("check.blind.too-deep", j.mark(job), j.word(job), message.Length("is", is.Nm), message.Length("limit", limit.Nm))})
	}
}

// along is the size of the part that a cut runs along.
func along(job operations.Job) piece.Figure {
	return [3]piece.Figure{job.Row.Length, job.Row.Width, job.Row.Thickness}[job.Cut.Slot.Run]
}

// least is how long work must be to be held.
func (j *judge) least() verdict.Limit {
	usual := tool.Usual(tool.RouterTable).Least.Length
	return j.out.Limit("least blind work", figure.Between(usual.Value, usual.Low, usual.High, usual.Source))
}

func (j *judge) short(job operations.Job, is piece.Figure, least verdict.Limit) {
	x := plan.Finding{Code: CodeShort, Is: &is, Limit: &least.Figure, Source: least.Source,
		Text: message.New("check.blind.too-short", j.mark(job), j.word(job), message.LengthRounded("is", is.Nm, unit.Down), message.LengthRounded("limit", least.Nm, unit.Up))}
	x.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.blind.longer", message.LengthRounded("to", least.Nm, unit.Up)), is, least.Nm, unit.Up)}
	j.add(job, x)
}

func (j *judge) noWay(job operations.Job) {
	j.add(job, plan.Finding{Code: CodeNoWay, Rule: operations.RuleRaise, Source: "check.blind-cut (practice)",
		Text: message.New("check.blind.no-way", j.mark(job), j.word(job))})
}

// unsaid tells of a router that may be the safe way.
func (j *judge) unsaid(job operations.Job) bool {
	for _, m := range j.Shop.Of(tool.Router) {
		if m.Tool.Plunges == tool.PlungesUnsaid {
			j.out.Unknown(CodeUnknown, message.New("check.blind.unknown", j.mark(job), j.word(job), message.Text("machine", m.ID)), job.Cut.Address, job.Cut.Where, job.Row.Members...)
			return true
		}
	}
	return false
}

func (j *judge) mark(job operations.Job) message.Arg {
	return message.Text("mark", j.out.Mark(job.Row.Members[0]))
}

func (j *judge) word(job operations.Job) message.Arg {
	return message.Word("cut", "cut."+string(job.Cut.Kind))
}

func (j *judge) add(job operations.Job, x plan.Finding) {
	x.Status, x.Severity, x.Address, x.Where = plan.Fail, diag.Warning, job.Cut.Address, job.Cut.Where
	j.out.Add(x, job.Row.Members...)
}
