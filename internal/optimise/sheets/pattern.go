package sheets

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/coarse"
	"scantling/internal/optimise/cover"
)

// item is one piece in a column, at y from the strip's near side.
type item struct {
	kind   int
	turned bool
	x, y   int64 // size as it lies
	at     int64
}

// column is a stack of pieces in a strip, at x from the sheet's near side, as
// wide as its first piece.
type column struct {
	at, x int64
	items []item
}

// strip is a row of columns at y from the sheet's near side, as high as its
// highest column.
type strip struct {
	at, y   int64
	columns []column
}

// staged is the filling of a sheet with strips, in the axes of its model.
type staged struct {
	m      *model
	strips []strip
}

// newPattern returns the pattern of a staged filling.
func (m *model) newPattern(stock int, strips []strip) *cover.Pattern {
	var entries []cover.Entry
	for _, s := range strips {
		for _, c := range s.columns {
			for _, it := range c.items {
				entries = append(entries, cover.Entry{Kind: it.kind, N: 1})
			}
		}
	}
	return cover.NewPattern(stock, entries, &staged{m, strips})
}

// uses counts the pieces of strips by kind.
func uses(strips []strip, kinds int) []int {
	used := make([]int, kinds)
	for _, s := range strips {
		for _, c := range s.columns {
			for _, it := range c.items {
				used[it.kind]++
			}
		}
	}
	return used
}

// worth returns what the pieces of a pattern are worth at the given values.
func worth(p *cover.Pattern, value []int64) int64 {
	var sum int64
	for _, e := range p.Use {
		sum += value[e.Kind] * int64(e.N)
	}
	return sum
}

// stripped returns the pattern of strips in true sizes, or nil if they do not fit.
func (m *model) stripped(stock int, list []ceiling.Strip) *cover.Pattern {
	if m.exact != m {
		t := &m.exact.stock[stock]
		if list = coarse.True(m.truly).Strips(list, t.x, t.y); list == nil {
			return nil
		}
		m = m.exact
	}
	var strips []strip
	y := int64(0)
	for _, row := range list {
		s := strip{at: y}
		x := int64(0)
		for _, stack := range row {
			c := column{at: x, x: stack[0].X}
			top := int64(0)
			for _, l := range stack {
				c.items = append(c.items, item{l.Kind, l.Turned, l.X, l.Y, top})
				top += l.Y
			}
			s.columns = append(s.columns, c)
			s.y = max(s.y, top)
			x += c.x
		}
		strips = append(strips, s)
		y += s.y
	}
	return m.newPattern(stock, strips)
}
