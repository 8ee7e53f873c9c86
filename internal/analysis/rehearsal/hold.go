package rehearsal

import (
	"cmp"
	"slices"

	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// leastBearing is the least wood that must stand against the fence above what is
// already cut away there. Common practice, no source.
const leastBearing = 3 * unit.Millimetre

// gap is wood that is gone from a row's part.
type gap struct {
	box   box
	down  piece.Side
	run   piece.Local
	depth unit.Length
}

// held goes through the cards in the order of the steps and asks before every
// pass whether the work still bears on fence and table, and whether the cut is
// trapped: a wall towards the fence and none towards the operator.
func (r *rehearsal) held() {
	cards := slices.Clone(r.Plan.Setups)
	when := map[string]int{}
	for id, op := range r.op {
		if n, ok := when[op.Setup]; !ok || r.at[id] < n {
			when[op.Setup] = r.at[id]
		}
	}
	slices.SortStableFunc(cards, func(a, b plan.Setup) int { return cmp.Compare(when[a.ID], when[b.ID]) })
	opOf := map[rowCut]plan.Operation{}
	for _, op := range r.Plan.Operations {
		for _, a := range op.Cuts {
			opOf[rowCut{op.Mark, a}] = op
		}
	}
	gone := map[string][]gap{}
	for _, c := range cards {
		for _, p := range c.Placements {
			if !isMachined(p) {
				r.goneByHand(gone, p)
				continue
			}
			for n, a := range p.Cuts {
				if r.cut[a].Kind == piece.LidKerf {
					continue // it is the closed box that bears on fence and table
				}
				m := made{c, p, opOf[rowCut{p.Mark, a}], n == 1}
				passes, ok := r.passesOf(m)
				if !ok {
					continue
				}
				for _, one := range passes {
					r.bears(gone[p.Mark], one, m)
					if r.snatches(gone[p.Mark], one, c) {
						r.fail(CodeTrapped, "rehearsal.trapped", a, message.Text("mark", p.Mark), message.Text("card", c.ID))
					}
					run, _ := p.Leads.Axis()
					one.box[one.across] = one.opens
					gone[p.Mark] = append(gone[p.Mark], gap{one.box, one.down, run, one.depth})
				}
			}
		}
	}
}

func (r *rehearsal) goneByHand(gone map[string][]gap, p plan.Placement) {
	row := r.row[p.Mark]
	for _, a := range p.Cuts {
		if c, ok := r.cut[a]; ok && c.Slot != nil {
			size := state{row.Length.Nm, row.Width.Nm, row.Thickness.Nm}
			gone[p.Mark] = append(gone[p.Mark], gap{boxOf(c.Slot, size), c.Slot.Open, c.Slot.Run, c.Slot.Depth.Nm})
		}
	}
}

// bears checks that some of the fence side stands above what earlier cuts took
// from it along its whole run.
func (r *rehearsal) bears(gone []gap, one pass, m made) {
	size := stateOf(m.op.Before)
	d, _ := one.down.Axis()
	a, high := one.fence.Axis()
	run := piece.Local(3 - int(d) - int(a))
	left := size[d]
	for _, g := range gone {
		atFence := g.box[a].low <= 0
		if high {
			atFence = g.box[a].high >= size[a]
		}
		if atFence && g.box[run].low <= 0 && g.box[run].high >= size[run] {
			left = min(left, size[d]-g.box[d].size())
		}
	}
	if left < leastBearing {
		r.fail(CodeHold, "rehearsal.no-bearing", "", message.Text("mark", m.place.Mark), message.Text("card", m.card.ID), message.Length("left", left))
	}
}

// snatches reports whether the pass is trapped. Saws and sleds have no rim that
// runs along the fence.
func (r *rehearsal) snatches(gone []gap, one pass, c plan.Setup) bool {
	if m, ok := r.machine[c.Machine]; !ok || m.Kind != "router table" && m.Kind != "router" {
		return false
	}
	if axis, _ := one.down.Axis(); axis == piece.AlongLength {
		return false // upright on a sled
	}
	low, high := one.from, one.to
	inner, outer := low > 0, high < one.width
	_, fromHigh := one.fence.Axis()
	for _, g := range gone {
		if g.down != one.down || g.depth < one.depth {
			continue
		}
		d, _ := one.down.Axis()
		if g.run != piece.Local(3-int(d)-int(one.across)) {
			continue // across the feed: both walls are open for a moment
		}
		if x, y := g.box[g.run], one.box[g.run]; x.high <= y.low || y.high <= x.low {
			continue // further along: not where this pass cuts
		}
		s := g.box[one.across]
		if fromHigh {
			s = span{one.width - s.high, one.width - s.low}
		}
		if s.low <= low && high <= s.high {
			continue // in the open: nothing is cut there
		}
		if s.low < low && low <= s.high {
			inner = false
		}
		if s.low <= high && high < s.high {
			outer = false
		}
	}
	return inner && !outer
}
