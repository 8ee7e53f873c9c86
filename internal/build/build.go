package build

import (
	"maps"
	"slices"

	"scantling/internal/analysis"
	"scantling/internal/analysis/apart"
	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/check"
	"scantling/internal/analysis/contents"
	"scantling/internal/analysis/cost"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/movement"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/rehearsal"
	"scantling/internal/analysis/rounding"
	"scantling/internal/analysis/rows"
	"scantling/internal/analysis/sequence"
	"scantling/internal/analysis/setups"
	"scantling/internal/analysis/stages"
	"scantling/internal/analysis/strength"
	"scantling/internal/analysis/supplies"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/inplace"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/shop"
)

// Result is a plan with what it was made from.
type Result struct {
	Plan *plan.Plan
	// Shapes are the parts as solids.
	Shapes *shape.Shapes
	Shop   *shop.Shop
	// Document is the design document as read, for edits of its inputs.
	Document *document.File
	// Evaluated is what the documents came to.
	Evaluated evaluate.Result
	// Report says which analyses ran.
	Report analysis.Report
}

// Analyses returns everything that is found out about a piece, in one list; their
// order follows from their needs.
func Analyses() []analysis.Analysis {
	return append(check.All(),
		marks.Analysis, stages.Analysis, cutting.Strips, cutting.Analysis, contents.Analysis, contents.Stows, supplies.Analysis, movement.Analysis, movement.Seasons, strength.Analysis, cost.Analysis, apart.Analysis,
		rows.Analysis, operations.Analysis, setups.Analysis, sequence.Analysis,
	)
}

// Run plans the piece.
func Run(src evaluate.Sources) (Result, error) {
	evaluated := evaluate.Piece(src)
	cuts, lowered, faults := joinery.Lower(evaluated.Piece, evaluated.Ledger)
	diags := slices.Concat(evaluated.Diagnostics, faults)
	made, cuts := inplace.Apply(evaluated.Piece, cuts, evaluated.Ledger)
	c := &analysis.Context{
		Piece: made, Cuts: cuts, Joints: lowered, Shop: evaluated.Shop, Ledger: evaluated.Ledger,
		Broken: diags.HasErrors(),
	}
	report, err := analysis.Run(c, Analyses())
	if err != nil {
		return Result{}, err
	}
	p := assemble(c, report)
	if !c.Broken {
		p.Findings = append(p.Findings, rehearse(c, p, report.Diagnostics)...)
		analysis.SortFindings(p.Findings)
		analysis.Explain(c.Ledger, p.Findings)
	}
	p.Diagnostics = slices.Concat(diags, report.Diagnostics).Sorted()
	stamp(src, p.Diagnostics, p.Findings)
	for _, r := range evaluated.Unplaced {
		p.Unplaced = append(p.Unplaced, string(r.Entry.Address))
	}
	return Result{
		Plan: p, Shapes: c.Shapes(), Shop: evaluated.Shop, Document: evaluated.Document, Evaluated: evaluated, Report: report,
	}, nil
}

// assemble lays the results of the analyses together.
func assemble(c *analysis.Context, report analysis.Report) *plan.Plan {
	whole := *c.Piece
	whole.Cuts = c.AllCuts()
	p := &plan.Plan{Schema: plan.Schema, Piece: &whole, Shop: summary(c.Shop, c.Ledger), Ledger: c.Ledger, Findings: report.Findings}
	p.Parts = marks.Analysis.Get(c)
	if s, ok := stages.Analysis.Result(c); ok {
		p.Stages, p.Measures, p.Parts = s.Stages, s.Measures, s.Rows
	}
	p.Parts = rounding.Rows(c.Piece, p.Parts)
	p.Workpieces = cutting.Strips.Get(c).Workpieces
	if cut, ok := cutting.Analysis.Result(c); ok {
		p.Diagrams = cut.Diagrams
		p.Workpieces = fromDiagrams(p.Workpieces, cut.From)
	}
	p.Rows = rows.Analysis.Get(c)
	if cards, ok := setups.Analysis.Result(c); ok {
		p.Setups, p.Operations = cards.Setups, cards.Operations
		p.Setups = rounding.Setups(p)
	}
	p.Steps = sequence.Analysis.Get(c)
	p.Held, p.Stowed, p.Supplies = contents.Analysis.Get(c), contents.Stows.Get(c), supplies.Analysis.Get(c)
	p.Clearances, p.Removals = movement.Analysis.Get(c), apart.Analysis.Get(c).Removals
	p.Seasons, p.Strength = movement.Seasons.Get(c), strength.Analysis.Get(c)
	if r, ok := cost.Analysis.Result(c); ok {
		p.Buying, p.Cost = r.Buying, r.Cost
	}
	return p
}

// rehearse carries the assembled plan out on paper. It is not an analysis like
// the others: it reads what they printed and nothing behind it. That a part is made from
// nothing is not told again where it was told that no stock makes it.
func rehearse(c *analysis.Context, p *plan.Plan, told diag.List) []plan.Finding {
	shop := operations.Of(c.Shop)
	findings, _ := rehearsal.Check(rehearsal.Input{Plan: p, Cuts: p.Piece.Cuts, Machines: shop.Machines, Cutters: shop.Cutters})
	return slices.DeleteFunc(findings, func(f plan.Finding) bool {
		return f.Code == rehearsal.CodeMissing && slices.ContainsFunc(told, func(d diag.Diagnostic) bool { return d.Code == blanks.CodeNoStock && d.Address == f.Address })
	})
}

// fromDiagrams ties blanks and strips to the boards that they are cut from.
func fromDiagrams(pieces []plan.Workpiece, from map[string]string) []plan.Workpiece {
	out := slices.Clone(pieces)
	for i, w := range out {
		if board, ok := from[w.ID]; ok {
			out[i].From = append(slices.Clone(w.From), board)
		}
	}
	return out
}

// summary is what a reader of the plan must know of the shop.
func summary(s *shop.Shop, l *ledger.Ledger) plan.Shop {
	if s == nil {
		return plan.Shop{}
	}
	return plan.Shop{
		Name: s.Name, Currency: s.Currency, Region: s.Region, Units: string(s.Units), Denominator: s.Denominator,
		Resolution:  l.Leaf("shop.resolution", s.Resolution, ledger.HouseRule, "the shop"),
		MoistureNow: float64(s.Climate.Season.Now), MoistureDry: float64(s.Climate.Season.Dry), MoistureWet: float64(s.Climate.Season.Wet),
	}
}

// HasErrors reports whether the documents or a check say that the piece cannot
// be built as it stands.
func (r Result) HasErrors() bool {
	return r.Plan.Diagnostics.HasErrors() || slices.ContainsFunc(r.Plan.Findings, func(f plan.Finding) bool {
		return f.Severity == diag.Error && (f.Status == plan.Fail || f.Status == plan.Errored)
	})
}

// Broken reports whether the documents have errors, so that there is no whole
// plan.
func (r Result) Broken() bool { return r.Plan.Diagnostics.HasErrors() }

// Functions returns every pure function that a plan's ledger may call.
func Functions() ledger.Functions {
	all := ledger.Functions{}
	for _, f := range []ledger.Functions{evaluate.Functions(), contents.Functions(), supplies.Functions(), movement.Functions(), movement.SeasonFunctions(), strength.Functions(), rows.Functions()} {
		maps.Copy(all, f)
	}
	return all
}
