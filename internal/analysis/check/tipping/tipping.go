package tipping

import (
	_ "embed" // the help
	"strings"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/estimate"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/strength"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeFalls: the piece falls over with drawers out.
	//
	// Example: a chest with three full drawers pulled right out.
	CodeFalls diag.Code = "tips-over"
	// CodeEasily: a small pull tips it.
	//
	// Example: a tall narrow shelf that 30 N at its top tip.
	CodeEasily diag.Code = "tips-easily"
	// CodeUnknown: whether it stands is not known.
	//
	// Example: contents without a mass in drawers.
	CodeUnknown diag.Code = "tipping-not-known"
	// CodeStands: it stays on its feet.
	//
	// Example: a low box.
	CodeStands diag.Code = "stands"
)

// What the federal rule for clothing storage units takes in: from 27 in high, and 30 lb
// heavy. Lower or lighter pieces hurt less when they come down.
var (
	scope = figure.Source{Key: "16-cfr-1261", Title: "16 CFR 1261 (ASTM F2057-23)", Clause: "scope", Status: figure.Read}
	tall  = figure.Exactly(27*unit.Inch, scope)
	heavy = figure.Exactly(mechanics.Mass(13.6), scope)
)

// leastPull is the pull below which a piece tips easily: about what a child pulls.
var leastPull = figure.Exactly(mechanics.Force(50), figure.PracticeSource("check.least-pull"))

// Rules of the house that change these.
const (
	RuleHeight = "tipping height"
	RuleMass   = "tipping mass"
	RulePull   = "least pull"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "tipping", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Findings: verdict.Of("tipping", c), children: children(c.Piece.Purpose)}
	pull, source := ruled(c, RulePull, leastPull)
	mass, _ := ruled(c, RuleMass, heavy)
	j.least = j.Given(plan.RoleLimit, RulePull, estimate.Value(unit.DimForce, float64(pull)), "N", source)
	j.pull, j.mass, j.tall = float64(pull), float64(mass), c.Piece.High() >= j.Limit(RuleHeight, tall).Nm
	for _, s := range strength.Analysis.Get(c).Standing {
		j.standing(s)
	}
	return j.Done(CodeStands, message.New("check.tipping.stands")), nil
})

// judge holds one piece against its limits.
type judge struct {
	*verdict.Findings
	least      plan.Quantity
	pull, mass float64 // N, kg
	// tall says that it is high enough to be judged by a pull; children, that it is for
	// those who pull themselves up by it.
	tall, children, falls, easily, unknown bool
}

// standing judges one state.
func (j *judge) standing(s plan.Standing) {
	if s.Holds.Known() {
		j.Judged()
	}
	state, drawers := message.Word("state", "tipping."+s.Case), message.Count("out", len(s.Out))
	falling, pulling := "check.tipping.falls", "check.tipping.easily"
	if len(s.Out) == 0 { // of a piece without drawers too
		falling, pulling = "check.tipping.falls-shut", "check.tipping.easily-shut"
	}
	switch {
	case !s.Holds.Known():
		if j.pulled(s) && !j.unknown && len(s.Out) > 0 && s.Case == "loaded" {
			j.unknown = true
			j.Unknown(CodeUnknown, message.New("check.tipping.unknown", drawers, state), "", diag.Place{})
		}
	case s.Holds.Low.Float() <= 0:
		if !j.falls {
			j.falls = true
			j.Add(plan.Finding{
				Status: plan.Fail, Severity: diag.Error, Code: CodeFalls, Source: verdict.Cite(s.Holds.Source),
				Figures: []plan.Quantity{verdict.Quantity(plan.RoleHolds, s.Holds), verdict.Quantity(plan.RoleLoad, s.Mass)},
				Text:    message.New(falling, drawers, state, message.Ratio("holds", s.Holds.Value.Float())),
			})
		}
	case j.pulled(s) && s.Pull.Known() && s.Pull.Low.Float() < j.pull && !j.easily && !j.falls:
		j.easily = true
		j.Add(plan.Finding{
			Status: plan.Fail, Severity: diag.Warning, Code: CodeEasily, Rule: RulePull, Source: verdict.Cite(j.least.Source) + "; " + verdict.Cite(s.Pull.Source),
			Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, s.Pull), j.least},
			Text:    message.New(pulling, drawers, state, message.Ratio("pull", s.Pull.Value.Float()), message.Length("at", s.PullHigh.Nm), message.Ratio("limit", j.pull)),
		})
	}
}

// pulled reports whether a pull is judged: of what is high and may be heavy, and of all
// that is for children.
func (j *judge) pulled(s plan.Standing) bool {
	return j.children || j.tall && (!s.Mass.Known() || s.Mass.High.Float()/1000 >= j.mass)
}

// children reports whether a purpose names them.
func children(purpose string) bool {
	purpose = strings.ToLower(purpose)
	return strings.Contains(purpose, "child") || strings.Contains(purpose, "nursery")
}

// ruled is a figure of the trade, or the house's own of that name.
func ruled[N ~float64](c *analysis.Context, name string, usual figure.Of[N]) (N, figure.Source) {
	if c.Shop != nil {
		if r, ok := c.Shop.Rule(name); ok && r.Value.IsNumeric() && r.Value.Sign() >= 0 {
			return N(r.Value.Float()), figure.Source{Key: "house." + name, Title: r.Why, Status: figure.Stated}
		}
	}
	return usual.Value, usual.Source
}
