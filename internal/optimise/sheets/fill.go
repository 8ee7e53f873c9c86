package sheets

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// lying is a kind as it may lie.
type lying = ceiling.Piece

// sorting is an order in which pieces are tried.
type sorting int

const (
	highest sorting = iota
	widest
	largest
	longestSide
	worthiest // by value per area
	sortings
)

// order lists all kinds in all ways they may lie, in the order of s.
func (m *model) order(s sorting) []lying {
	var out []lying
	for k, kd := range m.kinds {
		out = append(out, lying{Kind: k, X: kd.x, Y: kd.y})
		if kd.turn {
			out = append(out, lying{Kind: k, Turned: true, X: kd.tx, Y: kd.ty})
		}
	}
	density := func(l lying) float64 {
		return float64(m.kinds[l.Kind].value) / (float64(l.X) * float64(l.Y))
	}
	slices.SortStableFunc(out, func(a, b lying) int {
		switch s {
		case widest:
			return cmp.Or(cmp.Compare(b.X, a.X), cmp.Compare(b.Y, a.Y))
		case largest:
			return cmp.Or(cmp.Compare(float64(b.X)*float64(b.Y), float64(a.X)*float64(a.Y)), cmp.Compare(b.Y, a.Y))
		case longestSide:
			return cmp.Or(cmp.Compare(max(b.X, b.Y), max(a.X, a.Y)), cmp.Compare(b.Y, a.Y))
		case worthiest:
			return cmp.Or(cmp.Compare(density(b), density(a)), cmp.Compare(b.Y, a.Y))
		default:
			return cmp.Or(cmp.Compare(b.Y, a.Y), cmp.Compare(b.X, a.X))
		}
	})
	return out
}

// filler fills sheets with strips.
type filler struct {
	m     *model
	order []lying
	value []int64 // of one piece of each kind
	tries int     // heights tried for each strip
	steps int64
	// guide, if set, chooses what goes into each sheet with knapsacks.
	guide *ceiling.Stages
	// listed, if not zero, is the length of short lists that choose it instead.
	listed int
	meter  *work.Meter
}

// sheet fills one sheet of kind i with pieces that are left, and returns nil if
// nothing fits.
func (f *filler) sheet(i int, left []int) *cover.Pattern {
	if f.listed == 0 && f.guide != nil && len(f.m.stock[i].defects) == 0 && f.m.stages(f.guide, i, f.value, left, false, f.meter) {
		b := bounded{f: *f, guide: f.guide, breath: f.tries, meter: f.meter}
		if p := b.sheet(i, left); p != nil {
			return p
		}
	}
	if f.listed > 0 {
		if _, p, _ := f.m.lists(i, cover.Ask{Left: left, Value: f.value, Price: make([]int64, len(f.m.stock))}, f.listed, f.meter); p != nil {
			return p
		}
	}
	left = slices.Clone(left)
	t := &f.m.stock[i]
	var strips []strip
	for y := int64(0); y < t.y; {
		best, ok := f.bestStrip(t, left, y)
		if !ok {
			next := f.pastDefect(t, y)
			if next <= y {
				break
			}
			y = next
			continue
		}
		for _, c := range best.columns {
			for _, it := range c.items {
				left[it.kind]--
			}
		}
		strips = append(strips, best)
		y = best.at + best.y
	}
	if len(strips) == 0 {
		return nil
	}
	return f.m.laid(i, strips)
}

// pastDefect returns the nearest end of a defect beyond y.
func (f *filler) pastDefect(t *stock, y int64) int64 {
	next := int64(-1)
	for _, d := range t.defects {
		if d.y1 > y && (next < 0 || d.y1 < next) {
			next = d.y1
		}
	}
	return next
}

// bestStrip tries a few heights and returns the strip that is worth most per
// height.
func (f *filler) bestStrip(t *stock, left []int, y int64) (strip, bool) {
	var best strip
	var bestWorth int64
	tried, last := 0, int64(-1)
	for _, l := range f.order {
		if left[l.Kind] == 0 || l.Y > t.y-y || l.X > t.x || l.Y == last {
			continue
		}
		if !f.opens(l) {
			continue
		}
		last = l.Y
		s, worth := f.strip(t, left, y, l)
		if len(s.columns) > 0 && (best.columns == nil || float64(worth)*float64(best.y) > float64(bestWorth)*float64(s.y)) {
			best, bestWorth = s, worth
		}
		if len(s.columns) > 0 {
			if tried++; tried >= f.tries {
				break
			}
		}
	}
	return best, best.columns != nil
}

// opens says whether a piece can stand in a strip at all: a sequence that is
// stacked needs a third stage.
func (f *filler) opens(l lying) bool {
	k := &f.m.kinds[l.Kind]
	if k.uneven && f.m.p.Cutting.Exact {
		return false
	}
	return k.row != problem.Rip || f.m.p.Cutting.Stages != 2
}

// strip fills a strip that is as high as first, beginning with it.
func (f *filler) strip(t *stock, left []int, y int64, first lying) (strip, int64) {
	s := strip{at: y, y: first.Y}
	taken := map[int]int{}
	var worth int64
	x := int64(0)
	for x < t.x {
		l, at, ok := first, x, true
		if len(s.columns) == 0 {
			at, ok = f.clear(t, x, y, first.X, first.Y)
		}
		if len(s.columns) > 0 || !ok {
			l, at, ok = f.next(t, left, taken, s.y, x, y)
		}
		if !ok {
			break
		}
		c := f.column(t, left, taken, s, l, at)
		for _, it := range c.items {
			worth += f.value[it.kind]
		}
		s.columns = append(s.columns, c)
		x = at + l.X
	}
	return s, worth
}

// next returns the first piece in order that fits beside what is there.
func (f *filler) next(t *stock, left []int, taken map[int]int, height, x, y int64) (lying, int64, bool) {
	f.steps += int64(len(f.order))
	for _, l := range f.order {
		if l.Y > height || l.X > t.x-x || left[l.Kind] <= taken[l.Kind] || !f.opens(l) {
			continue
		}
		if f.m.p.Cutting.Exact && f.m.p.Cutting.Stages == 2 && l.Y != height {
			continue
		}
		if at, ok := f.clear(t, x, y, l.X, l.Y); ok {
			return l, at, true
		}
	}
	return lying{}, 0, false
}

// clear returns the first place from x on where a piece lies clear of defects.
func (f *filler) clear(t *stock, x, y, dx, dy int64) (int64, bool) {
	for moved := true; moved; {
		moved = false
		for _, d := range t.defects {
			if x < d.x1 && d.x0 < x+dx-f.m.kerf && y < d.y1 && d.y0 < y+dy-f.m.kerf {
				x, moved = d.x1, true
			}
		}
	}
	return x, x+dx <= t.x
}

// column begins with l and stacks on it what fits.
func (f *filler) column(t *stock, left []int, taken map[int]int, s strip, l lying, at int64) column {
	c := column{at: at, x: l.X}
	put := func(l lying, y int64) {
		c.items = append(c.items, item{l.Kind, l.Turned, l.X, l.Y, y})
		taken[l.Kind]++
	}
	put(l, 0)
	if f.m.p.Cutting.Stages == 2 || f.m.kinds[l.Kind].row == problem.Crosscut {
		return c
	}
	for y := l.Y; y < s.y; {
		f.steps += int64(len(f.order))
		i := slices.IndexFunc(f.order, func(n lying) bool {
			if n.Y > s.y-y || n.X > l.X || left[n.Kind] <= taken[n.Kind] || f.m.kinds[n.Kind].row != problem.Any {
				return false
			}
			if f.m.p.Cutting.Exact && f.m.p.Cutting.Stages == 3 && n.X != l.X {
				return false
			}
			x, ok := f.clear(t, at, s.at+y, n.X, n.Y)
			return ok && x == at
		})
		if i < 0 {
			break
		}
		put(f.order[i], y)
		y += f.order[i].Y
	}
	return c
}
