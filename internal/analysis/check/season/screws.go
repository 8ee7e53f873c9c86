package season

import (
	"strings"

	"scantling/internal/analysis/check/reach"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// screws judges every row of screws across the grain of solid wood: it must let the
// wood move. What is screwed tight over more than the limit splits or pulls the
// screws; where slots are said they must reach as far as the wood goes, each side of
// the middle of its width, which is where it is held.
func (j *judge) screws() {
	limit := j.out.Limit("cross grain", verdict.Practice("check.cross-grain", unit.MM(100)))
	for i := range j.Piece.Joints {
		g := &j.Piece.Joints[i]
		a, b := j.index.Part(g.A), j.index.Part(g.B)
		if g.Glue != "" || g.Fasteners == nil || g.Fasteners.Count < 2 || !strings.Contains(strings.ToLower(g.Fasteners.Kind), "screw") || a == nil || b == nil {
			continue
		}
		for axis := piece.Right; axis <= piece.Up; axis++ {
			moves := a
			if j.moves(b, axis) {
				moves = b
			}
			if j.moves(a, axis) == j.moves(b, axis) || !beyond(a, b, axis, limit.Nm+2*g.Fasteners.Margin.Nm) {
				continue
			}
			j.screwed(g, moves, axis, limit)
			break
		}
	}
}

// beyond reports whether two parts lie over one another along an axis for more than
// a length.
func beyond(a, b *piece.Part, axis piece.Axis, length unit.Length) bool {
	return min(a.Extent[axis].High.Nm, b.Extent[axis].High.Nm)-max(a.Extent[axis].Low.Nm, b.Extent[axis].Low.Nm) > length
}

// screwed judges the screws of one joint by what its part does over the year.
func (j *judge) screwed(g *piece.Joint, p *piece.Part, axis piece.Axis, limit verdict.Limit) {
	local, _ := p.Frame.LocalOf(axis)
	size, name := p.Sizes()[local], string(g.Address)+".screwed"
	material, _ := j.index.Material(p)
	grows, shrinks, err := j.out.Season(name, material, size)
	if err != nil {
		return // told of the wood itself
	}
	j.out.Judged()
	moves := j.Ledger.Sum(name, grows, shrinks)
	half := j.Ledger.Half(name, moves)
	slot := g.Fasteners.Slot
	if g.Slides && (slot.Entry == 0 || slot.Nm >= half.Nm) {
		return
	}
	code, key, is := CodeScrewed, "check.season.screwed", moves
	if g.Slides {
		code, key, is = CodeSlot, "check.season.slot", slot
	}
	other := g.A
	if p.Address == g.A {
		other = g.B
	}
	x := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: code, Address: g.Address, Where: g.Where,
		Is: &is, Limit: &half, Source: verdict.Cite(timber.SourceNarrow),
		Text: message.New(key, message.Text("mark", j.out.Mark(p.Address)), message.Text("other", j.out.Mark(other)), message.Length("is", is.Nm),
			message.Length("moves", moves.Nm), message.LengthRounded("half", half.Nm, unit.Up)),
	}
	if g.Slides {
		to := half.Nm.Round(unit.Millimetre/10, unit.Up)
		x.Remedy = append(x.Remedy, reach.Rewrite(j.Context, message.New("check.season.longer", message.Length("to", to)), slot, to, unit.Up))
	}
	j.out.Add(x, g.A, g.B)
}
