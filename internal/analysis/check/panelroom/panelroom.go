package panelroom

import (
	_ "embed" // the help

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/movement"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeBinds: a panel has no room to grow at the damp end of the year.
	//
	// Example: a solid bottom 300 wide with 0.5 behind each edge.
	CodeBinds diag.Code = "panel-binds"
	// CodeFalls: a panel's edge comes out of its groove at the dry end.
	//
	// Example: a panel 400 wide that enters its grooves by 2.
	CodeFalls diag.Code = "panel-falls-out"
	// CodeUnknown: what a panel moves is not known.
	//
	// Example: a bottom of a timber that the catalogue does not have.
	CodeUnknown diag.Code = "panel-movement-not-known"
	// CodeRoom: every panel in grooves has room and stays in.
	//
	// Example: a solid bottom 200 wide with 3 behind it.
	CodeRoom diag.Code = "panels-have-room"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "panel room", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, movement.Seasons},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("panel room", c)
	for _, r := range movement.Seasons.Get(c).Rooms {
		where := diag.Place{}
		for i := range c.Piece.Joints {
			if c.Piece.Joints[i].Address == r.Joints[0] {
				where = c.Piece.Joints[i].Where
			}
		}
		mark := message.Text("mark", out.Mark(r.Part))
		spare, low, high, ok := r.Spare.Lengths()
		keeps, least, _, kept := r.Keeps.Lengths()
		if !ok || !kept {
			out.Unknown(CodeUnknown, message.New("check.panelroom.unknown", mark), r.Part, where, r.Part)
			continue
		}
		out.Judged()
		if low < 0 {
			grows := r.Swell.Grows.Figure()
			out.Add(plan.Finding{
				Remedy: more(c.Piece, out, r, -min(low, spare)),
				Status: plan.Fail, Severity: diag.Error, Code: CodeBinds, Address: r.Part, Where: where, Is: verdict.Figure(r.Room), Limit: &grows,
				Figures: append([]plan.Quantity{verdict.Quantity(plan.RoleLimit, r.Swell.Grows)}, out.Moistures(true)...),
				Source:  verdict.Cite(r.Swell.Grows.Source), Text: message.New("check.panelroom.binds", mark, message.Length("room", r.Room.Nm),
					message.LengthRounded("grows", grows.Nm, unit.Up), message.LengthRounded("short", -min(low, spare), unit.Up), message.Length("spare", high)),
			}, r.Part)
		}
		if least < 0 {
			shrinks := r.Swell.Shrinks.Figure()
			out.Add(plan.Finding{
				Status: plan.Fail, Severity: diag.Error, Code: CodeFalls, Address: r.Part, Where: where, Is: verdict.Figure(r.Enters), Limit: &shrinks,
				Figures: append([]plan.Quantity{verdict.Quantity(plan.RoleLimit, r.Swell.Shrinks)}, out.Moistures(false)...),
				Source:  verdict.Cite(r.Swell.Shrinks.Source), Text: message.New("check.panelroom.falls", mark, message.Length("enters", r.Enters.Nm),
					message.LengthRounded("shrinks", shrinks.Nm, unit.Up), message.Length("keeps", keeps)),
			}, r.Part)
		}
	}
	return out.Done(CodeRoom, message.New("check.panelroom.room")), nil
})

// more is the remedy of a panel that binds: more clearance at the bottom of its grooves,
// shared where both edges have it from one place of the document.
func more(p *piece.Piece, out *verdict.Findings, r plan.PanelRoom, short unit.Length) []diag.Remedy {
	var edges []piece.Figure
	for i := range p.Joints {
		if a := p.Joints[i].Address; a == r.Joints[0] || a == r.Joints[1] {
			edges = append(edges, p.Joints[i].ClearDeep)
		}
	}
	if len(edges) == 0 {
		return nil
	}
	if len(edges) == 2 && out.Written(edges[0]) == out.Written(edges[1]) {
		short = (short + 1) / 2
	}
	to := edges[0].Nm + short
	return []diag.Remedy{out.Rewrite(message.New("check.panelroom.more", message.LengthRounded("to", to, unit.Up)), edges[0], to, unit.Up)}
}
