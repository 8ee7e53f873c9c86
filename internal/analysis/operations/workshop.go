package operations

import (
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// RuleRaise is the rule of the house that lets a cutter be raised into held work.
const RuleRaise = "raise into held work"

// Of returns what must be known of a shop: its machines and cutters by the
// shop's own names, with the usual limits where the shop states none, the reach
// of fences and throats, and the rules of the house "depth per pass", "upright",
// "thicknesser per pass", "row error", "left at a lid" and [RuleRaise].
func Of(s *shop.Shop) Workshop {
	w := Workshop{Reach: map[string]unit.Length{}}
	for _, m := range s.Machines {
		machine := m.Tool.Completed()
		machine.Name = m.ID
		w.Machines = append(w.Machines, machine)
		if reach := max(m.Fence, m.Throat); reach > 0 {
			w.Reach[m.ID] = reach
		}
	}
	for _, c := range s.Cutters {
		cutter := c.Tool
		cutter.Name = c.ID
		w.Cutters = append(w.Cutters, cutter)
		w.Rules.Lowering = w.Rules.Lowering || c.Lowers
	}
	raising, _ := s.Rule(RuleRaise)
	w.Rules.Raising = w.Rules.Lowering || raising.Value.Truth()
	w.Rules.PassDepth = s.LengthRule("depth per pass")
	w.Rules.Upright = s.LengthRule("upright")
	w.Rules.PlaneDepth = s.LengthRule("thicknesser per pass")
	w.Rules.RowError = s.LengthRule("row error")
	w.Rules.LidWeb = s.LengthRule("left at a lid")
	w.Rules = w.Rules.Completed()
	return w
}
