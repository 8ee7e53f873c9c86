package cases

import (
	_ "embed" // the help

	"math"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/strength"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeRacks: the corners of a case without a fixed back do not bear a push.
	//
	// Example: shelves 1000 high nailed between two sides, without a back.
	CodeRacks diag.Code = "case-racks"
	// CodeUnknown: what the corners bear is not known.
	//
	// Example: shelves in housings between two sides, without a back.
	CodeUnknown diag.Code = "racking-not-known"
	// CodeSquare: cases stand square.
	//
	// Example: a case with a back that is glued into its rebates.
	CodeSquare diag.Code = "cases-stand-square"
)

// The backs that hold a case square, as the analysis calls them.
const held, fixed = "glued", "fixed"

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cases", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("cases", c)
	joints := map[address.Address]*piece.Joint{}
	for i := range c.Piece.Joints {
		joints[c.Piece.Joints[i].Address] = &c.Piece.Joints[i]
	}
	for _, r := range strength.Analysis.Get(c).Cases {
		switch j := joints[r.Weakest]; {
		case r.Back == held, r.Back == fixed:
			out.Judged()
		case j != nil:
			out.Judged()
			open(out, r, j)
		}
	}
	return out.Done(CodeSquare, message.New("check.cases.square")), nil
})

// open judges a case that no back holds, by its weakest corner.
func open(out *verdict.Findings, r plan.Racking, j *piece.Joint) {
	args := []message.Arg{message.Text("mark", out.Mark(j.A)), message.Text("other", out.Mark(j.B)), message.Length("high", r.High.Nm),
		message.Count("corners", r.Corners), message.Word("back", "back."+r.Back)}
	if !r.Each.Known() || !r.Bears.Known() {
		args = append(args, message.List("lacks", lacks(r)...))
		out.Unknown(CodeUnknown, message.New("check.cases.unknown", args...), j.Address, j.Where, j.A, j.B)
		return
	}
	each, bears := r.Each.Value.Float(), r.Bears.Value.Float()
	if r.Each.High.Float() <= r.Bears.Low.Float() {
		return
	}
	push, least := math.Round(r.Push.Value.Float()), math.Floor(r.Bears.Low.Float()*10)/10
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeRacks, Address: j.Address, Where: j.Where,
		Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, r.Each), verdict.Quantity(plan.RoleLimit, r.Bears), verdict.Quantity(plan.RoleLoad, r.Push)},
		Source:  "mechanics.push-of-use (practice); " + verdict.Cite(r.Bears.Source)}
	key := "check.cases.racks"
	if each <= bears { // only at the ends of the ranges
		x.Severity, key = diag.Note, "check.cases.may-rack"
	}
	x.Text = message.New(key, append(args, message.Ratio("is", math.Ceil(each*10)/10), message.Ratio("limit", math.Floor(bears*10)/10), message.Ratio("least", least), message.Ratio("push", push))...)
	out.Add(x, j.A, j.B)
}

// lacks is what must be known to say what the corners bear.
func lacks(r plan.Racking) []message.Arg {
	var out []message.Arg
	for _, d := range append(slices.Clone(r.Each.Missing), r.Bears.Missing...) {
		out = append(out, message.Word("", "datum."+strings.ReplaceAll(string(d), " ", "-")))
	}
	return out
}
