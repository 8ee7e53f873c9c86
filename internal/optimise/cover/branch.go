package cover

import (
	"math"
	"slices"
)

// branching tries out every plan of a node by asking, of two pieces that lie on
// one board in some patterns of the relaxation and not in others, whether they
// do: together first, then apart (Ryan and Foster, "An integer programming
// approach to scheduling", in Wren (ed.), Computer Scheduling of Public
// Transport, North-Holland 1981).
type branching struct {
	t      *task
	pr     *pricing
	best   int64 // cost to beat
	nodes  int
	most   int
	missed bool // something was left out
	found  []Use
}

// branch searches, with at most the given number of relaxations. It proves
// t.best if nothing is left out and nothing cheaper found.
func (t *task) branch(oracle Oracle, most int) {
	b := &branching{t: t, pr: newPricing(t.p, oracle), best: t.cost, most: most}
	b.visit(newRelaxation(t.p, slices.Clone(t.p.Demand), t.node.box, t.cuts, t.known, b.pr, t.meter))
	switch {
	case b.found != nil:
		t.found, t.cost = b.found, b.best
	case !b.missed && !t.meter.Ended():
		t.proved, t.exhausted = t.cost, true
	}
}

// visit goes through the plans of a relaxation; it returns true when the search
// is over.
func (b *branching) visit(r *relaxation) bool {
	if b.nodes++; b.nodes > b.most {
		b.missed = true
		return true
	}
	r, pruned := b.solve(r)
	if pruned {
		return false
	}
	if b.t.meter.Ended() || !b.pr.exact || b.t.p.ceil(r.program.Worth()*r.unit) >= b.best {
		b.missed = true
		return b.t.meter.Ended()
	}
	x := r.program.Amounts()
	pair, ok := r.undecided(x)
	if !ok {
		if !b.take(r, x) {
			b.missed = true
		}
		return b.best <= max(b.t.bound, b.t.node.bound)
	}
	for _, together := range []bool{true, false} {
		next := r
		if together {
			next = r.clone()
		}
		next.decide(pair, together)
		if b.visit(next) {
			return true
		}
	}
	return false
}

// solve generates the relaxation, or a fresh one where its numbers have gone bad,
// and says whether it proves that nothing cheaper lies here.
func (b *branching) solve(r *relaxation) (*relaxation, bool) {
	for fresh := false; ; fresh = true {
		b.pr.best = -1
		pruned := false
		solved := r.generate(b.t.known, math.MaxInt, b.t.meter, func(pr *pricing) bool {
			pruned = pr.exact && pr.better && b.t.p.ceil(pr.bound) >= b.best && pr.proves(r) >= b.best
			return !pruned
		})
		if pruned || solved || fresh || b.t.meter.Ended() {
			return r, pruned
		}
		next := newRelaxation(r.p, r.left, r.box, r.cuts, b.t.known, b.pr, b.t.meter)
		next.together, next.apart = r.together, r.apart
		next.forbid()
		r = next
	}
}

// undecided returns two kinds, one piece of each wanted, that share a board in
// part: those for which that is nearest to two thirds, so that the first answer
// is more likely right than wrong.
func (r *relaxation) undecided(x []float64) ([2]int, bool) {
	shared := map[[2]int]float64{}
	var pairs [][2]int
	for j, v := range x {
		if v < 1e-6 || j >= len(r.columns) || r.columns[j] == nil {
			continue
		}
		use := r.columns[j].Use
		for i, e := range use {
			for _, f := range use[i+1:] {
				if r.left[e.Kind] != 1 || r.left[f.Kind] != 1 {
					continue
				}
				p := [2]int{e.Kind, f.Kind}
				if _, ok := shared[p]; !ok {
					pairs = append(pairs, p)
				}
				shared[p] += v
			}
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int) int { return slices.Compare(a[:], b[:]) })
	best, found := 0.65, false
	var at [2]int
	for _, p := range pairs {
		if d := math.Abs(shared[p] - 2.0/3); shared[p] > 1e-4 && shared[p] < 1-1e-4 && d < best-1e-9 {
			best, at, found = d, p, true
		}
	}
	return at, found
}

// decide keeps two kinds together or apart.
func (r *relaxation) decide(pair [2]int, together bool) {
	if together {
		group := pair[:]
		r.together = slices.DeleteFunc(slices.Clone(r.together), func(g []int) bool {
			joins := slices.Contains(g, pair[0]) || slices.Contains(g, pair[1])
			if joins {
				group = append(slices.Clone(group), g...)
			}
			return joins
		})
		slices.Sort(group)
		r.together = append(r.together, slices.Compact(group))
	} else {
		r.apart = append(slices.Clone(r.apart), pair)
	}
	r.forbid()
}

// forbid bars the patterns that do not keep kinds together or apart as decided.
func (r *relaxation) forbid() {
	for j, p := range r.columns {
		if p != nil && !r.program.Barred(j) && !r.allows(p) {
			r.program.Bar(j)
		}
	}
	r.program.Restart()
}

// allows says whether a pattern keeps kinds together and apart as decided.
func (r *relaxation) allows(p *Pattern) bool {
	for _, pair := range r.apart {
		if p.has(pair[0]) && p.has(pair[1]) {
			return false
		}
	}
	for _, group := range r.together {
		n := 0
		for _, k := range group {
			if p.has(k) {
				n++
			}
		}
		if n != 0 && n != len(group) {
			return false
		}
	}
	return true
}

// has says whether p holds a piece of kind k.
func (p *Pattern) has(k int) bool {
	return slices.ContainsFunc(p.Use, func(e Entry) bool { return e.Kind == k })
}

// take notes the plan if all amounts are whole and it is cheaper. What patterns
// would hold once too often is left to the oracle's quick means.
func (b *branching) take(r *relaxation, x []float64) bool {
	left, stock := slices.Clone(r.left), slices.Clone(r.box.hi)
	var uses []Use
	var cost int64
	for _, j := range r.byAmount(x) {
		p := r.columns[j]
		whole := int(x[j] + 1e-4)
		if math.Abs(x[j]-float64(whole)) > 1e-3 {
			return false
		}
		n := min(whole, p.Times(left), stock[p.Stock])
		if n == 0 {
			continue
		}
		for _, e := range p.Use {
			left[e.Kind] -= e.N * n
		}
		if stock[p.Stock] < Plenty {
			stock[p.Stock] -= n
		}
		uses = append(uses, Use{p, n})
		cost += r.p.Stock[p.Stock].Cost * int64(n)
	}
	for variant := 0; slices.Max(left) > 0; variant++ {
		if variant == b.pr.oracle.Means() {
			return false
		}
		rest, more, ok := b.pr.oracle.Complete(variant, left, stock, b.best-cost, b.t.meter)
		if ok {
			uses, cost = append(uses, rest...), cost+more
			break
		}
	}
	if cost >= b.best {
		return false
	}
	b.best, b.found = cost, uses
	return true
}
