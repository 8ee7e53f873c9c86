package boards

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// filler completes plans: it fills one board after the other, the longest piece
// left first and the rest of the board as full as possible, on the kind of
// board that costs least per filled length.
type filler struct {
	m      *model
	sums   *subset
	exact  bool // subset sums; otherwise longest pieces first
	meter  *work.Meter
	forced bool // the longest piece left must go in
}

// complete cuts all that is left and returns the uses and their cost, or false
// when the limited boards do not suffice or the cost reaches most.
func (f *filler) complete(left, stockLeft []int, most int64) ([]cover.Use, int64, bool) {
	left, stockLeft = slices.Clone(left), slices.Clone(stockLeft)
	var uses []cover.Use
	var cost int64
	for first(left) >= 0 {
		if len(uses)&63 == 63 && f.meter.Cancelled() {
			return nil, 0, false
		}
		p := f.last(left, stockLeft)
		if p == nil {
			p = f.best(left, stockLeft)
		}
		if p == nil {
			return nil, 0, false
		}
		n := p.Times(left)
		t := &f.m.stock[p.Stock]
		if stockLeft[p.Stock] < cover.Plenty {
			n = min(n, stockLeft[p.Stock])
			stockLeft[p.Stock] -= n
		}
		for _, e := range p.Use {
			left[e.Kind] -= e.N * n
		}
		uses = append(uses, cover.Use{Pattern: p, N: n})
		if cost += t.cost * int64(n); cost >= most {
			return nil, 0, false
		}
	}
	return uses, cost, true
}

func first(left []int) int {
	return slices.IndexFunc(left, func(n int) bool { return n > 0 })
}

// last returns the cheapest board that takes everything that is left, or nil.
func (f *filler) last(left, stockLeft []int) *cover.Pattern {
	var sum int64
	for k, n := range left {
		sum += f.m.kinds[k].w * int64(n)
	}
	var best *cover.Pattern
	for i := range f.m.stock {
		t := &f.m.stock[i]
		if stockLeft[i] == 0 || sum > t.top || best != nil && t.cost >= f.m.stock[best.Stock].cost {
			continue
		}
		if p := f.fill(i, left); p != nil && f.m.filled(p) == sum {
			best = p
		}
	}
	return best
}

// best returns the filled board that costs least per filled length; among equal
// ones the fuller.
func (f *filler) best(left, stockLeft []int) *cover.Pattern {
	if !f.exact {
		return f.plain(left, stockLeft)
	}
	var best *cover.Pattern
	var bestSum int64
	for i := range f.m.stock {
		t := &f.m.stock[i]
		if stockLeft[i] == 0 {
			continue
		}
		p := f.fill(i, left)
		if p == nil {
			continue
		}
		sum := f.m.filled(p)
		if best == nil || cheaper(t.cost, sum, f.m.stock[best.Stock].cost, bestSum) {
			best, bestSum = p, sum
		}
	}
	return best
}

// plain fills the board that is cheapest per length among those that take the
// longest piece left.
func (f *filler) plain(left, stockLeft []int) *cover.Pattern {
	w := f.m.kinds[first(left)].w
	for _, i := range f.m.rates {
		if stockLeft[i] == 0 || f.m.stock[i].top < w {
			continue
		}
		if p := f.fill(i, left); p != nil {
			return p
		}
	}
	return nil
}

// cheaper says whether cost a for length x is less per length than b for y.
func cheaper(a, x, b, y int64) bool {
	ax, by := float64(a)/float64(x), float64(b)/float64(y)
	return ax < by || ax == by && x > y
}

// fill fills one board of kind i, or returns nil if nothing fits.
func (f *filler) fill(i int, left []int) *cover.Pattern {
	t := &f.m.stock[i]
	rest := left
	if len(t.caps) > 1 {
		rest = slices.Clone(left)
	}
	segs := make([][]cover.Entry, len(t.caps))
	some := false
	for s, room := range t.caps {
		seg := f.segment(rest, room)
		if len(seg) > 0 {
			some = true
		}
		segs[s] = seg
		if len(t.caps) > 1 {
			for _, e := range seg {
				rest[e.Kind] -= e.N
			}
		}
	}
	if !some {
		return nil
	}
	return f.m.feedable(newPattern(i, segs))
}

// segment fills one clear length: the longest piece that fits, and the rest as
// full as it goes.
func (f *filler) segment(left []int, room int64) []cover.Entry {
	k := 0
	for k < len(left) && (left[k] == 0 || f.m.kinds[k].w > room) {
		k++
	}
	if k == len(left) {
		return nil
	}
	if !f.exact {
		seg, _ := f.m.greedy(left, k, room)
		return seg
	}
	if !f.forced {
		if seg, _, ok := f.sums.fill(f.m, left, k, room, f.meter); ok {
			return seg
		}
	}
	left[k]--
	seg, _, ok := f.sums.fill(f.m, left, k, room-f.m.kinds[k].w, f.meter)
	if !ok {
		seg, _ = f.m.greedy(left, k, room-f.m.kinds[k].w)
	}
	left[k]++
	return merge(seg, k)
}

// merge adds one piece of kind k.
func merge(seg []cover.Entry, k int) []cover.Entry {
	for i := range seg {
		if seg[i].Kind == k {
			seg[i].N++
			return seg
		}
	}
	return append(seg, cover.Entry{Kind: k, N: 1})
}
