package boards

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// Counts says whether cuts are heeded, and kinds kept together or apart: where boards are in one clear length each
// and the tables are not too long.
func (pr *oracle) Counts() bool {
	return pr.m.top()*int64(len(pr.m.kinds)) < pairedCells && pr.m.p.Feed.Long == 0 &&
		!slices.ContainsFunc(pr.m.stock, func(t stock) bool { return len(t.caps) > 1 })
}

// points is what a piece of a kind counts for in a cut.
type points struct{ cut, n int }

// item is a kind that stands in cuts, or kinds that stay together.
type item struct {
	kinds []int
	w, p  int64
	most  int
	in    []points
}

// paired finds the pieces of the greatest profit for one length when certain
// sets of pieces cost something and certain kinds stay together or apart: depth
// first over those kinds, the others out of a table.
type paired struct {
	order    []item    // most profit per length first
	price    []int64   // by cut
	of, held []int     // by cut
	ceiling  [][]int64 // [j] is, by length, the profit of the other kinds and of order[j:], sets for nothing
	cells    []int64
	count    []int
	packs    int // of the other kinds

	best          int64
	bestAt        []int
	bestRoom      int64
	nodes         int64
	meter         *work.Meter
	short, failed bool
}

// never is the price of a set that may not be.
const never = 1 << 58

const (
	pairedCells = 30_000_000 // of the tables
	pairedNodes = 4_000_000  // of one search
)

// counted looks for the patterns that are worth most less the price of their
// sets, again and again without the pieces of the last one.
func (pr *oracle) counted(meter *work.Meter) (cover.Reply, bool) {
	q := &pr.pairs
	copy(pr.most, pr.ask.Left)
	for n := range 3 {
		if !q.prepare(pr, meter) {
			return cover.Reply{}, false
		}
		var best *cover.Pattern
		var gain int64
		for i := range pr.m.stock {
			if pr.ask.Stock[i] == 0 {
				if n == 0 {
					pr.worth[i] = 0
				}
				continue
			}
			price := pr.ask.Price[i]
			seg, worth := q.run(pr, pr.m.stock[i].caps[0], price, meter)
			if q.failed {
				return cover.Reply{}, false
			}
			if n == 0 {
				pr.worth[i] = worth
			}
			if worth-price > gain && seg != nil {
				gain, best = worth-price, newPattern(i, [][]cover.Entry{seg})
			}
		}
		if best == nil {
			break
		}
		if pr.found = append(pr.found, best); !pr.exclude() {
			break
		}
	}
	return cover.Reply{Found: pr.found, Worth: pr.worth, Exact: !q.short}, true
}

// prepare fills the tables for the prices of the present ask.
func (q *paired) prepare(pr *oracle, meter *work.Meter) bool {
	m, ask := pr.m, pr.ask
	q.order, q.price, q.of = q.order[:0], q.price[:0], q.of[:0]
	q.meter, q.failed, q.short = meter, false, false
	in := make([][]points, len(m.kinds))
	special := make([]bool, len(m.kinds))
	for c, cut := range ask.Cuts {
		q.price, q.of = append(q.price, cut.Price), append(q.of, cut.Of)
		for i, k := range cut.Kinds {
			in[k] = append(in[k], points{c, cut.Points[i]})
			special[k] = true
		}
	}
	for _, pair := range ask.Apart {
		for _, k := range pair {
			in[k] = append(in[k], points{len(q.price), 1})
			special[k] = true
		}
		q.price, q.of = append(q.price, never), append(q.of, 2)
	}
	grouped := make([]bool, len(m.kinds))
	for _, g := range ask.Together {
		q.addItem(pr, g, in)
		for _, k := range g {
			special[k], grouped[k] = true, true
		}
	}
	plain := slices.Clone(pr.most)
	for k := range m.kinds {
		if special[k] && !grouped[k] {
			q.addItem(pr, []int{k}, in)
		}
		if special[k] {
			plain[k] = 0
		}
	}
	slices.SortStableFunc(q.order, func(a, b item) int { return compareProducts(b.p, a.w, a.p, b.w) })
	q.held = slices.Grow(q.held[:0], len(q.price))[:len(q.price)]
	q.count = slices.Grow(q.count[:0], len(q.order))[:len(q.order)]
	return q.ceilings(pr, plain)
}

// addItem puts kinds that stay together, or one alone, into the order.
func (q *paired) addItem(pr *oracle, kinds []int, in [][]points) {
	it := item{kinds: kinds, most: 1 << 30}
	for _, k := range kinds {
		it.w += pr.m.kinds[k].w
		it.p += pr.ask.Value[k]
		it.most = min(it.most, pr.most[k])
		if len(kinds) == 1 {
			it.in = in[k]
			continue
		}
		for _, pt := range in[k] {
			if i := slices.IndexFunc(it.in, func(a points) bool { return a.cut == pt.cut }); i >= 0 {
				it.in[i].n += pt.n
			} else {
				it.in = append(it.in, pt)
			}
		}
	}
	if it.most > 0 && it.p > 0 && it.w <= pr.m.top() {
		q.order = append(q.order, it)
	}
}

// ceilings fills a table for the other kinds and one more for each item that is
// offered beside them, the last in order first.
func (q *paired) ceilings(pr *oracle, plain []int) bool {
	m, top := pr.m, pr.m.top()
	if !pr.table.run(m, pr.ask.Value, plain, top, q.meter) {
		return false
	}
	q.packs = len(pr.table.packs)
	size, n := int(top)+1, len(q.order)
	if !q.meter.Take(3 * int64(n) * int64(size)) {
		return false
	}
	if cap(q.cells) < size*(n+1) {
		q.cells = make([]int64, size*(n+1))
	}
	q.ceiling = q.ceiling[:0]
	for j := range n + 1 {
		q.ceiling = append(q.ceiling, q.cells[:cap(q.cells)][j*size:(j+1)*size])
	}
	copy(q.ceiling[n], pr.table.profit)
	for j := n - 1; j >= 0; j-- {
		row := q.ceiling[j]
		copy(row, q.ceiling[j+1])
		w, p := q.order[j].w, q.order[j].p
		for left, n := min(int64(q.order[j].most), top/w), int64(1); left > 0; n *= 2 {
			n = min(n, left)
			left -= n
			low, high := row[:size-int(n*w)], row[n*w:]
			for c := len(low) - 1; c >= 0; c-- {
				high[c] = max(high[c], low[c]+n*p)
			}
		}
	}
	return true
}

// run returns the pieces that are worth most in room if that is more than least,
// and their worth, or nil and a worth that none exceeds.
func (q *paired) run(pr *oracle, room, least int64, meter *work.Meter) ([]cover.Entry, int64) {
	q.best, q.bestAt, q.nodes = least, nil, 0
	clear(q.held)
	clear(q.count)
	had := q.short
	q.search(pr, 0, room, 0)
	if q.failed {
		return nil, 0
	}
	if q.nodes >= pairedNodes {
		q.short = true
	}
	q.short = q.short || had
	if q.bestAt == nil {
		return nil, q.best
	}
	seg := pr.table.of(q.packs, q.bestRoom)
	for j, n := range q.bestAt {
		if n > 0 {
			for _, k := range q.order[j].kinds {
				seg = append(seg, cover.Entry{Kind: k, N: n})
			}
		}
	}
	return seg, q.best
}

// search goes on with the items from place j; profit is that of the pieces so
// far, less the price of their sets.
func (q *paired) search(pr *oracle, j int, room, profit int64) {
	if v := profit + q.ceiling[len(q.order)][room]; v > q.best {
		q.best, q.bestRoom = v, room
		q.bestAt = append(q.bestAt[:0:0], q.count...)
	}
	for ; j < len(q.order); j++ {
		if profit+q.ceiling[j][room] <= q.best {
			return
		}
		if q.nodes++; q.nodes&255 == 0 && !q.meter.Take(256*8) {
			q.failed = true
		}
		if q.failed || q.nodes >= pairedNodes {
			return
		}
		it := &q.order[j]
		v, left := profit, room
		for n := 1; n <= it.most && left >= it.w; n++ {
			v, left = v+it.p-q.add(it), left-it.w
			if q.count[j] = n; v < -never/2 {
				break
			}
			q.search(pr, j+1, left, v)
		}
		for ; q.count[j] > 0; q.count[j]-- {
			for _, c := range it.in {
				q.held[c.cut] -= c.n
			}
		}
	}
}

// add counts one more piece of each of an item's kinds and returns the price of
// the sets that this makes whole.
func (q *paired) add(it *item) int64 {
	var sum int64
	for _, c := range it.in {
		had := q.held[c.cut]
		q.held[c.cut] = had + c.n
		if sets := (had+c.n)/q.of[c.cut] - had/q.of[c.cut]; sets > 0 {
			sum += q.price[c.cut] * int64(sets)
		}
	}
	return sum
}
