package corner

import (
	"cmp"
	"math"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// rect is a rectangle by its points.
type rect struct{ i, j int16 }

// way is how a rectangle is cut first.
type way int8

const (
	acrossX way = iota
	acrossY
)

// partial is a filling that is begun. Its open rectangles, the largest first, are
// those of the beam from open on.
type partial struct {
	parent     int32
	piece      int32 // -1: the rectangle is left empty
	at         rect  // that was filled
	first      way
	open, many int32
	value      int32
	potential  int32
	hash       uint64
}

// child is a partial filling that may be made.
type child struct {
	parent, piece    int32
	first            way
	value, potential int32
	hash             uint64
}

// beam fills the largest open rectangle of partial fillings, one piece after the
// other, and keeps those that may be worth most.
type beam struct {
	t        *table
	partials []partial
	rects    []rect
	children []child
	order    []int32
	level    []int32
	done     []int32
	taken    []int
	seen     map[uint64]bool
}

func (t *table) at(r rect) int32 { return t.worth[int(r.i)*t.ny+int(r.j)] }

func (t *table) whole() rect { return rect{int16(t.nx - 1), int16(t.ny - 1)} }

// split returns what lies beyond the piece in the part with it, and the other part.
func (t *table) split(r rect, p int32, first way) (over, rest rect) {
	a, b := t.px[p], t.py[p]
	i := int16(t.x.Below(t.x.At[r.i] - t.x.At[a]))
	j := int16(t.y.Below(t.y.At[r.j] - t.y.At[b]))
	if first == acrossX {
		return rect{int16(a), j}, rect{i, r.j}
	}
	return rect{i, int16(b)}, rect{r.i, j}
}

// token is a number for a rectangle or piece; their sum tells sets apart.
func token(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9
	x = (x ^ (x >> 27)) * 0x94d049bb133111eb
	return x ^ (x >> 31)
}

func (r rect) token() uint64 { return token(uint64(r.i)<<20 | uint64(r.j) | 1<<40) }

// search returns fillings worth more than the question's floor. Of partial ones only
// those go on that may come above floor in the table's values.
func (b *beam) search(t *table, q Question, width int, floor int64, meter *work.Meter) []*ceiling.Parcel {
	b.t = t
	low := int32(max(-1, min(floor>>t.shift, math.MaxInt32-1)))
	b.partials, b.rects, b.done = b.partials[:0], append(b.rects[:0], t.whole()), b.done[:0]
	b.partials = append(b.partials, partial{parent: -1, piece: -1, many: 1, potential: t.at(t.whole())})
	b.level = append(b.level[:0], 0)
	b.seen = map[uint64]bool{}
	b.taken = slices.Grow(b.taken[:0], len(q.Left))[:len(q.Left)]
	clear(b.taken)
	for len(b.level) > 0 {
		b.children = b.children[:0]
		for _, s := range b.level {
			b.expand(s, q.Left, low)
		}
		if !meter.Take(int64(len(b.level)*len(t.pieces)*8 + len(b.children)*16)) {
			break
		}
		b.choose(width, low)
	}
	return b.best(q)
}

// count adds n for every piece of a partial filling.
func (b *beam) count(s int32, n int) {
	for ; s >= 0; s = b.partials[s].parent {
		if p := b.partials[s].piece; p >= 0 {
			b.taken[b.t.pieces[p].Kind] += n
		}
	}
}

// expand lists the ways to go on from a partial filling.
func (b *beam) expand(at int32, left []int, low int32) {
	t, s := b.t, b.partials[at]
	b.count(at, 1)
	r := b.rects[s.open]
	base, rest := s.potential-t.at(r), s.hash-r.token()
	if base > low {
		b.children = append(b.children, child{parent: at, piece: -1, value: s.value, potential: base, hash: rest})
	}
	for p := range t.pieces {
		if int16(t.px[p]) > r.i || int16(t.py[p]) > r.j || t.value[p] == 0 || b.taken[t.pieces[p].Kind] >= left[t.pieces[p].Kind] {
			continue
		}
		for first := acrossX; first <= acrossY; first++ {
			if first == acrossY && (int16(t.px[p]) == r.i || int16(t.py[p]) == r.j) {
				continue // the same
			}
			over, beside := t.split(r, int32(p), first)
			pot := base + t.value[p] + t.at(over) + t.at(beside)
			if pot <= low {
				continue
			}
			h := rest + token(uint64(p))
			for _, o := range []rect{over, beside} {
				if t.at(o) > 0 {
					h += o.token()
				}
			}
			b.children = append(b.children, child{at, int32(p), first, s.value + t.value[p], pot, h})
		}
	}
	b.count(at, -1)
}

// bins is the number of classes that children are put in by their potential.
const bins = 256

// choose makes the children that may be worth most the next level, each set of
// pieces and open rectangles once.
func (b *beam) choose(width int, low int32) {
	b.level = b.level[:0]
	ends := b.sort(low)
	for n := range bins {
		class := b.order[ends[n]:ends[n+1]]
		slices.SortFunc(class, func(i, j int32) int {
			x, y := &b.children[i], &b.children[j]
			if x.potential != y.potential {
				return cmp.Compare(y.potential, x.potential)
			}
			return cmp.Or(cmp.Compare(y.value, x.value), cmp.Compare(x.hash, y.hash), cmp.Compare(i, j))
		})
		for _, i := range class {
			c := &b.children[i]
			if b.seen[c.hash] {
				continue
			}
			b.seen[c.hash] = true
			at := b.make(c)
			if b.partials[at].many == 0 {
				b.done = append(b.done, at)
				continue
			}
			if b.level = append(b.level, at); len(b.level) == width {
				return
			}
		}
	}
}

// sort puts the children in order of their classes and returns where each ends.
func (b *beam) sort(low int32) (ends [bins + 1]int) {
	top := low + 1
	for i := range b.children {
		top = max(top, b.children[i].potential)
	}
	class := func(c *child) int { return int(int64(top-c.potential) * (bins - 1) / int64(top-low)) }
	for i := range b.children {
		ends[class(&b.children[i])+1]++
	}
	for n := range bins {
		ends[n+1] += ends[n]
	}
	b.order = slices.Grow(b.order[:0], len(b.children))[:len(b.children)]
	next := ends
	for i := range b.children {
		n := class(&b.children[i])
		b.order[next[n]] = int32(i)
		next[n]++
	}
	return ends
}

// make makes a child.
func (b *beam) make(c *child) int32 {
	t, p := b.t, b.partials[c.parent]
	s := partial{parent: c.parent, piece: c.piece, at: b.rects[p.open], first: c.first, open: int32(len(b.rects)),
		value: c.value, potential: c.potential, hash: c.hash}
	b.rects = append(b.rects, b.rects[p.open+1:p.open+p.many]...)
	if c.piece >= 0 {
		over, rest := t.split(s.at, c.piece, c.first)
		for _, r := range []rect{over, rest} {
			if t.at(r) > 0 {
				b.rects = slices.Insert(b.rects, int(s.open)+t.place(b.rects[s.open:], r), r)
			}
		}
	}
	s.many = int32(len(b.rects)) - s.open
	b.partials = append(b.partials, s)
	return int32(len(b.partials) - 1)
}

// place returns where r belongs among open rectangles.
func (t *table) place(open []rect, r rect) int {
	area := func(r rect) int64 { return t.x.At[r.i] * t.y.At[r.j] }
	at, _ := slices.BinarySearchFunc(open, r, func(a, b rect) int { return cmp.Compare(area(b), area(a)) })
	return at
}
