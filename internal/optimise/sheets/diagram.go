package sheets

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/sawing"
)

// block returns a block with the model's axes.
func (m *model) sized(x, y int64, d problem.Direction, kids []sawing.Kid) *sawing.Block {
	b := &sawing.Block{Length: x, Width: y, Direction: m.direction(d), Kids: kids}
	if m.swapped {
		b.Length, b.Width = y, x
	}
	return b
}

// filling is how the pieces of a pattern lie.
type filling interface {
	// block returns the filling as nested blocks, sawn in a way.
	block(stock int, pick picks, w way) *sawing.Block
	// without returns the filling less the pieces that are worth least
	// together, or nil when nothing is left.
	without(stock int) *cover.Pattern
}

// way is an order of sawing that may feed larger pieces than the usual one.
type way struct {
	// small cuts small pieces off first, so that what stays at the saw stays long.
	small bool
	// wide leaves the last column of each strip as wide as the saw takes, if there is
	// room, and trims its pieces one by one.
	wide bool
}

// ways lists the orders that are tried, the usual one first.
func (m *model) ways() []way {
	out := []way{{}, {small: true}}
	if m.p.Feed.Short > 0 && m.p.Cutting.Stages != 2 && !m.p.Cutting.Exact {
		out = append(out, way{wide: true}, way{small: true, wide: true})
	}
	return out
}

// picks hands out where the pieces of a kind come from.
type picks func(kind int) source

func (f *staged) block(stock int, pick picks, w way) *sawing.Block {
	m := f.m
	t := &m.stock[stock]
	strips := slices.Clone(f.strips)
	free := len(t.defects) == 0
	if free {
		slices.SortStableFunc(strips, func(a, b strip) int { return cmp.Compare(b.y, a.y) })
		at := int64(0)
		for i := range strips {
			strips[i].at = at
			at += strips[i].y
		}
	}
	var kids []sawing.Kid
	for _, s := range strips {
		columns := slices.Clone(s.columns)
		if free {
			slices.SortStableFunc(columns, func(a, b column) int {
				if w.small {
					a, b = b, a
				}
				return cmp.Compare(b.x, a.x)
			})
			at := int64(0)
			for i := range columns {
				columns[i].at = at
				at += columns[i].x
			}
			if last := &columns[len(columns)-1]; w.wide && m.kinds[last.items[0].kind].row == problem.Any {
				last.x = max(last.x, min(t.x-last.at, int64((m.p.Feed.Short+m.scale-1)/m.scale)+m.kerf))
			}
		}
		var inner []sawing.Kid
		for _, c := range columns {
			inner = append(inner, m.columnKids(c, s.y, pick)...)
		}
		kids = append(kids, sawing.Kid{At: s.at, Block: m.sized(t.x, s.y, problem.Crosscut, inner)})
	}
	return m.sized(t.x, t.y, problem.Rip, kids)
}

// columnKids returns a column of height y as kids of its strip. A sequence along
// the strip becomes a kid for each part.
func (m *model) columnKids(c column, y int64, pick picks) []sawing.Kid {
	if len(c.items) == 1 {
		it := c.items[0]
		src := pick(it.kind)
		if m.kinds[it.kind].row == problem.Crosscut {
			var kids []sawing.Kid
			at := c.at
			for _, i := range m.p.Sequences[src.sequence].Parts {
				px, py := m.axes(m.p.Parts[i].Size)
				kids = append(kids, sawing.Kid{At: at, Block: m.within(m.part(i, false, px, py), px, y)})
				at += px
			}
			return kids
		}
		if m.kinds[it.kind].row == problem.Any {
			return []sawing.Kid{{At: c.at, Block: m.within(m.part(src.part, m.turned(src.part, it.x, it.y), it.x, it.y), c.x, y)}}
		}
		return []sawing.Kid{{At: c.at, Block: m.sized(c.x, y, problem.Rip, m.rowKids(src.sequence, c.x, 0))}}
	}
	var stack []sawing.Kid
	for _, it := range c.items {
		src := pick(it.kind)
		if m.kinds[it.kind].row == problem.Rip {
			stack = append(stack, m.rowKids(src.sequence, c.x, it.at)...)
			continue
		}
		stack = append(stack, sawing.Kid{At: it.at, Block: m.within(m.part(src.part, m.turned(src.part, it.x, it.y), it.x, it.y), c.x, it.y)})
	}
	return []sawing.Kid{{At: c.at, Block: m.sized(c.x, y, problem.Rip, stack)}}
}

// rowKids stacks the parts of a sequence in a column of width x.
func (m *model) rowKids(sequence int, x, at int64) []sawing.Kid {
	var kids []sawing.Kid
	for _, i := range m.p.Sequences[sequence].Parts {
		px, py := m.axes(m.p.Parts[i].Size)
		kids = append(kids, sawing.Kid{At: at, Block: m.within(m.part(i, false, px, py), x, py)})
		at += py
	}
	return kids
}

// turned says whether part i lies across the length when it lies x by y.
func (m *model) turned(i int, x, y int64) bool {
	px, py := m.axes(m.p.Parts[i].Size)
	return px != x || py != y
}

func (m *model) part(i int, turned bool, x, y int64) *sawing.Block {
	if m.swapped {
		x, y = y, x
	}
	return sawing.Part(i, turned, x, y)
}

// within places b in a rectangle, dividing y first.
func (m *model) within(b *sawing.Block, x, y int64) *sawing.Block {
	if m.swapped {
		x, y = y, x
	}
	return sawing.Place(b, x, y, m.direction(problem.Rip))
}

// tree builds the cuts of a pattern in the first order that feeds no piece that
// is too small. dealt holds the sources of its pieces, beside p.Use.
func (m *model) tree(p *cover.Pattern, dealt [][]source) (*problem.Node, bool) {
	s := m.p.Stock[m.stock[p.Stock].index]
	f := sawing.Frame{
		Origin: problem.Point{Along: s.Trim.Start, Across: s.Trim.Low},
		Scale:  m.scale, Kerf: m.p.Kerf, Useful: m.p.Useful, Form: problem.Sheets,
	}
	var root *problem.Node
	for _, w := range m.ways() {
		hands := slices.Clone(dealt)
		pick := func(kind int) source {
			i, _ := slices.BinarySearchFunc(p.Use, kind, func(e cover.Entry, k int) int { return cmp.Compare(e.Kind, k) })
			src := hands[i][0]
			hands[i] = hands[i][1:]
			return src
		}
		root = f.Tree(p.Filling.(filling).block(p.Stock, pick, w), s.Usable(problem.Sheets))
		if sawing.Feeds(root, m.p.Feed, problem.Sheets) {
			return root, true
		}
	}
	return root, false
}

// feedable takes the smallest pieces out of a pattern until it can be sawn, and
// returns nil if nothing is left.
func (m *model) feedable(p *cover.Pattern) *cover.Pattern {
	if m.p.Feed == (problem.Feed{}) {
		return p
	}
	for p != nil && len(p.Use) > 0 {
		dealt := make([][]source, len(p.Use))
		for i, e := range p.Use {
			dealt[i] = slices.Repeat(m.kinds[e.Kind].sources[:1], e.N)
		}
		if _, ok := m.tree(p, dealt); ok {
			return p
		}
		p = p.Filling.(filling).without(p.Stock)
	}
	return nil
}

// without leaves out the column whose pieces are worth least.
func (f *staged) without(stock int) *cover.Pattern {
	worst, from, at := int64(-1), 0, 0
	for i, s := range f.strips {
		for j, c := range s.columns {
			var worth int64
			for _, it := range c.items {
				worth += f.m.kinds[it.kind].value
			}
			if worst < 0 || worth < worst {
				worst, from, at = worth, i, j
			}
		}
	}
	strips := slices.Clone(f.strips)
	strips[from].columns = slices.Delete(slices.Clone(strips[from].columns), at, at+1)
	if len(strips[from].columns) == 0 {
		strips = slices.Delete(strips, from, from+1)
	}
	return f.m.newPattern(stock, strips)
}

// diagrams hands the parts out to the patterns and builds their cuts.
func (m *model) diagrams(uses []cover.Use) []problem.Diagram {
	queues := make([][]source, len(m.kinds))
	for k := range m.kinds {
		queues[k] = slices.Clone(m.kinds[k].sources)
	}
	var out []problem.Diagram
	for _, u := range uses {
		for n := u.N; n > 0; {
			run := n
			for _, e := range u.Pattern.Use {
				run = min(run, queues[e.Kind][0].quantity/e.N)
			}
			run = max(run, 1)
			root, _ := m.tree(u.Pattern, deal(u.Pattern, queues, run))
			out = append(out, problem.Diagram{Stock: m.stock[u.Pattern.Stock].index, Copies: run, Root: root})
			n -= run
		}
	}
	return out
}

// deal takes the pieces for run sheets of pattern p off the queues.
func deal(p *cover.Pattern, queues [][]source, run int) [][]source {
	dealt := make([][]source, len(p.Use))
	for i, e := range p.Use {
		q := &queues[e.Kind]
		for range e.N {
			dealt[i] = append(dealt[i], (*q)[0])
			(*q)[0].quantity -= run
			if (*q)[0].quantity == 0 && len(*q) > 1 {
				*q = (*q)[1:]
			}
		}
	}
	return dealt
}
