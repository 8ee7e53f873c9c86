package cover

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"sync"

	"scantling/internal/optimise/work"
)

// node is a subset of all plans: those that use boards within a box.
type node struct {
	box   box
	bound int64 // no plan in the box costs less
	// whole says that the relaxation uses whole numbers of every kind of
	// board, so that branching on them ends here.
	whole bool
	tries uint64 // dives made
	depth int
	cuts  []Cut
	tight bool // no more cuts are sought
}

// Result is what a search found.
type Result struct {
	Uses  []Use // of the cheapest plan; those it began with if none was cheaper
	Cost  int64
	Bound int64 // proven
	// Branched says that the bound rests on more than one relaxation, or on
	// trying out everything.
	Branched bool
}

// search is a run on one problem.
type search struct {
	p     *Problem
	meter *work.Meter
	Result
}

// Improve proves bounds by column generation, branching on how many pieces of
// each stock are used, and looks for cheaper plans by diving, until the plan
// meets the bound or the meter ends. It begins with a plan (its Cost may be
// math.MaxInt64 if there is none), and a bound that is known. known are
// patterns to begin with, beside the plan's.
func Improve(p *Problem, begin Result, known []*Pattern, meter *work.Meter, workers int) Result {
	s := &search{p: p, meter: meter, Result: begin}
	if len(p.Demand) > maxKinds {
		return begin
	}
	patterns := newPool(nil)
	for _, u := range begin.Uses {
		patterns.add(u.Pattern)
	}
	for _, q := range known {
		patterns.add(q)
	}
	all := box{make([]int, len(p.Stock)), make([]int, len(p.Stock))}
	for i, t := range p.Stock {
		all.hi[i] = t.Limit
	}
	open := []*node{{box: all, bound: s.Bound}}
	for round := 0; !s.done() && !s.meter.Ended() && round < maxRounds; round++ {
		tasks, before := s.tasks(open, patterns, round), s.meter.Used()
		run(tasks, workers)
		for _, t := range tasks {
			open = s.merge(t, open, patterns)
		}
		s.settle(&open)
		if len(open) == 0 {
			break
		}
		if s.meter.Used() == before {
			s.meter.Take(math.MaxInt64) // too little is left for any next step
		}
	}
	return s.Result
}

// offer notes a plan if it is cheaper than the best so far.
func (s *search) offer(uses []Use, cost int64) {
	if cost < s.Cost {
		s.Uses, s.Cost = uses, cost
	}
}

// done says that nothing cheaper can exist.
func (s *search) done() bool { return s.Cost <= s.Bound }

// maxKinds bounds the rows of the linear program, whose inverse is dense.
const maxKinds = 1500

// maxRounds bounds the rounds of a search that a budget would let run on.
const maxRounds = 3000

// task is one piece of work of a round: to solve a node's relaxation and dive
// into it, or only to dive. It sees the state as it was when the round began.
type task struct {
	p     *Problem
	node  *node
	known *pool
	meter *work.Meter
	best  int64
	bound int64
	round int
	tries uint64 // dives made into the node before

	children []*node
	found    []Use
	cost     int64
	proved   int64
	cuts     []Cut
	tight    bool
	// sharpened says that cuts were sought.
	sharpened bool
	// exhausted says that the bound was proved by trying out everything.
	exhausted bool
}

func run(tasks []*task, workers int) {
	if workers < 2 {
		for _, t := range tasks {
			t.run()
		}
		return
	}
	var wg sync.WaitGroup
	for _, t := range tasks {
		wg.Go(t.run)
	}
	wg.Wait()
}

// tasks chooses two pieces of work: the node with the lowest bound and the next
// one, or the same again with another seed where it only needs diving.
func (s *search) tasks(open []*node, known *pool, round int) []*task {
	var out []*task
	share := max(1, s.meter.Left()/2)
	add := func(n *node) {
		out = append(out, &task{
			p: s.p, node: n, known: newPool(known), meter: s.meter.Split(share),
			best: s.Cost, bound: s.Bound, round: round, proved: n.bound, tries: n.tries,
			cuts: slices.Clone(n.cuts), tight: n.tight,
		})
		n.tries++
	}
	var fresh, whole *node
	for _, n := range open {
		switch {
		case n.whole && (whole == nil || n.key() < whole.key()):
			whole = n
		case !n.whole && (fresh == nil || n.bound < fresh.bound || n.bound == fresh.bound && n.depth > fresh.depth):
			fresh = n
		}
	}
	for _, n := range []*node{fresh, whole} {
		if n != nil {
			add(n)
		}
	}
	if fresh == nil && whole != nil {
		add(whole)
	}
	for i, t := range out {
		t.round = 2*round + i
	}
	return out
}

// key orders whole nodes: those with a low bound first, but others too when
// dives into one have failed often.
func (n *node) key() float64 { return float64(n.bound) * (1 + float64(0.002*float64(n.tries))) }

// merge takes over what a task found.
func (s *search) merge(t *task, open []*node, known *pool) []*node {
	s.meter.Join(t.meter)
	if t.found != nil {
		s.offer(t.found, t.cost)
	}
	t.node.bound = max(t.node.bound, t.proved)
	s.Branched = s.Branched || t.exhausted
	if t.sharpened {
		t.node.cuts, t.node.tight = t.cuts, t.tight
	}
	for _, p := range t.known.patterns {
		if len(known.patterns) >= maxKnown {
			break
		}
		known.add(p)
	}
	if t.children != nil {
		s.Branched = true
		at := slices.Index(open, t.node)
		open = slices.Delete(open, at, at+1)
		for _, c := range t.children {
			c.bound = max(c.bound, t.node.bound)
			open = append(open, c)
		}
	}
	return open
}

// maxKnown bounds the patterns that are kept from one round to the next.
const maxKnown = 4000

// settle drops nodes that hold nothing cheaper and raises the bound to the
// lowest that is left.
func (s *search) settle(open *[]*node) {
	*open = slices.DeleteFunc(*open, func(n *node) bool {
		return n.bound >= s.Cost || s.p.narrow(n, s.Cost)
	})
	lowest := s.Cost
	for _, n := range *open {
		lowest = min(lowest, n.bound)
	}
	if lowest <= s.Bound {
		return
	}
	s.Bound = lowest
}

// narrow tightens how many boards a plan cheaper than best may use, and says
// whether there can be none.
func (p *Problem) narrow(n *node, best int64) bool {
	spent, most := int64(0), int64(0)
	for i := range p.Stock {
		spent += int64(n.box.lo[i]) * p.Stock[i].Cost
	}
	for i := range p.Stock {
		c := p.Stock[i].Cost
		if c > 0 {
			room := (best-p.Step-spent)/c + int64(n.box.lo[i])
			if best-p.Step-spent < 0 {
				return true
			}
			if n.box.hi[i] < Plenty {
				n.box.hi[i] = int(min(int64(n.box.hi[i]), room))
			}
		}
		if n.box.hi[i] == Plenty {
			most = math.MaxInt64 / 2
		} else if most < math.MaxInt64/2 {
			most += int64(n.box.hi[i]) * c
		}
	}
	return most < n.bound
}

// sharpens says whether cuts are sought before the dive: before every other one.
func (t *task) sharpens() bool { return t.node.whole && t.tries%2 == 1 && !t.tight }

// run solves the node if it is new, and dives.
func (t *task) run() {
	t.cost = t.best
	left := slices.Clone(t.p.Demand)
	oracle := t.p.Oracle(t.round)
	if !t.node.whole {
		if t.relax(left, oracle); t.proved >= t.best || t.meter.Ended() {
			return
		}
	} else if t.sharpens() && counts(oracle) {
		t.sharpened = true
		if t.tighten(left, oracle); t.proved >= t.best || t.meter.Ended() {
			return
		}
	}
	d := &dive{
		p: t.p, oracle: oracle, known: t.known, meter: t.meter, bound: max(t.bound, t.node.bound), best: t.best, left: left,
		box: t.node.box.clone(), r: rand.New(rand.NewPCG(uint64(t.round), 0x5ca47)), wild: t.tries > 0, tries: t.tries,
	}
	if t.tries%4 != 2 {
		d.cuts = t.cuts
	}
	d.run()
	if d.found != nil {
		t.found, t.cost = d.found, d.best
	}
	if d.best > d.bound && t.tries&(t.tries-1) == 0 {
		t.exhaust(oracle)
	}
	if r := (t.tries + 1) / 2; t.tries%2 == 1 && r&(r-1) == 0 && t.proved < t.cost && !t.meter.Ended() && counts(oracle) {
		t.branch(oracle, 150<<(2*min(bits.Len64(r>>1), 8)))
	}
}

// exhaust tries out every plan in the node's box, as far as the effort goes,
// which grows with the dives made before.
func (t *task) exhaust(oracle Oracle) {
	effort := 20 << (2 * min(bits.Len64(t.tries>>1), 8))
	uses, cost, ok := oracle.Finish(t.p.Demand, t.node.box.hi, t.cost-t.p.Step, effort, t.meter)
	switch {
	case uses != nil && cost < t.cost:
		t.found, t.cost = uses, cost
	case ok && uses == nil && !t.meter.Ended():
		t.proved, t.exhausted = t.cost, true
	}
}

// relax solves the relaxation within the node's box and prepares its children.
func (t *task) relax(left []int, oracle Oracle) {
	pr := newPricing(t.p, oracle)
	r := newRelaxation(t.p, left, t.node.box, nil, t.known, pr, t.meter)
	r.generate(t.known, math.MaxInt, t.meter, func(pr *pricing) bool {
		if pr.better && pr.bound > float64(t.proved)+1e-7 {
			t.proved = max(t.proved, pr.proves(r))
		}
		// Once the relaxation, rounded up, is no more than what is proved, it can
		// prove nothing more.
		return t.proved < t.best && (len(t.p.Stock) > 1 || t.p.ceil(r.program.Worth()*r.unit) > t.proved)
	})
	if t.proved >= t.best {
		return
	}
	if i, v, ok := r.split(); ok && len(t.p.Stock) > 1 {
		below, above := t.node.box.clone(), t.node.box.clone()
		below.hi[i] = v
		above.lo[i] = v + 1
		for _, b := range []box{below, above} {
			t.children = append(t.children, &node{box: b, depth: t.node.depth + 1})
		}
		return
	}
	// Also without an optimum, the node is dived into from here on.
	t.node.whole = true
}

// split returns the kind of board whose number in the relaxation is farthest
// from whole, and that number rounded down.
func (r *relaxation) split() (int, int, bool) {
	sums := make([]float64, len(r.p.Stock))
	for j, x := range r.program.Amounts() {
		if j < len(r.columns) && r.columns[j] != nil {
			sums[r.columns[j].Stock] += x
		}
	}
	best, at := 1e-4, -1
	for i, x := range sums {
		whole := math.Floor(x)
		if d := min(x-whole, whole+1-x); d > best {
			best, at = d, i
		}
	}
	if at < 0 {
		return 0, 0, false
	}
	return at, int(math.Floor(sums[at])), true
}
