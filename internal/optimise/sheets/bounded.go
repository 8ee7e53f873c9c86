package sheets

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// bounded fills a sheet strip by strip, each strip by a knapsack over its
// columns that makes nothing too often, the heights guided by a ceiling.
type bounded struct {
	f      filler
	guide  *ceiling.Stages
	breath int // heights tried for each strip
	meter  *work.Meter
}

// sheet returns a filling of stock i, or nil.
func (b *bounded) sheet(i int, left []int) *cover.Pattern {
	strips := b.strips(i, left)
	if strips == nil {
		return nil
	}
	return b.f.m.laid(i, strips)
}

// strips returns the strips of a filling, or nil.
func (b *bounded) strips(i int, left []int) []strip {
	t := &b.f.m.stock[i]
	left = slices.Clone(left)
	var strips []strip
	for y := int64(0); y < t.y; {
		var best strip
		bestScore := int64(-1)
		for _, h := range b.guide.Promising(t.y-y, b.breath) {
			s, worth := b.strip(t, left, y, h)
			if s.columns == nil {
				continue
			}
			// The strip may turn out lower than planned.
			if score := worth + b.guide.Sheet[t.y-y-s.y]; score > bestScore {
				best, bestScore = s, score
			}
			if b.meter.Ended() {
				return nil
			}
		}
		if best.columns == nil {
			break
		}
		for _, c := range best.columns {
			for _, it := range c.items {
				left[it.kind]--
			}
		}
		strips = append(strips, best)
		y += best.y
	}
	return strips
}

// strip fills a strip of height h.
func (b *bounded) strip(t *stock, left []int, y, h int64) (strip, int64) {
	f := &b.f
	taken := map[int]int{}
	s := strip{at: y, y: h}
	stacks := b.stacks(t, left, y, h)
	chosen := b.knapsack(stacks, left, t.x)
	var worth, x int64
	for _, l := range chosen {
		if left[l.Kind] <= taken[l.Kind] {
			continue
		}
		c := f.column(t, left, taken, s, l, x)
		s.columns = append(s.columns, c)
		x += l.X
	}
	for x < t.x {
		l, at, ok := f.next(t, left, taken, h, x, y)
		if !ok {
			break
		}
		s.columns = append(s.columns, f.column(t, left, taken, s, l, at))
		x = at + l.X
	}
	s.y = 0
	for _, c := range s.columns {
		top := c.items[len(c.items)-1]
		s.y = max(s.y, top.at+top.y)
		for _, it := range c.items {
			worth += f.value[it.kind]
		}
	}
	if f.m.p.Cutting.Exact {
		s.y = h
	}
	return s, worth
}

// stack is a column that could stand in a strip.
type stack struct {
	l     lying
	value int64
	most  int
}

func (b *bounded) stacks(t *stock, left []int, y, h int64) []stack {
	f := &b.f
	var out []stack
	for _, l := range f.order {
		if left[l.Kind] == 0 || l.Y > h || l.X > t.x || !f.opens(l) {
			continue
		}
		if f.m.p.Cutting.Exact && f.m.p.Cutting.Stages == 2 && l.Y != h {
			continue
		}
		s := stack{l: l, value: f.value[l.Kind], most: left[l.Kind]}
		if l.Y < h && f.m.p.Cutting.Stages != 2 {
			taken := map[int]int{}
			c := f.column(t, left, taken, strip{at: y, y: h}, l, 0)
			s.value = 0
			for _, it := range c.items {
				s.value += f.value[it.kind]
			}
			for k, n := range taken {
				s.most = min(s.most, left[k]/n)
			}
		}
		if s.value > 0 {
			out = append(out, s)
		}
	}
	return out
}

// knapsack returns the columns worth most within room, each kind of column as
// often as its pieces are left. Columns that share pieces are seen to by the
// caller.
func (b *bounded) knapsack(stacks []stack, left []int, room int64) []lying {
	type pack struct {
		stack, n int
		x, v     int64
	}
	var packs []pack
	for i, s := range stacks {
		most := min(int64(s.most), room/s.l.X)
		for n := int64(1); most > 0; n *= 2 {
			n = min(n, most)
			packs = append(packs, pack{i, int(n), n * s.l.X, n * s.value})
			most -= n
		}
	}
	if !b.meter.Take(int64(len(packs)+1) * room) {
		return nil
	}
	best := make([]int64, room+1)
	taken := make([][]bool, len(packs))
	for i, p := range packs {
		taken[i] = make([]bool, room+1)
		for x := room; x >= p.x; x-- {
			if v := best[x-p.x] + p.v; v > best[x] {
				best[x] = v
				taken[i][x] = true
			}
		}
	}
	var out []lying
	for i, x := len(packs)-1, room; i >= 0; i-- {
		if taken[i][x] {
			x -= packs[i].x
			for range packs[i].n {
				out = append(out, stacks[packs[i].stack].l)
			}
		}
	}
	slices.Reverse(out)
	return out
}

// stagedOnly says whether the problem's stages are those of strips.
func stagedOnly(p problem.Problem) bool { return p.Cutting.Stages != 0 }
