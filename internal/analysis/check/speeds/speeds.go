package speeds

import (
	_ "embed" // the help
	"errors"

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
	// CodeFast: the machine turns faster than the cutter may.
	//
	// Example: a cutter marked 17 999 in a router that does not go below 18 000.
	CodeFast diag.Code = "cutter-too-fast"
	// CodeBig: no published speed is for a cutter of that size.
	//
	// Example: a cutter of 100 in a router table.
	CodeBig diag.Code = "cutter-too-big"
	// CodeSpeedUnknown: nobody has said how slowly the machine can turn.
	//
	// Example: a cutter marked 18 000 in a router table without least_speed.
	CodeSpeedUnknown diag.Code = "machine-speed-unknown"
	// CodeDeep: one pass takes more than makers allow.
	//
	// Example: a rule of the house of 8 for each pass.
	CodeDeep diag.Code = "pass-too-deep"
	// CodePassUnknown: the rule of the house says nothing.
	//
	// Example: a rule "depth per pass" of 0.
	CodePassUnknown diag.Code = "pass-not-said"
	// CodeRight: every cutter turns as it may and takes what it may.
	//
	// Example: passes of 3 at the published speeds.
	CodeRight diag.Code = "speeds-right"
)

// rulePass is the rule of the house that package operations cuts by.
const rulePass = "depth per pass"

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "speeds", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, operations.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, out: verdict.Of("speeds", c)}
	type pair struct{ machine, cutter string }
	seen := map[pair]bool{}
	for _, job := range operations.Analysis.Get(c).Jobs {
		w := job.Way
		if w.Cutter.Name == "" || w.Kind != tool.RouterTable && w.Kind != tool.Router {
			continue
		}
		if p := (pair{w.Machine, w.Cutter.Name}); !seen[p] {
			seen[p] = true
			j.speed(job)
		}
		j.out.Judged()
		j.pass(job)
	}
	return j.out.Done(CodeRight, message.New("check.speeds.right")), nil
})

type judge struct {
	*analysis.Context
	out *verdict.Findings
}

// single is the least speed of routers that have one speed alone. Common practice,
// no source.
const single tool.Speed = 22000

// speed judges one cutter in one machine.
func (j *judge) speed(job operations.Job) {
	c, m := job.Way.Cutter, j.machine(job.Way.Machine)
	mark, cutter, machine := message.Text("mark", j.out.Mark(job.Row.Members[0])), message.Text("cutter", c.Name), message.Text("machine", m.Name)
	speeds, err := tool.SpeedsOf(c)
	var refused *figure.Refusal
	switch {
	case errors.As(err, &refused):
		j.add(job, plan.Finding{Code: CodeBig, Text: refused.Text, Source: "tool.speed-greatest (read)"})
	case err != nil:
	case m.LeastSpeed > speeds.Greatest.Value:
		j.add(job, plan.Finding{
			Code: CodeFast, Source: verdict.Cite(speeds.Greatest.Source),
			Text: message.New("check.speeds.too-fast", mark, cutter, machine, message.Speed("is", int(m.LeastSpeed)), message.Speed("limit", int(speeds.Greatest.Value))),
			Figures: []plan.Quantity{
				j.out.Given(plan.RoleIs, m.Name+".least speed", turns(m.LeastSpeed), "rpm", figure.Source{Key: "tool.stated.least_speed", Status: figure.Stated}),
				j.out.Given(plan.RoleLimit, c.Name+".greatest speed", turns(speeds.Greatest.Value), "rpm", speeds.Greatest.Source),
			},
		})
	case m.LeastSpeed == 0 && speeds.Greatest.Value < single && (m.GreatestSpeed == 0 || m.GreatestSpeed > speeds.Greatest.Value):
		j.out.Unknown(CodeSpeedUnknown, message.New("check.speeds.unknown", mark, cutter, machine, message.Speed("limit", int(speeds.Greatest.Value))),
			job.Cut.Address, job.Cut.Where, job.Row.Members...)
	}
}

func turns(s tool.Speed) unit.Value { return unit.OfInt(unit.DimUntyped, int64(s)) }

// pass judges how much a cut takes at once.
func (j *judge) pass(job operations.Job) {
	w := job.Way
	rule, said := j.Shop.Rule(rulePass)
	if l, _ := rule.Value.Length(); said && l <= 0 {
		j.out.Unknown(CodePassUnknown, message.New("check.speeds.pass-not-said", message.Length("taken", tool.DepthPerPass(w.Cutter, figure.Of[unit.Length]{}).Value)), job.Cut.Address, rule.Where, job.Row.Members...)
		return
	}
	deepest, at := unit.Length(0), unit.Length(0)
	for _, h := range w.Heights {
		deepest, at = max(deepest, h-at), h
	}
	limit := j.out.Limit("greatest pass", figure.Exactly(6350*unit.Micrometre, tool.SourcePass))
	if deepest <= limit.Nm {
		return
	}
	is := piece.Figure(j.Ledger.Leaf(w.Cutter.Name+".pass", deepest, ledger.HouseRule, "how much is taken in one pass"))
	x := plan.Finding{
		Code: CodeDeep, Is: &is, Limit: &limit.Figure, Source: limit.Source,
		Text: message.New("check.speeds.too-deep", message.Text("mark", j.out.Mark(job.Row.Members[0])), message.Word("cut", "cut."+string(job.Cut.Kind)),
			message.Text("cutter", w.Cutter.Name), message.Length("is", is.Nm), message.Length("limit", limit.Nm)),
	}
	if l, ok := rule.Value.Length(); ok && l > limit.Nm && !rule.At.IsZero() {
		x.Remedy = []diag.Remedy{{
			Text:  message.New("check.speeds.shallower", message.Length("to", unit.MM(3))),
			Edits: []diag.Edit{{File: rule.At.File, Start: rule.At.Start, End: rule.At.End, New: `"3 mm"`}},
		}}
	}
	j.add(job, x)
}

func (j *judge) add(job operations.Job, x plan.Finding) {
	x.Status, x.Severity, x.Address, x.Where = plan.Fail, diag.Error, job.Cut.Address, job.Cut.Where
	j.out.Add(x, job.Row.Members...)
}

// machine returns the shop's machine under the shop's own name.
func (j *judge) machine(id string) tool.Machine {
	for _, m := range j.Shop.Machines {
		if m.ID == id {
			m.Tool.Name = m.ID
			return m.Tool
		}
	}
	return tool.Machine{Name: id}
}
