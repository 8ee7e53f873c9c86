package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// plain fills a card that brings work to size: jointing, thickness, width,
// length.
func (d *decider) plain(c *plan.Setup, b batch) {
	machine, _ := d.Shop.Machine(b.key.machine)
	if b.key.kind == plan.PlaneToThick || b.key.kind == plan.LevelJoints {
		s, from := d.thickness(b)
		c.Settings = append(c.Settings, s)
		if len(s.Passes) > 0 {
			c.Sums = append(c.Sums, d.planingSum(s, from))
		}
	}
	if machine.Kerf.Known() && (b.key.kind == plan.RipToWidth || b.key.kind == plan.CutToLength) {
		c.CutterSize = d.l.Leaf("machine."+machine.Name+".kerf", machine.Kerf.Value, ledger.Bought, "")
		c.CutterShape = string(tool.SawBlade)
	}
	done := map[string]int{} // equal placements of one row stand once
	for _, i := range b.ops {
		op := d.ops[i]
		p := plan.Placement{Mark: op.Mark, Pieces: max(1, len(op.Members)), Down: piece.FaceLow}
		if op.Kind != plan.CutToLength {
			p.Pieces = 1 // a blank, whatever comes out of it
		}
		switch op.Kind {
		case plan.FaceJoint:
			p.Leads = piece.EndLow
		case plan.EdgeJoint:
			p.Down, p.Fence = piece.EdgeLow, piece.FaceLow
		case plan.RipToWidth:
			p.Fence, p.Leads = piece.EdgeLow, operations.Leads(piece.FaceLow, piece.EdgeLow)
			p.Settings = []plan.Setting{{Word: wordBlade, Figure: op.After[1]}}
		case plan.CutToLength:
			p.Fence = piece.EdgeLow
			p.Settings = []plan.Setting{{Word: wordStopBlade, Figure: op.After[0]}}
			if b.key.machine == operations.Hand {
				p.Settings[0].Word = wordLength
			}
		}
		id := op.Mark + string(op.Kind)
		if n, ok := done[id]; ok && len(p.Settings) == len(c.Placements[n].Settings) && sameSettings(p.Settings, c.Placements[n].Settings) {
			c.Placements[n].Pieces += p.Pieces
			continue
		}
		done[id] = len(c.Placements)
		c.Placements = append(c.Placements, p)
	}
}

func sameSettings(a, b []plan.Setting) bool {
	for i := range a {
		if a[i].Word != b[i].Word || a[i].Figure.Nm != b[i].Figure.Nm {
			return false
		}
	}
	return true
}

// thickness is the last setting of the thicknesser, with those before it down
// from the thickest work of the card.
func (d *decider) thickness(b batch) (plan.Setting, piece.Figure) {
	from, to := d.ops[b.ops[0]].Before[2], d.ops[b.ops[0]].After[2]
	for _, i := range b.ops {
		if f := d.ops[i].Before[2]; f.Nm > from.Nm {
			from = f
		}
	}
	s := plan.Setting{Word: "thickness", Figure: to}
	if b.key.machine == operations.Hand {
		return s, from
	}
	rule := d.rules.PlaneDepth
	takes := d.l.Leaf("rule.plane-depth", rule.Value, ruleOrigin(rule), rule.Source.String())
	at, err := tool.Passes(from.Nm-to.Nm, rule.Value)
	if err != nil || len(at) < 2 {
		return s, from
	}
	for k := range at {
		left := d.l.Less("planed to", from, d.l.Times("planed off", takes, int64(k+1), 1))
		s.Passes = append(s.Passes, d.l.Greatest("planed to", to, left))
	}
	return s, from
}

// planingSum shows what each pass takes off, from the thickest work down.
func (d *decider) planingSum(s plan.Setting, from piece.Figure) plan.Sum {
	sum := plan.Sum{Title: words("setups.sum.planing"), Total: s.Figure, Terms: []plan.SumTerm{{Word: "thickest work", Figure: from}}}
	last := from
	for _, at := range s.Passes {
		sum.Terms = append(sum.Terms, plan.SumTerm{Word: "pass", Figure: d.l.Less("planed off", at, last)})
		last = at
	}
	return sum
}

// ruleOrigin says whose habit a rule is.
func ruleOrigin(f figure.Of[unit.Length]) ledger.Origin {
	if f.Source.Published() {
		return ledger.Reference
	}
	return ledger.HouseRule
}
