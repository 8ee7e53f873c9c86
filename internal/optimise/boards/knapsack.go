package boards

import (
	"math/bits"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// knapsack finds the pieces of the greatest profit for every length up to a
// largest one, each kind up to a number: the recursion over kinds, copies in
// binary (Martello and Toth, "Knapsack Problems", Wiley 1990, chapters 2, 3).
type knapsack struct {
	profit []int64 // by length
	packs  []pack
	taken  [][]uint64 // for each pack, the lengths at which it is taken
}

// pack is n copies of a kind, taken together or not at all.
type pack struct {
	kind, n int
	w, p    int64
}

// run fills the tables up to length top; profits and most go by kind. Kinds
// without profit are left out.
func (k *knapsack) run(m *model, profits []int64, most []int, top int64, meter *work.Meter) bool {
	k.packs = k.packs[:0]
	for i := range m.kinds {
		w := m.kinds[i].w
		if profits[i] <= 0 || most[i] == 0 || w > top {
			continue
		}
		for left, n := min(int64(most[i]), top/w), int64(1); left > 0; n *= 2 {
			n = min(n, left)
			k.packs = append(k.packs, pack{i, int(n), n * w, n * profits[i]})
			left -= n
		}
	}
	if !meter.Take(int64(len(k.packs)+1) * (top + 1)) {
		return false
	}
	size := int(top) + 1
	if cap(k.profit) < size {
		k.profit = make([]int64, size)
	}
	k.profit = k.profit[:size]
	clear(k.profit)
	words := (size + 63) / 64
	for i, pk := range k.packs {
		if i == len(k.taken) {
			k.taken = append(k.taken, nil)
		}
		if cap(k.taken[i]) < words {
			k.taken[i] = make([]uint64, words)
		}
		k.taken[i] = k.taken[i][:words]
		clear(k.taken[i])
		add(k.profit, k.taken[i], int(pk.w), pk.p)
	}
	return true
}

// add offers one pack to every length, longest first.
func add(profit []int64, taken []uint64, w int, p int64) {
	low := profit[:len(profit)-w]
	high := profit[w:]
	high = high[:len(low)]
	for c := len(low) - 1; c >= 0; c-- {
		if v := low[c] + p; v > high[c] {
			high[c] = v
			at := uint(c + w)
			taken[at>>6] |= 1 << (at & 63)
		}
	}
}

// at returns the pieces for one length.
func (k *knapsack) at(length int64) []cover.Entry { return k.of(len(k.packs), length) }

// of returns the pieces for one length when only the first packs were offered.
func (k *knapsack) of(packs int, length int64) []cover.Entry {
	var out []cover.Entry
	for i := packs - 1; i >= 0 && length > 0; i-- {
		if pk := k.packs[i]; k.taken[i][length>>6]>>(uint(length)&63)&1 == 1 {
			if last := len(out) - 1; last >= 0 && out[last].Kind == pk.kind {
				out[last].N += pk.n
			} else {
				out = append(out, cover.Entry{Kind: pk.kind, N: pk.n})
			}
			length -= pk.w
		}
	}
	return out
}

// branching finds the pieces of the greatest profit for one length by depth
// first search, which is faster than a table where only a few pieces fit.
type branching struct {
	order    []int // kinds, most profit per length first
	w, p     []int64
	most     []int
	shortest []int64 // of the kinds from here on
	cell     int64   // lengths are rounded to cells for ceiling
	ceiling  []int64 // no pieces that fit in so many cells are worth more
	best     int64
	count    []int
	bestAt   []cover.Entry
	nodes    int64
	limit    int64
	ended    bool
	meter    *work.Meter
}

// run returns the pieces of the greatest profit it finds within limit nodes and
// whether they are the best.
func (b *branching) run(m *model, profits []int64, most []int, room, limit int64, meter *work.Meter) (pieces []cover.Entry, profit int64, proved bool) {
	b.prepare(m, profits, most, room)
	b.best, b.bestAt, b.nodes, b.ended, b.meter = 0, nil, 0, false, meter
	b.limit = limit
	b.search(0, room, 0)
	return b.bestAt, b.best, !b.ended && meter.Take(b.nodes&1023)
}

func (b *branching) prepare(m *model, profits []int64, most []int, room int64) {
	b.order = b.order[:0]
	for i := range m.kinds {
		if profits[i] > 0 && most[i] > 0 && m.kinds[i].w <= room {
			b.order = append(b.order, i)
		}
	}
	sortBy(b.order, func(x, y int) int {
		return compareProducts(profits[y], m.kinds[x].w, profits[x], m.kinds[y].w)
	})
	n := len(b.order)
	b.w, b.p, b.most = make([]int64, n), make([]int64, n), make([]int, n)
	b.shortest, b.count = make([]int64, n+1), make([]int, n)
	b.shortest[n] = 1 << 62
	for j, i := range b.order {
		b.w[j], b.p[j], b.most[j] = m.kinds[i].w, profits[i], most[i]
	}
	for j := n - 1; j >= 0; j-- {
		b.shortest[j] = min(b.shortest[j+1], b.w[j])
	}
	b.setCeiling(room)
}

// cells is the number of cells for the ceiling.
const cells = 1024

// setCeiling works out, for every length in cells, a worth that pieces within
// it cannot exceed: an unbounded knapsack with lengths rounded down.
func (b *branching) setCeiling(room int64) {
	b.cell = room/cells + 1
	n := int(room / b.cell)
	b.ceiling = append(b.ceiling[:0], make([]int64, n+1)...)
	for j, w := range b.w {
		w, p := int(w/b.cell), b.p[j]
		for c := w; c <= n && w > 0; c++ {
			b.ceiling[c] = max(b.ceiling[c], b.ceiling[c-w]+p)
		}
		if w == 0 {
			for c := range b.ceiling {
				b.ceiling[c] = 1 << 62
			}
			return
		}
	}
}

func (b *branching) search(j int, room, profit int64) {
	if profit > b.best {
		b.best = profit
		b.bestAt = b.bestAt[:0:0]
		for k, n := range b.count[:j] {
			if n > 0 {
				b.bestAt = append(b.bestAt, cover.Entry{Kind: b.order[k], N: n})
			}
		}
	}
	for ; j < len(b.w); j++ {
		shortest := b.shortest[j]
		if room < shortest {
			return
		}
		if profit <= b.best && b.ceiling[room/b.cell] <= b.best-profit {
			return
		}
		hi, lo := bits.Mul64(uint64(room), uint64(b.p[j]))
		if hi >= uint64(b.w[j]) {
			hi, lo = 0, 0 // cannot be, profits are bounded; search on
		} else if q, _ := bits.Div64(hi, lo, uint64(b.w[j])); profit+int64(q) <= b.best {
			return
		}
		if b.nodes++; b.nodes&1023 == 0 {
			b.ended = !b.meter.Take(3*1024) || b.nodes > b.limit
		}
		if b.ended {
			return
		}
		for n := min(int64(b.most[j]), room/b.w[j]); n > 0; n-- {
			b.count[j] = int(n)
			b.search(j+1, room-n*b.w[j], profit+n*b.p[j])
			b.count[j] = 0
		}
	}
}
