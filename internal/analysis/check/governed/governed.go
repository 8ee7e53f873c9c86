package governed

import (
	_ "embed" // the help
	"strings"

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
	// CodeGoverned: the piece is for a use that a standard governs.
	//
	// Example: piece "Bed" { purpose = "bunk bed" }.
	CodeGoverned diag.Code = "use-governed"
	// CodeUnknown: a tall heavy piece with drawers does not say what it is for.
	//
	// Example: a chest of drawers 700 high that weighs 40 kg.
	CodeUnknown diag.Code = "purpose-not-said"
	// CodeFree: no standard that is known here governs it.
	//
	// Example: a box of tools.
	CodeFree diag.Code = "use-not-governed"
)

// standards lists the uses that are never judged here, with what governs them and
// whether its scope was read or is from memory.
var standards = []struct{ use, standard, status string }{
	{"bunk bed", "16 CFR 1213 and 1513, EN 747", "read"},
	{"high bed", "EN 747", "memory"},
	{"loft bed", "16 CFR 1213 and 1513, EN 747", "read"},
	{"cot", "EN 716, 16 CFR 1219", "memory"},
	{"crib", "16 CFR 1219 and 1220, EN 716", "memory"},
	{"cradle", "EN 1130, 16 CFR 1218", "memory"},
	{"high chair", "EN 14988, 16 CFR 1231", "memory"},
	{"toy", "EN 71, ASTM F963", "read"},
	{"climbing frame", "EN 71-8, EN 1176, ASTM F1148", "memory"},
	{"playground", "EN 1176, ASTM F1487", "memory"},
	{"ladder", "EN 131, ANSI A14.1", "memory"},
	{"step stool", "EN 14183, ANSI A14.11", "memory"},
	{"stair", "the building code", "memory"},
	{"deck", "the building code", "memory"},
	{"structure", "the building code", "memory"},
}

// Clothing storage units in the United States: 16 CFR 1261 (ASTM F2057-23), scope
// read in CPSC business guidance.
var (
	clothingHigh = figure.Exactly(unit.Length(27*unit.Inch), figure.Source{Key: "16-cfr-1261", Title: "16 CFR 1261 (ASTM F2057-23)", Clause: "scope", Status: figure.Read})
	clothingMass = 13.6 // kg, 30 lb
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "governed", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("governed", c)
	purpose := strings.ToLower(strings.TrimSpace(c.Piece.Purpose))
	for _, s := range standards {
		if purpose == s.use {
			out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeGoverned, Source: s.standard + " (" + s.status + ")",
				Text: message.New("check.governed.governed", message.Text("purpose", c.Piece.Purpose), message.Text("standard", s.standard))})
		}
	}
	drawers := len(bodies.Of(c).Moves()) > 0
	if purpose != "" || drawers {
		out.Judged()
	}
	clothes := strings.Contains(purpose, "cloth")
	if high := c.Piece.High(); drawers && (purpose == "" || clothes) && high >= clothingHigh.Value && heavy(strength.Analysis.Get(c)) {
		limit := out.Stated(clothingHigh)
		args := []message.Arg{message.Length("is", high), message.Length("limit", limit.Nm)}
		if clothes {
			is := c.Ledger.Leaf("piece.high", high, "derived", "")
			out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeGoverned, Is: &is, Limit: &limit.Figure, Source: limit.Source,
				Text: message.New("check.governed.clothes", args...)})
		} else {
			out.Unknown(CodeUnknown, message.New("check.governed.unknown", args...), "", diag.Place{})
		}
	}
	return out.Done(CodeFree, message.New("check.governed.free")), nil
})

// heavy reports whether the empty piece may weigh as much as the rule's.
func heavy(s plan.Strength) bool {
	for _, x := range s.Standing {
		if x.Case == "empty" && x.Mass.Known() {
			return x.Mass.High.Float()/1000 >= clothingMass
		}
	}
	return true
}
