package strength

import (
	"scantling/internal/analysis/estimate"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// runs tells how every drawer runs: what slides out to the front.
func (e *estimator) runs() []plan.DrawerRun {
	dry, _ := mechanics.FrictionOf(mechanics.DryWood)
	wax, _ := mechanics.FrictionOf(mechanics.WaxedWood)
	mu, waxed := estimate.Number(e.maker, "friction of dry wood", dry, ""), estimate.Number(e.maker, "friction of waxed wood", wax, "")
	var out []plan.DrawerRun
	for i := range e.moves {
		m := &e.moves[i]
		name := string(m.group)
		r := plan.DrawerRun{
			Moves: m.group,
			Width: e.Ledger.Less(name+".width", m.high[piece.Right], m.low[piece.Right]),
			Long:  e.Ledger.Less(name+".length", m.high[piece.Back], m.low[piece.Back]),
		}
		r.JamsBeyond = e.maker.Estimate(name+".jams beyond", "jams beyond", "", mechanics.SourceJam, "", estimate.Of(r.Long), mu)
		r.SticksAt = e.maker.Estimate(name+".sticks at", "sticks at", "", mechanics.SourceJam, "", estimate.Of(r.Width), mu)
		r.Waxed = e.maker.Estimate(name+".sticks waxed", "sticks at", "", mechanics.SourceJam, "", estimate.Of(r.Width), waxed)
		switch {
		case mechanics.NeverJams(r.Width.Nm, r.Long.Nm, dry.High):
			r.CornerPull = "runs"
		case mechanics.NeverJams(r.Width.Nm, r.Long.Nm, dry.Low):
			r.CornerPull = "may stick"
		default:
			r.CornerPull = "sticks"
		}
		r.Wobble = plan.Estimate{Source: mechanics.SourceJam, Missing: []plan.Datum{plan.NoPlace}}
		if m.fit != nil {
			r.Fit = m.fit.Address
			r.Wobble = e.maker.Estimate(name+".wobble", "wobble", "", mechanics.SourceJam, plan.NoPlace, estimate.Of(m.fit.Sides), estimate.Of(r.Long))
		}
		out = append(out, r)
	}
	return out
}
