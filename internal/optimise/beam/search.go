package beam

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// search places one piece after the other, at the front of what is placed: on the
// present column, beside it, in a new strip, on a new sheet. Of all partial
// plans with the same number of pieces it keeps the most promising ones (beam
// search with guides after Fontan and Libralesso, "An anytime tree search
// algorithm for two-dimensional two- and three-staged guillotine packing
// problems", arXiv:2004.02603, 2020).
type search struct {
	q      Question
	width  int
	guide  Guide
	view   *Outlook
	pieces []ceiling.Piece
	// by kind
	area  []float64
	token []uint64
	meter *work.Meter
	full  float64 // area of a sheet
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
	piece ceiling.Piece
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

func newSearch(q Question, width int, guide Guide, view *Outlook, meter *work.Meter) *search {
	b := &search{q: q, width: width, guide: guide, view: view, meter: meter}
	b.full = float64(q.X) * float64(q.Y)
	b.area = make([]float64, len(q.Left))
	h := uint64(88172645463325252)
	for range q.Left {
		h ^= h << 13
		h ^= h >> 7
		h ^= h << 17
		b.token = append(b.token, h)
	}
	for _, l := range q.Pieces {
		b.area[l.Kind] = float64(l.X) * float64(l.Y)
		if l.X <= q.X && l.Y <= q.Y {
			b.pieces = append(b.pieces, l)
		}
	}
	return b
}

// run returns the best complete plan, or the best sheet where one is asked for;
// its parent is nil where nothing was placed.
func (b *search) run() *partial {
	root := &partial{left: make([]int16, len(b.q.Left)), sheet: -1}
	total := 0
	for k, n := range b.q.Left {
		root.left[k] = int16(min(n, 1<<14))
		total += int(root.left[k])
	}
	if b.q.One {
		root.sheet = 0
	}
	level := []*partial{root}
	best := root
	var children []child
	for range total {
		children = children[:0]
		for _, p := range level {
			if !b.meter.Take(int64(4 * len(b.pieces))) {
				return best
			}
			children = b.expand(p, children)
		}
		if len(children) == 0 {
			break
		}
		level = b.choose(children)
		if b.q.One {
			for _, p := range level {
				if p.worth > best.worth {
					best = p
				}
			}
		}
	}
	if b.q.One {
		return best
	}
	if len(level) == 0 || level[0].count < total {
		return nil
	}
	return level[0]
}

// expand lists the ways to place one more piece.
func (b *search) expand(p *partial, out []child) []child {
	t := &b.q
	had := len(out)
	two, exact := b.q.Rules.Two, b.q.Rules.Exact
	for i, l := range b.pieces {
		if p.left[l.Kind] == 0 {
			continue
		}
		if p.count > 0 {
			// On the column: the strip may grow, the column too.
			if y := p.yc + l.Y; !two && y <= t.Y && p.x0+l.X <= t.X && (!exact || p.x0+l.X == p.x1) && b.sorted(p, l) {
				f := p.front
				f.yc, f.y1, f.x1 = y, max(f.y1, y), max(f.x1, f.x0+l.X)
				out = append(out, b.child(p, f, i, onTop, p.sheet))
			}
			if y := p.y0 + l.Y; p.x1+l.X <= t.X && y <= t.Y && (!exact || !two || y == p.y1) {
				f := front{y0: p.y0, y1: max(p.y1, y), x0: p.x1, x1: p.x1 + l.X, yc: y}
				out = append(out, b.child(p, f, i, beside, p.sheet))
			}
		}
		if (p.count > 0 || b.q.One) && p.y1+l.Y <= t.Y {
			f := front{y0: p.y1, y1: p.y1 + l.Y, x1: l.X, yc: p.y1 + l.Y}
			out = append(out, b.child(p, f, i, inStrip, p.sheet))
		}
	}
	if len(out) > had || b.q.One || p.sheet+1 >= b.q.Most {
		return out
	}
	for i, l := range b.pieces {
		if p.left[l.Kind] > 0 {
			out = append(out, b.child(p, front{y1: l.Y, x1: l.X, yc: l.Y}, i, onSheet, p.sheet+1))
		}
	}
	return out
}

// sorted keeps the pieces of a column in falling order of width, so that each
// column is made once.
func (b *search) sorted(p *partial, l ceiling.Piece) bool { return l.X <= p.piece.X }

func (b *search) child(p *partial, f front, i int, how place, sheet int) child {
	t := &b.q
	l := b.pieces[i]
	items := p.items + b.area[l.Kind]
	// The area that is given up: sheets, strips, columns, and the column.
	used := float64(float64(sheet)*b.full) + float64(float64(t.X)*float64(f.y0)) +
		float64(float64(f.x0)*float64(f.y1-f.y0)) + float64(float64(f.x1-f.x0)*float64(f.yc-f.y0))
	c := child{parent: p, front: f, lying: i, how: how, sheet: sheet, hash: p.hash + b.token[l.Kind]}
	if b.view != nil {
		loss := b.view.Worth() - p.gain - b.view.value[l.Kind] - b.view.beyond(f)
		c.score = float64(loss)
		if b.guide == LossPerArea {
			c.score /= used
		}
		return c
	}
	if b.q.One {
		worth := float64(p.worth + b.q.Value[l.Kind])
		c.score = used / max(worth, 1e-9)
		if b.guide == Large {
			c.score *= 0.1 + (used-items)/used
		}
		return c
	}
	c.score = (used - items) / used
	if b.guide == Large {
		c.score = (0.02 + c.score) / (items / float64(p.count+1))
	} else if b.guide == Larger {
		c.score = (0.1 + c.score) / (items / float64(p.count+1))
	}
	return c
}

// choose makes the most promising children, no two of them with the same pieces
// unless neither front is behind the other.
func (b *search) choose(children []child) []*partial {
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

func (b *search) make(c *child) *partial {
	l := b.pieces[c.lying]
	left := slices.Clone(c.parent.left)
	left[l.Kind]--
	gain := c.parent.gain
	if b.view != nil {
		gain += b.view.value[l.Kind]
	}
	return &partial{
		gain: gain, parent: c.parent, front: c.front, sheet: c.sheet, left: left, piece: l, how: c.how, hash: c.hash,
		items: c.parent.items + b.area[l.Kind], worth: c.parent.worth + b.q.Value[l.Kind], count: c.parent.count + 1,
	}
}

// plan turns a partial plan into strips, sheet by sheet.
func (b *search) plan(p *partial) [][]ceiling.Strip {
	var chain []*partial
	for ; p.parent != nil; p = p.parent {
		chain = append(chain, p)
	}
	slices.Reverse(chain)
	var sheets [][]ceiling.Strip
	for i, q := range chain {
		if i == 0 || q.how == onSheet {
			sheets = append(sheets, nil)
		}
		sheet := &sheets[len(sheets)-1]
		if q.how == onSheet || q.how == inStrip {
			*sheet = append(*sheet, nil)
		}
		strip := &(*sheet)[len(*sheet)-1]
		if q.how != onTop {
			*strip = append(*strip, nil)
		}
		column := &(*strip)[len(*strip)-1]
		*column = append(*column, q.piece)
	}
	return sheets
}
