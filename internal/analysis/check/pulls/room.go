package pulls

import (
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// room judges whether fingers get in on two opposite sides of a pull: thumb and finger.
func (j *judge) room(p *pull) {
	side, _ := p.of.Side.Axis()
	var best unit.Length
	for _, a := range [2]piece.Axis{(side + 1) % 3, (side + 2) % 3} {
		best = max(best, min(j.free(p, a, false), j.free(p, a, true)))
	}
	if best >= j.finger.Nm {
		return
	}
	is := j.Ledger.Leaf(string(p.of.Address)+".room", best, ledger.Derived, "")
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeNoRoom, Address: p.of.Address, Where: p.of.Where, Is: &is, Limit: &j.finger.Figure, Source: j.finger.Source,
		Text: message.New("check.pulls.room", message.Text("mark", j.out.Mark(p.on.Address)), message.Text("kind", p.of.Kind), message.LengthRounded("is", best, unit.Down), message.Length("limit", j.finger.Nm)),
	}, p.on.Address)
}

// free is how far it is from a pull to what stands out beside it on one side, looking no
// farther than a finger.
func (j *judge) free(p *pull, a piece.Axis, high bool) unit.Length {
	out := j.finger.Nm
	room := p.box
	if room[a] = (bodies.Span{Low: p.box[a].Low - out, High: p.box[a].Low}); high {
		room[a] = bodies.Span{Low: p.box[a].High, High: p.box[a].High + out}
	}
	look := func(b bodies.Box) {
		if !b.Overlaps(room) {
			return
		}
		if common := b.Common(room)[a]; high {
			out = min(out, common.Low-p.box[a].High)
		} else {
			out = min(out, p.box[a].Low-common.High)
		}
	}
	for i := range j.Piece.Parts {
		if c := &j.Piece.Parts[i]; c != p.on && c.Tilt == nil {
			for _, w := range j.index.Wood(room, c) {
				look(w)
			}
		}
	}
	for i := range j.pulls {
		if q := &j.pulls[i]; q != p {
			look(q.box)
		}
	}
	return out
}
