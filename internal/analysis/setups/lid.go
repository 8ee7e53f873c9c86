package setups

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/operations"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// sawLid fills the card of lids that are sawn off: the closed box on the outside of
// each of its walls, the longest first, the lid's upper side against the fence.
func (d *decider) sawLid(c *plan.Setup, height plan.Setting, jobs []*operations.Job) {
	c.Settings = append(c.Settings, height)
	wall := jobs[0].Cut.Slot.Depth
	c.Sums = append(c.Sums, plan.Sum{Title: words("setups.sum.lid-wall"), Total: wall, Terms: []plan.SumTerm{
		{Word: "height", Figure: height.Figure},
		{Word: "left for the knife", Figure: d.l.Less(string(jobs[0].Cut.Address)+".web", wall, height.Figure)},
	}})
	jobs = slices.Clone(jobs)
	slices.SortStableFunc(jobs, func(a, b *operations.Job) int { return cmp.Compare(b.Row.Length.Nm, a.Row.Length.Nm) })
	var told []*piece.Sawn
	for _, j := range jobs {
		s := d.Piece.SawnBy(&j.Cut)
		if s == nil {
			continue
		}
		c.Placements = append(c.Placements, d.lidPlacement(s, j))
		if !slices.Contains(told, s) {
			told = append(told, s)
			c.Sums = append(c.Sums, plan.Sum{Title: words("setups.sum.lid-shut"), Total: d.l.Sum(string(s.Address)+".shut", s.Base, s.Lid), Terms: []plan.SumTerm{
				{Word: "base", Figure: s.Base}, {Word: "lid", Figure: s.Lid},
			}})
		}
	}
}

// lidPlacement is one kind of wall at the saw: fence to blade, kerf and the rest of the
// box add up to its height.
func (d *decider) lidPlacement(s *piece.Sawn, j *operations.Job) plan.Placement {
	fence := d.l.Sum(string(s.Address)+".fence", s.Lid, s.Clean)
	p := plan.Placement{
		Mark: j.Row.Mark, Pieces: j.Row.Quantity(), Cuts: []address.Address{j.Cut.Address},
		Down: j.Way.Down, Fence: j.Way.Fences[0], Leads: operations.Leads(j.Way.Down, j.Way.Fences[0]),
		Settings: []plan.Setting{{Word: wordBlade, Figure: fence}},
		Feed:     words("setups.feed.lid"),
	}
	p.Sums = append(p.Sums, plan.Sum{Title: words("setups.sum.across"), Total: s.Whole, Terms: []plan.SumTerm{
		{Word: wordBlade, Figure: fence}, {Word: "cutter", Figure: j.Way.Size}, {Word: "beyond the cutter", Figure: d.l.Sum(string(s.Address)+".beyond", s.Base, s.Clean)},
	}})
	return p
}
