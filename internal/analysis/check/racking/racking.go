package racking

import (
	_ "embed" // the help
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/reach"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/strength"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeWide: a drawer is wider than it is long.
	//
	// Example: a drawer 400 wide and 378 long.
	CodeWide diag.Code = "drawer-wider-than-long"
	// CodeSticks: it sticks at a corner even when it is shut.
	//
	// Example: a drawer 1000 wide and 240 long.
	CodeSticks diag.Code = "drawer-sticks"
	// CodeNoParts: a group that moves has no parts.
	//
	// Example: a fit that moves an empty group.
	CodeNoParts diag.Code = "drawer-without-parts"
	// CodeRuns: every drawer is at least as long as it is wide.
	//
	// Example: a drawer 200 wide and 378 long.
	CodeRuns diag.Code = "drawers-run"
)

//go:embed doc.go
var source string

// usual is the least length of a drawer to its width, in common practice.
const (
	usualKey = "check.drawer-length"
	usual    = usualKey + " (practice)"
)

// rule is the habit of the house that takes its place.
const rule = "drawer length to width"

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "racking", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("racking", c)
	runs := map[address.Address]plan.DrawerRun{}
	for _, r := range strength.Analysis.Get(c).Drawers {
		runs[r.Moves] = r
	}
	for _, m := range bodies.Of(c).Moves() {
		r, slides := runs[m.Group.Address]
		switch {
		case len(m.Parts) == 0:
			out.Unknown(CodeNoParts, message.New("check.racking.no-parts", message.Address("group", m.Group.Address)), m.Group.Address, m.Group.Where)
		case !slides || guided(c.Piece, m):
		case r.CornerPull != "sticks" && strips(c.Piece, m): // wood on wood: what sticks shut, sticks
			out.Judged()
		default:
			out.Judged()
			drawer(c, out, m, r)
		}
	}
	return out.Done(CodeRuns, message.New("check.racking.runs")), nil
})

// drawer judges one drawer that slides on wood.
func drawer(c *analysis.Context, out *verdict.Findings, m bodies.Move, r plan.DrawerRun) {
	limit, by := least(c, r)
	if r.Long.Nm >= limit.Nm {
		return
	}
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeWide, Address: m.Group.Address, Where: m.Group.Where,
		Is: verdict.Figure(r.Long), Limit: verdict.Figure(limit), Rule: rule,
		Figures: figures(out, r, limit, by), Source: by + "; " + verdict.Cite(r.SticksAt.Source)}
	key := "check.racking.wide"
	switch r.CornerPull {
	case "sticks":
		x.Severity, x.Code, key = diag.Error, CodeSticks, "check.racking.sticks"
	case "may stick":
		key = "check.racking.may-stick"
	}
	sticks, low, high, _ := r.SticksAt.Lengths()
	waxed, _, _, _ := r.Waxed.Lengths()
	args := []message.Arg{
		message.Address("group", m.Group.Address), message.Length("is", r.Long.Nm), message.Length("wide", r.Width.Nm), message.Length("limit", limit.Nm),
		message.Ratio("ratio", r.Long.Nm.Millimetres()/r.Width.Nm.Millimetres()),
		message.Range("sticks", message.LengthRounded("value", sticks, unit.Up), message.LengthRounded("low", low, unit.Up), message.LengthRounded("high", high, unit.Up)),
		message.LengthRounded("waxed", waxed, unit.Up),
	}
	x.Text = message.New(key, args...)
	if narrow := r.Width.Nm - (limit.Nm - r.Long.Nm); limit.Nm == r.Width.Nm {
		x.Remedy = append(x.Remedy, reach.Rewrite(c, message.New("check.racking.narrower", message.LengthRounded("to", narrow, unit.Down)), r.Width, narrow, unit.Down))
	}
	if f := m.Fronts(); len(f) > 0 {
		out.Add(x, f[0].Address)
	} else {
		out.Add(x)
	}
}

// figures are the ratio of length to width, the one that is asked for, and how much must
// stay in.
func figures(out *verdict.Findings, r plan.DrawerRun, limit piece.Figure, by string) []plan.Quantity {
	name, rests := string(r.Moves)+".length to width", figure.Source{Key: usualKey, Status: figure.Practice}
	if by != usual {
		rests = figure.Source{Key: "house." + rule, Status: figure.Stated}
	}
	x := out.Ratio(plan.RoleRatio, name, r.Long, r.Width, verdict.OfPiece)
	x = append(x, out.Ratio(plan.RoleAsked, name+" asked", limit, r.Width, rests)...)
	return append(x, verdict.Quantity(plan.RoleStays, r.SticksAt))
}

// least is how long a drawer of a width must be, and who says so.
func least(c *analysis.Context, r plan.DrawerRun) (piece.Figure, string) {
	if c.Shop != nil {
		if own, ok := c.Shop.Rule(rule); ok && own.Value.IsNumeric() && own.Value.Sign() > 0 {
			thousandths := int64(own.Value.Float()*1000 + 0.5)
			return c.Ledger.Times(string(r.Moves)+".least length", r.Width, thousandths, 1000), "house." + rule + ": " + own.Why + " (stated)"
		}
	}
	return r.Width, usual
}

// guided reports whether the drawer has runners or guides that are bought.
func guided(p *piece.Piece, m bodies.Move) bool {
	for _, h := range p.Hardware {
		if h.Count == 0 || !m.Holds(h.On) && !m.Holds(h.Address) {
			continue
		}
		for _, word := range []string{"runner", "slide", "guide"} {
			if strings.Contains(strings.ToLower(h.Kind), word) {
				return true
			}
		}
	}
	return false
}
