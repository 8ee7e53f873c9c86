package boards

import (
	"math/bits"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// ending completes a plan by trying out board after board: the longest piece
// left must go somewhere, a clear length takes pieces until none fits, and a
// board may waste only what the boards that can still be paid have to spare (bin
// completion, after Korf, "A new algorithm for optimal bin packing", AAAI 2002).
type ending struct {
	m         *model
	left      []int
	stockLeft []int
	total     int64 // length left
	money     int64
	meter     *work.Meter
	nodes     int
	most      int // nodes allowed
	uses      []cover.Use
	found     []cover.Use
	spent     int64
	reach     reach
}

// endingPieces and endingNodes bound the search.
const (
	endingPieces = 90
	endingNodes  = 2000 // for each unit of effort
)

func newEnding(m *model, left, stockLeft []int, money int64, meter *work.Meter) *ending {
	e := &ending{m: m, left: slices.Clone(left), stockLeft: slices.Clone(stockLeft), money: money, meter: meter}
	for k, n := range left {
		e.total += m.kinds[k].w * int64(n)
	}
	return e
}

// run returns the boards and their cost, and whether the search was complete.
// It does nothing where much is left.
func (e *ending) run() ([]cover.Use, int64, bool) {
	pieces := 0
	for _, n := range e.left {
		pieces += n
	}
	if pieces > endingPieces || e.money < 0 || !e.reach.fill(e.m, e.left, 0, e.m.top(), e.meter) {
		return nil, 0, false
	}
	e.board()
	return e.found, e.spent, e.nodes < e.most && e.m.plain()
}

// plain says that a board holds whatever fits into its clear lengths: nothing is
// too short to be fed, no kerf is wider than the defect beside it.
func (m *model) plain() bool {
	return m.p.Feed.Long == 0 && !slices.ContainsFunc(m.stock, func(t stock) bool { return !slices.Equal(t.caps, t.wide) })
}

// held returns the sum of the clear lengths.
func (t *stock) held() int64 {
	var sum int64
	for _, c := range t.caps {
		sum += c
	}
	return sum
}

// room returns the greatest length that can be bought for money.
func (e *ending) room(money int64) int64 {
	var sum int64
	for _, i := range e.m.rates {
		t := &e.m.stock[i]
		n, held := int64(e.stockLeft[i]), t.length()
		if n == 0 {
			continue
		}
		if t.cost == 0 {
			if n >= cover.Plenty {
				return 1 << 62
			}
			sum += n * held
			continue
		}
		if whole := money / t.cost; whole < n {
			// The next board in part, rounded up.
			hi, lo := bits.Mul64(uint64(money-whole*t.cost), uint64(held))
			part, _ := bits.Div64(hi, lo, uint64(t.cost))
			return sum + whole*held + int64(part) + 1
		}
		sum += n * held
		money -= n * t.cost
	}
	return sum
}

// board chooses the next board; it returns true when a plan is found.
func (e *ending) board() bool {
	k := first(e.left)
	if k < 0 {
		e.found = slices.Clone(e.uses)
		for _, u := range e.found {
			e.spent += e.m.stock[u.Pattern.Stock].cost
		}
		return true
	}
	for i := range e.m.stock {
		t := &e.m.stock[i]
		if e.stockLeft[i] == 0 || t.top < e.m.kinds[k].w || t.cost > e.money {
			continue
		}
		e.stockLeft[i]--
		e.money -= t.cost
		done := e.try(i, k)
		e.money += t.cost
		e.stockLeft[i]++
		if done || e.nodes >= e.most {
			return done
		}
	}
	return false
}

// try fills a board of kind i, which takes a piece of kind k: in each of its
// clear lengths in turn.
func (e *ending) try(i, k int) bool {
	t, w := &e.m.stock[i], e.m.kinds[k].w
	// What this board does not take must fit on those that can be bought.
	least, held := max(0, e.total-e.room(e.money)), t.held()
	if least > held {
		return false
	}
	e.left[k]--
	defer func() { e.left[k]++ }()
	for s, room := range t.caps {
		if room < w || slices.Contains(t.caps[:s], room) {
			continue
		}
		b := opened{stock: i, forced: s, kind: k, segs: make([][]cover.Entry, len(t.caps))}
		if done := b.next(e, -1, max(0, least-w), held-w); done || e.nodes >= e.most {
			return done
		}
	}
	return false
}

// opened is a board that is being filled.
type opened struct {
	stock, forced, kind int // the clear length that begins with a piece of kind
	segs                [][]cover.Entry
}

// next goes on to the clear length after s; later is the room from there on, and
// at least least of it must be taken.
func (b *opened) next(e *ending, s int, least, later int64) bool {
	if s++; s == len(b.segs) {
		return least == 0 && e.put(b)
	}
	if least > later {
		return false
	}
	room, k := e.m.stock[b.stock].caps[s], 0
	var seg []cover.Entry
	if s == b.forced {
		room, k = room-e.m.kinds[b.kind].w, b.kind
		seg = []cover.Entry{{Kind: k, N: 1}}
	}
	return b.fill(e, s, k, room, least, later-room, seg)
}

// fill puts pieces of kind k and shorter into the room of clear length s; of
// them and what is put into the later lengths, at least least.
func (b *opened) fill(e *ending, s, k int, room, least, later int64, seg []cover.Entry) bool {
	if e.nodes++; e.nodes >= e.most || !e.meter.Take(2*int64(len(e.left))+40) {
		e.nodes = e.most
		return false
	}
	var short, sum int64 // of what still fits
	for j := len(e.left) - 1; j >= k; j-- {
		if w := e.m.kinds[j].w; e.left[j] > 0 && w <= room {
			if short == 0 {
				short = w
			}
			sum += w * int64(e.left[j])
		}
	}
	if short == 0 {
		b.segs[s] = seg
		return least <= later && b.next(e, s, least, later)
	}
	for ; k < len(e.left); k++ {
		w := e.m.kinds[k].w
		if e.left[k] == 0 || w > room {
			continue
		}
		if least > later && (sum < least-later || !e.reach.some(k, least-later, room)) {
			return false
		}
		sum -= w * int64(e.left[k])
		e.left[k]--
		next := append(slices.Clip(seg), cover.Entry{Kind: k, N: 1})
		if last := len(seg) - 1; last >= 0 && seg[last].Kind == k {
			next = slices.Clone(seg)
			next[last].N++
		}
		done := b.fill(e, s, k, room-w, max(0, least-w), later, next)
		e.left[k]++
		if done || e.nodes >= e.most {
			return done
		}
	}
	return false
}

// put closes the board and goes on with the next.
func (e *ending) put(b *opened) bool {
	segs := make([][]cover.Entry, len(b.segs))
	for s := range segs {
		segs[s] = slices.Clone(b.segs[s])
	}
	p := newPattern(b.stock, segs)
	if e.m.feedable(p) != p {
		return false
	}
	taken := e.m.filled(p)
	e.total -= taken
	e.uses = append(e.uses, cover.Use{Pattern: p, N: 1})
	done := e.board()
	e.uses = e.uses[:len(e.uses)-1]
	e.total += taken
	return done
}
