package boards

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"scantling/internal/optimise/problem"
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
}

// improve proves bounds by column generation, branching on how many boards of
// each kind are used, and looks for cheaper plans by diving, until the plan
// meets the bound or the meter ends.
func (s *search) improve(workers int) {
	known := newPool(nil)
	for _, u := range s.best.uses {
		known.add(u.p)
	}
	_, limits := s.m.demand()
	open := []*node{{box: box{make([]int, len(limits)), limits}, bound: s.bound}}
	for round := 0; !s.done() && !s.meter.Ended() && round < maxRounds; round++ {
		tasks := s.tasks(open, known, round)
		run(tasks, workers)
		for _, t := range tasks {
			open = s.merge(t, open, known)
		}
		s.settle(&open)
		if len(open) == 0 {
			break
		}
	}
}

// maxRounds bounds the rounds of a search that a budget would let run on.
const maxRounds = 3000

// task is one piece of work of a round: to solve a node's relaxation and dive
// into it, or only to dive. It sees the state as it was when the round began.
type task struct {
	m     *model
	node  *node
	known *pool
	meter *work.Meter
	best  int64
	bound int64
	round int
	tries uint64 // dives made into the node before

	children []*node
	found    []use
	cost     int64
	proved   int64
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
			m: s.m, node: n, known: newPool(known), meter: s.meter.Split(share),
			best: s.best.cost, bound: s.bound, round: round, proved: n.bound, tries: n.tries,
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
func (n *node) key() float64 { return float64(n.bound) * (1 + 0.002*float64(n.tries)) }

// merge takes over what a task found.
func (s *search) merge(t *task, open []*node, known *pool) []*node {
	s.meter.Join(t.meter)
	if t.found != nil {
		s.offer(t.found, t.cost)
	}
	t.node.bound = max(t.node.bound, t.proved)
	for _, p := range t.known.patterns {
		if len(known.patterns) >= maxKnown {
			break
		}
		known.add(p)
	}
	if t.children != nil {
		s.branched = true
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
		return n.bound >= s.best.cost || s.m.narrow(n, s.best.cost)
	})
	lowest := s.best.cost
	for _, n := range *open {
		lowest = min(lowest, n.bound)
	}
	if lowest <= s.bound {
		return
	}
	by := problem.ByColumns
	if s.branched {
		by = problem.BySearch
	}
	s.raise(lowest, by)
}

// narrow tightens how many boards a plan cheaper than best may use, and says
// whether there can be none.
func (m *model) narrow(n *node, best int64) bool {
	spent, most := int64(0), int64(0)
	for i := range m.stock {
		spent += int64(n.box.lo[i]) * m.stock[i].cost
	}
	for i := range m.stock {
		c := m.stock[i].cost
		if c > 0 {
			room := (best-m.step-spent)/c + int64(n.box.lo[i])
			if best-m.step-spent < 0 {
				return true
			}
			if n.box.hi[i] < plenty {
				n.box.hi[i] = int(min(int64(n.box.hi[i]), room))
			}
		}
		if n.box.hi[i] == plenty {
			most = math.MaxInt64 / 2
		} else if most < math.MaxInt64/2 {
			most += int64(n.box.hi[i]) * c
		}
	}
	return most < n.bound
}

// run solves the node if it is new, and dives.
func (t *task) run() {
	t.cost = t.best
	left, _ := t.m.demand()
	if !t.node.whole {
		if t.relax(left); t.proved >= t.best || t.meter.Ended() {
			return
		}
	}
	d := &dive{
		m: t.m, known: t.known, meter: t.meter, bound: max(t.bound, t.node.bound), best: t.best, left: left,
		box: t.node.box.clone(), r: rand.New(rand.NewPCG(uint64(t.round), 0x5ca47)), wild: t.tries > 0, tries: t.tries,
	}
	d.run()
	if d.found != nil {
		t.found, t.cost = d.found, d.best
	}
}

// relax solves the relaxation within the node's box and prepares its children.
func (t *task) relax(left []int) {
	pr := newPricing(t.m)
	r := newRelaxation(t.m, left, t.node.box, t.known, pr)
	optimal := r.generate(t.known, math.MaxInt, t.meter, func(pr *pricing) bool {
		if pr.better && pr.bound > float64(t.proved)+1e-7 {
			t.proved = max(t.proved, pr.proves(r))
		}
		return t.proved < t.best
	})
	if t.proved >= t.best {
		return
	}
	if i, v, ok := r.split(); ok && len(t.m.stock) > 1 {
		below, above := t.node.box.clone(), t.node.box.clone()
		below.hi[i] = v
		above.lo[i] = v + 1
		for _, b := range []box{below, above} {
			t.children = append(t.children, &node{box: b, depth: t.node.depth + 1})
		}
		return
	}
	// Without an optimum the node is dived into as it is.
	_ = optimal
	t.node.whole = true
}

// split returns the kind of board whose number in the relaxation is farthest
// from whole, and that number rounded down.
func (r *relaxation) split() (int, int, bool) {
	sums := make([]float64, len(r.m.stock))
	for j, x := range r.program.Amounts() {
		if j < len(r.columns) && r.columns[j] != nil {
			sums[r.columns[j].stock] += x
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
