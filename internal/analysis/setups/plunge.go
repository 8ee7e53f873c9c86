package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// halts adds the two stops of a plunge router on clamped work. Where the router goes
// from left to right along the guided edge, its cutter's centre halts so far from the
// left end at the right stop, and begins so far from the right end at the left stop.
// The stop's face is the base's half width farther, which is added where the shop
// states it.
func (d *decider) halts(p *plan.Placement, j *operations.Job, right, left piece.Figure) {
	w, name := j.Way, string(j.Cut.Address)+".halt"
	p.Settings = append(p.Settings, plan.Setting{Word: wordHaltRight, Figure: right}, plan.Setting{Word: wordHaltLeft, Figure: left})
	run := w.Work[w.Run]
	between := d.l.Sum(name+".between", right, left)
	travel := d.l.Less(name+".travel", between, run)
	p.Sums = append(p.Sums,
		plan.Sum{Title: words("setups.sum.halts"), Total: between, Terms: []plan.SumTerm{{Word: wordHaltRight, Figure: right}, {Word: wordHaltLeft, Figure: left}}},
		plan.Sum{Title: words("setups.sum.travel"), Total: between, Terms: []plan.SumTerm{{Word: "length of the work", Figure: run}, {Word: "travel", Figure: travel}}},
	)
	m, _ := d.Shop.Machine(w.Machine)
	if m.Base <= 0 {
		return
	}
	base := d.l.Leaf("machine."+m.Name+".base", m.Base, ledger.Bought, "")
	faceRight, faceLeft := d.l.Sum(name+".right", right, base), d.l.Sum(name+".left", left, base)
	p.Settings = append(p.Settings, plan.Setting{Word: wordHaltRightFace, Figure: faceRight}, plan.Setting{Word: wordHaltLeftFace, Figure: faceLeft})
	for _, s := range []struct {
		word          string
		title         message.Message
		centre, total piece.Figure
	}{{wordHaltRight, words("setups.sum.right-stop"), right, faceRight}, {wordHaltLeft, words("setups.sum.left-stop"), left, faceLeft}} {
		p.Sums = append(p.Sums, plan.Sum{Title: s.title, Total: s.total, Terms: []plan.SumTerm{
			{Word: s.word, Figure: s.centre}, {Word: "half the base", Figure: base},
		}})
	}
}
