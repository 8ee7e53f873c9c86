package boards

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// oracle knows what fits on a board.
type oracle struct {
	m     *model
	table knapsack
	tree  branching
	sums  subset
	pairs paired
	most  []int
	ask   cover.Ask
	found []*cover.Pattern
	worth []int64
}

func newOracle(m *model) *oracle {
	return &oracle{m: m, most: make([]int, len(m.kinds)), worth: make([]int64, len(m.stock))}
}

// top returns the longest clear length of all stock.
func (m *model) top() int64 {
	var top int64
	for i := range m.stock {
		top = max(top, m.stock[i].top)
	}
	return top
}

// Price looks for the patterns that are worth most.
func (pr *oracle) Price(ask cover.Ask, meter *work.Meter) (cover.Reply, bool) {
	pr.ask, pr.found = ask, nil
	if len(ask.Cuts)+len(ask.Together)+len(ask.Apart) > 0 {
		return pr.counted(meter)
	}
	live := 0
	for k, n := range ask.Left {
		if n > 0 && ask.Value[k] > 0 {
			live++
		}
	}
	dense := int64(live)*pr.m.top() > denseTable
	exact := false
	switch {
	case !dense:
		if !pr.passes(byTable, 3, meter) {
			return cover.Reply{}, false
		}
		exact = true
	case !pr.passes(quickly, 40, meter):
		return cover.Reply{}, false
	case len(pr.found) < 3 && ask.Prove:
		pr.found = pr.found[:0]
		way := byTable
		if pr.m.top() >= maxStates {
			way = fully
		}
		if !pr.passes(way, 1, meter) {
			return cover.Reply{}, false
		}
		exact = true
		if way == byTable {
			pr.withEach()
		}
	}
	return cover.Reply{Found: pr.found, Worth: pr.worth, Exact: exact, Slow: dense}, true
}

// way is how the pattern that is worth most is sought.
type way int

const (
	byTable way = iota // exactly, for all lengths at once
	fully              // exactly, depth first
	quickly            // depth first, giving up early
)

// denseTable is the size of a table from which on it is filled only to prove
// that nothing more is to be found.
const denseTable = 1_000_000

// quickNodes bounds a quick search.
const quickNodes = 20_000

// passes looks for patterns again and again, each time without the pieces of
// the last one, so that they complement each other.
func (pr *oracle) passes(w way, most int, meter *work.Meter) bool {
	copy(pr.most, pr.ask.Left)
	for n := range most {
		had := len(pr.found)
		if !pr.pass(w, n == 0, meter) {
			return n > 0 && !meter.Stopped()
		}
		if len(pr.found) == had || !pr.exclude() {
			break
		}
	}
	return true
}

// exclude takes the pieces of the last found pattern out of what is to be had,
// so that the next pattern complements it.
func (pr *oracle) exclude() bool {
	left := false
	for _, e := range pr.found[len(pr.found)-1].Use {
		pr.most[e.Kind] = max(0, pr.most[e.Kind]-e.N)
	}
	for k, n := range pr.most {
		left = left || n > 0 && pr.ask.Value[k] > 0
	}
	return left
}

// pass looks for one pattern for each kind of board and keeps those that are
// worth more than they cost: all of them in the first pass, which also notes the
// worths, later the best.
func (pr *oracle) pass(w way, first bool, meter *work.Meter) bool {
	if w == byTable && !pr.table.run(pr.m, pr.ask.Value, pr.most, pr.m.top(), meter) {
		return false
	}
	var best *cover.Pattern
	var bestGain int64
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if pr.ask.Stock[i] == 0 {
			pr.worth[i] = 0
			continue
		}
		price := pr.ask.Price[i]
		segs, worth, held := pr.fill(t, w, price, meter)
		if meter.Ended() {
			return false
		}
		if first {
			pr.worth[i] = worth
		}
		if held <= price {
			continue
		}
		p := pr.m.feedable(pr.m.clamp(newPattern(i, segs), pr.ask.Left))
		if p == nil {
			continue
		}
		if first {
			pr.found = append(pr.found, p)
		}
		if best == nil || held-price > bestGain {
			best, bestGain = p, held-price
		}
	}
	switch {
	case best == nil:
	case first:
		// The best one last: the next pass complements it.
		at, last := slices.Index(pr.found, best), len(pr.found)-1
		pr.found[at], pr.found[last] = pr.found[last], best
	default:
		pr.found = append(pr.found, best)
	}
	return true
}

// fill returns the pieces for each clear length of a board, their greatest worth
// without regard to wide kerfs, and their worth.
func (pr *oracle) fill(t *stock, w way, price int64, meter *work.Meter) (segs [][]cover.Entry, worth, held int64) {
	segs = make([][]cover.Entry, len(t.caps))
	limit := int64(quickNodes)
	if w == fully {
		limit = 1 << 62
	}
	for s := range t.caps {
		if w == byTable {
			worth += pr.table.profit[t.wide[s]]
			held += pr.table.profit[t.caps[s]]
			continue
		}
		seg, v, _ := pr.tree.run(pr.m, pr.ask.Value, pr.most, t.wide[s], limit, meter)
		worth += v
		if t.wide[s] != t.caps[s] {
			seg, v, _ = pr.tree.run(pr.m, pr.ask.Value, pr.most, t.caps[s], limit, meter)
		}
		segs[s] = seg
		held += v
	}
	if w == byTable && held > price {
		for s, room := range t.caps {
			segs[s] = pr.table.at(room)
		}
	}
	return segs, worth, held
}

// clamp takes out what a board in several clear lengths would hold too often.
func (m *model) clamp(p *cover.Pattern, left []int) *cover.Pattern {
	for _, e := range p.Use {
		for n := e.N; n > left[e.Kind]; n-- {
			p = without(p, e.Kind)
		}
	}
	return p
}

// withEach adds, out of the last table, the patterns that are worth most among
// those that hold a given kind, for every kind: the table tells the worth of the
// rest of the board.
func (pr *oracle) withEach() {
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if len(t.caps) > 1 || pr.ask.Stock[i] == 0 {
			continue
		}
		price := pr.ask.Price[i]
		for k := range pr.m.kinds {
			if pr.ask.Left[k] == 0 {
				continue
			}
			rest := t.caps[0] - pr.m.kinds[k].w
			if rest < 0 || pr.ask.Value[k]+pr.table.profit[rest] <= price {
				continue
			}
			p := newPattern(i, [][]cover.Entry{append(pr.table.at(rest), cover.Entry{Kind: k, N: 1})})
			if p = pr.m.feedable(pr.m.clamp(p, pr.ask.Left)); p != nil {
				pr.found = append(pr.found, p)
			}
		}
	}
}
