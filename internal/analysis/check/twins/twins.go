package twins

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeSwapped: a mirrored part looks like its twin, but for a little.
	//
	// Example: sides whose housing lies 100 from the front and 104 from the back.
	CodeSwapped diag.Code = "easily-swapped"
	// CodeApart: mirrored parts are told apart at sight.
	//
	// Example: sides with a groove near one edge.
	CodeApart diag.Code = "twins-apart"
)

//go:embed doc.go
var source string

// near is how far apart cuts of two parts lie that are swapped at the end of the
// day: half an inch, by practitioners' accounts.
var near = verdict.Practice("check.swapped-within", unit.Inch/2)

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "twins", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("twins", c)
	cuts := map[address.Address][]piece.Cut{}
	for _, cut := range c.AllCuts() {
		cuts[cut.Part] = append(cuts[cut.Part], cut)
	}
	parts := map[address.Address]*piece.Part{}
	for i := range c.Piece.Parts {
		parts[c.Piece.Parts[i].Address] = &c.Piece.Parts[i]
	}
	for i := range c.Piece.Parts {
		a := &c.Piece.Parts[i]
		b := parts[a.Twin]
		if b == nil || a.Hand != "left" {
			continue
		}
		out.Judged()
		if out.Mark(a.Address) == out.Mark(b.Address) {
			continue
		}
		off, alike := nearest(a, cuts[a.Address], cuts[b.Address])
		limit := out.Limit("swapped within", near)
		if !alike || off == 0 || off > limit.Nm {
			continue
		}
		is := c.Ledger.Leaf(string(a.Address)+".differs", off, "derived", "")
		out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeSwapped, Address: a.Address, Where: a.Where, Is: &is, Limit: &limit.Figure, Source: limit.Source,
			Text: message.New("check.twins.swapped", message.Text("mark", out.Mark(a.Address)), message.Text("other", out.Mark(b.Address)), message.Length("is", off), message.LengthRounded("limit", limit.Nm, unit.Up))}, a.Address, b.Address)
	}
	return out.Done(CodeApart, message.New("check.twins.apart")), nil
})

// turns are the ways a part may be turned round, end for end along two axes.
var turns = [3][3]bool{{true, true, false}, {true, false, true}, {false, true, true}}

// nearest returns, over the ways of turning a part round, the least of the greatest
// distances between its cuts and its twin's; false where they are not alike.
func nearest(p *piece.Part, mine, others []piece.Cut) (unit.Length, bool) {
	var best unit.Length
	found := false
	for _, t := range turns {
		worst, ok := unit.Length(0), len(mine) == len(others)
		used := make([]bool, len(others))
		for i := range mine {
			k, off := match(p, &mine[i], others, used, t)
			if ok = ok && k >= 0; !ok {
				break
			}
			used[k], worst = true, max(worst, off)
		}
		if ok && (!found || worst < best) {
			best, found = worst, true
		}
	}
	return best, found
}

// match returns the nearest cut of the same kind and side that is not used yet.
func match(p *piece.Part, cut *piece.Cut, others []piece.Cut, used []bool, t [3]bool) (int, unit.Length) {
	best, at := unit.Length(-1), -1
	a, side, ok := box(p, cut, t)
	for k := range others {
		b, other, known := box(p, &others[k], [3]bool{})
		if used[k] || !ok || !known || others[k].Kind != cut.Kind || side != other {
			continue
		}
		off := unit.Length(0)
		for i := range a {
			off = max(off, (a[i] - b[i]).Abs())
		}
		if best < 0 || off < best {
			best, at = off, k
		}
	}
	return at, best
}

// box is where a slot or a hole lies in a part that is turned: the limits along its
// three axes, and the side that it is cut from.
func box(p *piece.Part, c *piece.Cut, t [3]bool) ([6]unit.Length, piece.Side, bool) {
	var open piece.Side
	switch {
	case c.Slot != nil:
		open = c.Slot.Open
	case c.Bore != nil:
		open = c.Bore.Open
	default:
		return [6]unit.Length{}, "", false
	}
	low, high, ok := joinery.Limits(p, c)
	if axis, _ := open.Axis(); t[axis] {
		open = open.Opposite()
	}
	var out [6]unit.Length
	for a := range 3 {
		if t[a] {
			whole := p.Sizes()[a].Nm
			low[a], high[a] = whole-high[a], whole-low[a]
		}
		out[2*a], out[2*a+1] = low[a], high[a]
	}
	return out, open, ok
}
