package sheets

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// beam places one piece after the other, at the front of what is placed: on the
// present column, beside it, in a new strip, on a new sheet. Of all partial
// plans with the same number of pieces it keeps the most promising ones (beam
// search with guides after Fontan and Libralesso, "An anytime tree search
// algorithm for two-dimensional two- and three-staged guillotine packing
// problems", arXiv:2004.02603, 2020).
type beam struct {
	m     *model
	width int
	guide int // 0: waste; 1: waste, large pieces first; 3 and 4: what an outlook loses
	view  *outlook
	lying []lying
	// by kind
	area  []float64
	value []int64
	token []uint64
	meter *work.Meter
	full  float64 // area of a sheet
	goal  problem.Goal
	most  int // sheets that a better plan may use
}

// front is where the next piece goes, in the present sheet.
type front struct {
	y0, y1 int64 // the present strip
	x0, x1 int64 // the present column
	yc     int64 // its top
}

// place says where a piece was put.
type place int8

const (
	onSheet place = iota // first on a new sheet
	inStrip              // first in a new strip
	beside               // first in a new column
	onTop                // on the present column
)

// partial is a partial plan.
type partial struct {
	parent *partial
	front
	sheet int
	left  []int16
	item  item
	how   place
	items float64 // area placed
	worth int64
	gain  int64 // at the outlook's values
	hash  uint64
	count int
}

// child is a partial plan that may be made.
type child struct {
	parent *partial
	front
	lying int
	how   place
	sheet int
	score float64
	hash  uint64
}

func newBeam(m *model, width, guide int, most int, meter *work.Meter) *beam {
	b := &beam{m: m, width: width, guide: guide, meter: meter, goal: m.p.Goal, most: most}
	b.full = float64(m.stock[0].x) * float64(m.stock[0].y)
	h := uint64(88172645463325252)
	for k, kd := range m.kinds {
		b.area = append(b.area, float64(kd.x)*float64(kd.y))
		h ^= h << 13
		h ^= h >> 7
		h ^= h << 17
		b.token = append(b.token, h)
		b.value = append(b.value, kd.value)
		_ = k
	}
	for _, l := range m.order(largest) {
		if l.X <= m.stock[0].x && l.Y <= m.stock[0].y {
			b.lying = append(b.lying, l)
		}
	}
	return b
}

// run returns the best complete plan, or under MostValue the best sheet.
func (b *beam) run() (*partial, bool) {
	root := &partial{left: make([]int16, len(b.m.kinds)), sheet: -1}
	total := 0
	for k := range b.m.kinds {
		root.left[k] = int16(min(b.m.kinds[k].d, 1<<14))
		total += int(root.left[k])
	}
	if b.goal == problem.MostValue {
		root.sheet = 0
	}
	level := []*partial{root}
	best := root
	var children []child
	for range total {
		children = children[:0]
		for _, p := range level {
			if !b.meter.Take(int64(4 * len(b.lying))) {
				return best, false
			}
			children = b.expand(p, children)
		}
		if len(children) == 0 {
			break
		}
		level = b.choose(children)
		if b.goal == problem.MostValue {
			for _, p := range level {
				if p.worth > best.worth {
					best = p
				}
			}
		}
	}
	if b.goal == problem.MostValue {
		return best, true
	}
	if len(level) == 0 || level[0].count < total {
		return nil, true
	}
	return level[0], true
}

// expand lists the ways to place one more piece.
func (b *beam) expand(p *partial, out []child) []child {
	t := &b.m.stock[0]
	had := len(out)
	stages, exact := b.m.p.Cutting.Stages, b.m.p.Cutting.Exact
	for i, l := range b.lying {
		if p.left[l.Kind] == 0 {
			continue
		}
		if p.count > 0 {
			// On the column: the strip may grow, the column too.
			if y := p.yc + l.Y; stages != 2 && y <= t.y && p.x0+l.X <= t.x && (!exact || p.x0+l.X == p.x1) && b.sorted(p, l) {
				f := p.front
				f.yc, f.y1, f.x1 = y, max(f.y1, y), max(f.x1, f.x0+l.X)
				out = append(out, b.child(p, f, i, onTop, p.sheet))
			}
			if y := p.y0 + l.Y; p.x1+l.X <= t.x && y <= t.y && (!exact || stages != 2 || y == p.y1) {
				f := front{y0: p.y0, y1: max(p.y1, y), x0: p.x1, x1: p.x1 + l.X, yc: y}
				out = append(out, b.child(p, f, i, beside, p.sheet))
			}
		}
		if (p.count > 0 || b.goal == problem.MostValue) && p.y1+l.Y <= t.y {
			f := front{y0: p.y1, y1: p.y1 + l.Y, x1: l.X, yc: p.y1 + l.Y}
			out = append(out, b.child(p, f, i, inStrip, p.sheet))
		}
	}
	if len(out) > had || b.goal == problem.MostValue || p.sheet+1 >= b.most {
		return out
	}
	for i, l := range b.lying {
		if p.left[l.Kind] > 0 {
			out = append(out, b.child(p, front{y1: l.Y, x1: l.X, yc: l.Y}, i, onSheet, p.sheet+1))
		}
	}
	return out
}

// sorted keeps the pieces of a column in falling order of width, so that each
// column is made once.
func (b *beam) sorted(p *partial, l lying) bool { return l.X <= p.item.x }

func (b *beam) child(p *partial, f front, i int, how place, sheet int) child {
	t := &b.m.stock[0]
	l := b.lying[i]
	items := p.items + b.area[l.Kind]
	// The area that is given up: sheets, strips, columns, and the column.
	used := float64(float64(sheet)*b.full) + float64(float64(t.x)*float64(f.y0)) +
		float64(float64(f.x0)*float64(f.y1-f.y0)) + float64(float64(f.x1-f.x0)*float64(f.yc-f.y0))
	c := child{parent: p, front: f, lying: i, how: how, sheet: sheet, hash: p.hash + b.token[l.Kind]}
	if b.view != nil {
		loss := b.view.Worth() - p.gain - b.view.value[l.Kind] - b.view.beyond(f)
		c.score = float64(loss)
		if b.guide == 4 {
			c.score /= used
		}
		return c
	}
	if b.goal == problem.MostValue {
		worth := float64(p.worth + b.value[l.Kind])
		c.score = used / max(worth, 1e-9)
		if b.guide == 1 {
			c.score *= 0.1 + (used-items)/used
		}
		return c
	}
	c.score = (used - items) / used
	if b.guide == 1 {
		c.score = (0.02 + c.score) / (items / float64(p.count+1))
	} else if b.guide == 2 {
		c.score = (0.1 + c.score) / (items / float64(p.count+1))
	}
	return c
}

// choose makes the most promising children, no two of them with the same pieces
// unless neither front is behind the other.
func (b *beam) choose(children []child) []*partial {
	order := make([]int32, len(children))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(i, j int32) int {
		a, c := &children[i], &children[j]
		return cmp.Or(cmp.Compare(a.score, c.score), cmp.Compare(i, j))
	})
	seen := map[uint64][]*partial{}
	var out []*partial
	for _, i := range order {
		c := &children[i]
		same := seen[c.hash]
		if slices.ContainsFunc(same, func(q *partial) bool { return q.ahead(c) }) {
			continue
		}
		p := b.make(c)
		seen[c.hash] = append(same, p)
		if out = append(out, p); len(out) == b.width {
			break
		}
	}
	b.meter.Take(int64(len(children)) * 60)
	return out
}

// ahead says whether p, with the same pieces as c, leaves at least as much.
func (p *partial) ahead(c *child) bool {
	if p.sheet != c.sheet {
		return p.sheet < c.sheet
	}
	if p.y1 <= c.y0 {
		return true
	}
	return p.y0 <= c.y0 && p.y1 <= c.y1 && p.x0 <= c.x0 && p.x1 <= c.x1 && p.yc <= c.yc
}

func (b *beam) make(c *child) *partial {
	l := b.lying[c.lying]
	left := slices.Clone(c.parent.left)
	left[l.Kind]--
	it := item{kind: l.Kind, turned: l.Turned, x: l.X, y: l.Y, at: c.yc - l.Y - c.y0}
	gain := c.parent.gain
	if b.view != nil {
		gain += b.view.value[l.Kind]
	}
	return &partial{
		gain: gain, parent: c.parent, front: c.front, sheet: c.sheet, left: left, item: it, how: c.how, hash: c.hash,
		items: c.parent.items + b.area[l.Kind], worth: c.parent.worth + b.value[l.Kind], count: c.parent.count + 1,
	}
}

// plan turns a partial plan into patterns.
func (b *beam) plan(p *partial) []cover.Use {
	var chain []*partial
	for ; p.parent != nil; p = p.parent {
		chain = append(chain, p)
	}
	slices.Reverse(chain)
	var uses []cover.Use
	var strips []strip
	flush := func() {
		if strips != nil {
			uses = append(uses, cover.Use{Pattern: b.m.newPattern(0, strips), N: 1})
			strips = nil
		}
	}
	for _, q := range chain {
		switch q.how {
		case onSheet:
			flush()
			strips = append(strips, strip{at: 0})
			fallthrough
		case inStrip:
			if q.how == inStrip {
				strips = append(strips, strip{at: q.y0})
			}
			fallthrough
		case beside:
			s := &strips[len(strips)-1]
			s.columns = append(s.columns, column{at: q.x0})
		}
		s := &strips[len(strips)-1]
		c := &s.columns[len(s.columns)-1]
		c.items = append(c.items, q.item)
		c.x = max(c.x, q.x1-q.x0)
		s.y = max(s.y, q.y1-q.y0)
	}
	flush()
	return uses
}
