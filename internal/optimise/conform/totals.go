package conform

import (
	"scantling/internal/optimise/problem"
)

func (v *verifier) totals(a problem.Answer) {
	for i, part := range v.p.Parts {
		if v.p.Goal == problem.LeastCost && v.made[i] != part.Quantity || v.made[i] > part.Quantity {
			v.failf("part %d: %d cut, %d wanted", i, v.made[i], part.Quantity)
		}
	}
	for i, s := range v.p.Stock {
		if s.Limit > 0 && v.used[i] > s.Limit {
			v.failf("stock %d: %d used, there are %d", i, v.used[i], s.Limit)
		}
	}
	if v.p.Goal == problem.MostValue {
		if v.used[0] > 1 {
			v.failf("%d sheets used for the greatest value on one", v.used[0])
		}
		if v.value != a.Cost {
			v.failf("value stated %d, parts are worth %d", a.Cost, v.value)
		}
	} else if v.cost != a.Cost {
		v.failf("cost stated %d, stock costs %d", a.Cost, v.cost)
	}
	if v.p.Goal == problem.LeastCost {
		v.sequences()
	}
}

func (v *verifier) verdict(a problem.Answer) {
	gap := a.Cost - a.Bound
	if v.p.Goal == problem.MostValue {
		gap = -gap
	}
	switch {
	case gap < 0:
		v.failf("cost %d is better than the bound %d", a.Cost, a.Bound)
	case (gap == 0) != (a.Status == problem.Proved):
		v.failf("status %v with cost %d and bound %d", a.Status, a.Cost, a.Bound)
	case a.Status < problem.Proved || a.Status > problem.Stopped:
		v.failf("status %d", a.Status)
	case a.Proof < problem.ByMaterial || a.Proof > problem.BySearch:
		v.failf("proof %d", a.Proof)
	case a.Work < 0:
		v.failf("work %d", a.Work)
	}
}

// sequences matches each sequence with a run of neighbours on one piece of
// stock: the parts in order, a kerf between them, in line on one side.
func (v *verifier) sequences() {
	for i, s := range v.p.Sequences {
		if !v.take(s) {
			v.failf("sequence %d does not stay together in order", i+1)
		}
	}
}

func (v *verifier) take(s problem.Sequence) bool {
	for r, nodes := range v.rows {
		for _, start := range nodes {
			run := v.run(nodes, start, s)
			if run == nil {
				continue
			}
			rest := nodes[:0:0]
			for _, n := range nodes {
				if !contains(run, n) {
					rest = append(rest, n)
				}
			}
			v.rows[r] = rest
			return true
		}
	}
	return false
}

func (v *verifier) run(nodes []*problem.Node, start *problem.Node, s problem.Sequence) []*problem.Node {
	if start.Part != s.Parts[0] {
		return nil
	}
	run := []*problem.Node{start}
	for _, part := range s.Parts[1:] {
		last := run[len(run)-1]
		next := last.Point
		if s.Direction == problem.Crosscut {
			next.Along += last.Length + v.p.Kerf
		} else {
			next.Across += last.Width + v.p.Kerf
		}
		found := false
		for _, n := range nodes {
			if n.Part == part && n.Point == next {
				run = append(run, n)
				found = true
				break
			}
		}
		if !found {
			return nil
		}
	}
	return run
}

func contains(list []*problem.Node, n *problem.Node) bool {
	for _, x := range list {
		if x == n {
			return true
		}
	}
	return false
}
