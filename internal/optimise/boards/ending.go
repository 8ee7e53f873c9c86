package boards

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// ending completes a plan by trying out board after board: the longest piece
// left must go somewhere, and a board may waste only what the boards that can
// still be paid have to spare (bin completion, after Korf, "A new algorithm for
// optimal bin packing", AAAI 2002).
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
}

// endingPieces and endingNodes bound the search.
const (
	endingPieces = 90
	endingNodes  = 2000 // for each dive made before
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
	if pieces > endingPieces || slices.ContainsFunc(e.m.stock, func(t stock) bool { return len(t.caps) > 1 }) || e.m.p.Feed.Long > 0 {
		return nil, 0, false
	}
	e.board()
	return e.found, e.spent, e.nodes < e.most
}

// room returns the greatest length that can be bought for money.
func (e *ending) room(money int64) int64 {
	var sum int64
	for _, i := range e.m.rates {
		t := &e.m.stock[i]
		n := int64(e.stockLeft[i])
		if n == 0 {
			continue
		}
		if t.cost == 0 {
			if n >= cover.Plenty {
				return 1 << 62
			}
			sum += n * t.caps[0]
			continue
		}
		if whole := money / t.cost; whole < n {
			// The next board in part.
			sum += whole * t.caps[0]
			rest := money - whole*t.cost
			return sum + int64(float64(rest)/float64(t.cost)*float64(t.caps[0])) + 1
		}
		sum += n * t.caps[0]
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
	w := e.m.kinds[k].w
	for i := range e.m.stock {
		t := &e.m.stock[i]
		if e.stockLeft[i] == 0 || t.caps[0] < w || t.cost > e.money {
			continue
		}
		e.stockLeft[i]--
		e.money -= t.cost
		// What this board does not take must fit on those that can be bought.
		least := e.total - e.room(e.money)
		done := false
		if least <= t.caps[0] {
			e.left[k]--
			done = e.fill(i, k, t.caps[0]-w, max(0, least-w), []cover.Entry{{Kind: k, N: 1}})
			e.left[k]++
		}
		e.money += t.cost
		e.stockLeft[i]++
		if done || e.nodes >= e.most {
			return done
		}
	}
	return false
}

// fill puts pieces of kind k and shorter into room, at least least long in all.
func (e *ending) fill(board, k int, room, least int64, seg []cover.Entry) bool {
	if e.nodes++; e.nodes >= e.most || !e.meter.Take(int64(len(e.left))) {
		e.nodes = e.most
		return false
	}
	var short int64
	for j := len(e.left) - 1; j >= k; j-- {
		if e.left[j] > 0 {
			short = e.m.kinds[j].w
			break
		}
	}
	if short == 0 || room < short {
		if least > 0 {
			return false
		}
		return e.put(board, seg)
	}
	for ; k < len(e.left); k++ {
		w := e.m.kinds[k].w
		if e.left[k] == 0 || w > room {
			continue
		}
		if least > 0 && !e.reaches(k, room, least) {
			return false
		}
		e.left[k]--
		next := append(slices.Clip(seg), cover.Entry{Kind: k, N: 1})
		if last := len(seg) - 1; seg[last].Kind == k {
			next = slices.Clone(seg)
			next[last].N++
		}
		done := e.fill(board, k, room-w, max(0, least-w), next)
		e.left[k]++
		if done || e.nodes >= e.most {
			return done
		}
	}
	return false
}

// reaches says whether pieces of kind k and shorter are long enough in all.
func (e *ending) reaches(k int, room, least int64) bool {
	var sum int64
	for ; k < len(e.left); k++ {
		if w := e.m.kinds[k].w; w <= room {
			if sum += w * int64(e.left[k]); sum >= least {
				return true
			}
		}
	}
	return false
}

// put closes the board and goes on with the next.
func (e *ending) put(board int, seg []cover.Entry) bool {
	p := newPattern(board, [][]cover.Entry{slices.Clone(seg)})
	taken := e.m.filled(p)
	e.total -= taken
	e.uses = append(e.uses, cover.Use{Pattern: p, N: 1})
	done := e.board()
	e.uses = e.uses[:len(e.uses)-1]
	e.total += taken
	return done
}
