package cutter

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"

	"scantling/internal/analysis/check/verdict"
)

// slack is how much less than half may lie in the wood: what a cutter is set to.
const slack = unit.Millimetre / 20

// rods judges how the things of the contents lie.
func (j *judge) rods(held []plan.Held) {
	by := map[address.Address]plan.Held{}
	for _, h := range held {
		by[h.Cut] = h
	}
	for i := range j.Piece.Contents {
		c := &j.Piece.Contents[i]
		for k := range c.Things {
			t := &c.Things[k]
			h, ok := by[t.Cut]
			if !ok || t.Cut == "" {
				j.out.Unknown(CodeNowhere, message.New("check.cutter.nowhere", message.Text("thing", t.Key)), c.Address.Keyed("thing", t.Key), diag.Place{})
				continue
			}
			j.rod(t, h)
		}
	}
}

// rod judges one thing in its channel.
func (j *judge) rod(t *piece.Thing, h plan.Held) {
	j.out.Judged()
	cut := j.index.Cut(h.Cut)
	about := func(x plan.Finding) {
		x.Address, x.Where, x.Source = h.Cut, cut.Where, verdict.Cite(share.SourceChannel)
		j.out.Add(x, h.In)
	}
	mark, thing := message.Text("mark", j.out.Mark(h.In)), message.Text("thing", t.Key)
	round := j.Ledger.Times(string(h.Cut)+".diameter", cut.Slot.Corner, 2, 1)
	half := j.Ledger.Half(string(h.Cut)+".half", t.Diameter)
	sinks := h.Sinks
	switch {
	case cut.Slot.Corner.Nm > 0 && t.Diameter.Nm > round.Nm:
		about(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeRides, Is: verdict.Figure(t.Diameter), Limit: &round,
			Text: message.New("check.cutter.rides", mark, thing, message.Length("is", t.Diameter.Nm), message.Length("limit", round.Nm), message.LengthRounded("sinks", sinks.Nm, unit.Down))})
	case t.Sides > 0 && sinks.Nm >= half.Nm/2:
		// What has flats does not roll: a quarter of it in the wood holds it.
	case sinks.Nm < half.Nm-slack:
		severity := diag.Note
		if sinks.Nm < half.Nm/2 {
			severity = diag.Warning
		}
		about(plan.Finding{Status: plan.Fail, Severity: severity, Code: CodeShallow, Is: &sinks, Limit: &half,
			Text: message.New("check.cutter.shallow", mark, thing, message.LengthRounded("is", sinks.Nm, unit.Down), message.LengthRounded("limit", half.Nm, unit.Up), message.LengthRounded("proud", h.Proud.Nm, unit.Up))})
	}
}
