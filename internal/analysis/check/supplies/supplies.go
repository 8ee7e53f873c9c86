package supplies

import (
	_ "embed" // the help
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/estimate"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/supplies"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeGlue: a glue that is not known.
	//
	// Example: glue = "fish" on a joint.
	CodeGlue diag.Code = "glue-not-known"
	// CodeFinish: a finish that is not known.
	//
	// Example: finish "outside" { kind = "soap" }.
	CodeFinish diag.Code = "finish-not-known"
	// CodeCold: the shop is too cold for a glue or a finish, or too warm.
	//
	// Example: yellow glue, which wants 7 degrees, in a shop of 5.
	CodeCold diag.Code = "wrong-air-for-it"
	// CodeRight: all are known and set in today's air.
	//
	// Example: yellow glue and shellac in a shop of 18 degrees.
	CodeRight diag.Code = "supplies-known"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "supplies", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, cutting.Strips},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, out: verdict.Of("supplies", c)}
	j.glues()
	j.finishes()
	return j.out.Done(CodeRight, message.New("check.supplies.right")), nil
})

type judge struct {
	*analysis.Context
	out *verdict.Findings
}

// glues judges each glue once, at the first joint that it holds, or at the first panel
// that is glued up with it.
func (j *judge) glues() {
	var seen []string
	for _, joint := range j.Piece.Joints {
		if joint.Glue == "" || slices.Contains(seen, joint.Glue) {
			continue
		}
		seen = append(seen, joint.Glue)
		j.glue(joint.Glue, joint.Address, joint.Where)
	}
	w, ok := supplies.Panel(cutting.Strips.Get(j.Context).Workpieces)
	if name := supplies.PanelGlue(j.Piece, j.Shop); ok && !slices.Contains(seen, name) {
		for _, p := range j.Piece.Parts {
			if slices.Contains(w.Parts, p.Address) {
				j.glue(name, p.Address, p.Where, p.Address)
				return
			}
		}
	}
}

func (j *judge) glue(name string, at address.Address, where diag.Place, parts ...address.Address) {
	g, err := j.Shop.Glue(name)
	if err != nil {
		j.unknown(CodeGlue, "check.supplies.glue", name, at, where, glueNames(), parts...)
		return
	}
	j.out.Judged()
	if j.known() && g.Coldest.Known() && j.today() < g.Coldest.Value {
		j.air("check.supplies.cold", name, g.Coldest, at, where)
	}
}

func (j *judge) finishes() {
	for _, x := range j.Piece.Finishes {
		f, err := j.Shop.Finish(x.Kind)
		if err != nil {
			j.unknown(CodeFinish, "check.supplies.finish", x.Kind, x.Address, x.Where, finishNames())
			continue
		}
		j.out.Judged()
		switch {
		case !j.known():
		case f.Coldest.Known() && j.today() < f.Coldest.Value:
			j.air("check.supplies.cold", x.Kind, f.Coldest, x.Address, x.Where)
		case f.Warmest.Known() && j.today() > f.Warmest.Value:
			j.air("check.supplies.warm", x.Kind, f.Warmest, x.Address, x.Where)
		}
	}
}

// known reports whether the shop says how warm it is.
func (j *judge) known() bool { return j.Shop != nil && j.Shop.Climate.Now != (timber.Air{}) }

func (j *judge) today() timber.Temperature { return j.Shop.Climate.Now.Temperature }

func (j *judge) unknown(code diag.Code, key, name string, at address.Address, where diag.Place, names []message.Arg, parts ...address.Address) {
	j.out.Unknown(code, message.New(key, message.Text("name", name), message.List("known", names...)), at, where, parts...)
}

func glueNames() []message.Arg {
	var out []message.Arg
	for _, g := range sundries.Glues() {
		out = append(out, message.Text("", g.Name))
	}
	return out
}

func finishNames() []message.Arg {
	var out []message.Arg
	for _, f := range sundries.Finishes() {
		out = append(out, message.Text("", f.Name))
	}
	return out
}

// air tells of air that a glue or finish does not set in, with what others say of
// the limit where today lies between.
func (j *judge) air(key, name string, limit figure.Of[timber.Temperature], at address.Address, where diag.Place) {
	degrees := func(n string, t timber.Temperature) message.Arg {
		return message.Text(n, fmt.Sprintf("%.3g", float64(t)))
	}
	severity := diag.Error
	if j.today() >= limit.Low && j.today() <= limit.High {
		severity = diag.Warning // it depends on whom one believes
	}
	warm := func(t timber.Temperature) unit.Value { return estimate.Value(unit.DimTemp, float64(t)) }
	most := j.out.Given(plan.RoleLimit, "least temperature", warm(limit.Value), "", limit.Source)
	most.Low, most.High = warm(limit.Low), warm(limit.High)
	now := j.out.Given(plan.RoleIs, "temperature today", warm(j.today()), "", figure.Source{Key: "shop.temperature", Status: figure.Stated})
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: severity, Code: CodeCold, Address: at, Where: where, Source: verdict.Cite(limit.Source),
		Figures: []plan.Quantity{now, most},
		Text: message.New(key, message.Text("name", name), degrees("is", j.today()),
			message.Range("limit", degrees("value", limit.Value), degrees("low", limit.Low), degrees("high", limit.High)),
			message.Word("status", "figure-status."+string(limit.Source.Status)))})
}
