package sheets

import (
	"cmp"
	"slices"
)

// entry is a number of pieces of one kind.
type entry struct {
	kind, n int
}

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

// pattern is the filling of one sheet.
type pattern struct {
	stock  int // index in model.stock
	strips []strip
	use    []entry // by kind
	worth  int64   // sum of the values of its pieces
}

// use of a pattern.
type use struct {
	p *pattern
	n int
}

func (m *model) newPattern(stock int, strips []strip) *pattern {
	p := &pattern{stock: stock, strips: strips}
	count := map[int]int{}
	for _, s := range strips {
		for _, c := range s.columns {
			for _, it := range c.items {
				count[it.kind]++
				p.worth += m.kinds[it.kind].value
			}
		}
	}
	for k, n := range count {
		p.use = append(p.use, entry{k, n})
	}
	slices.SortFunc(p.use, func(a, b entry) int { return cmp.Compare(a.kind, b.kind) })
	return p
}

// times returns how often p can be cut before it makes too many of some kind.
func (p *pattern) times(left []int) int {
	n := -1
	for _, e := range p.use {
		if k := left[e.kind] / e.n; n < 0 || k < n {
			n = k
		}
	}
	return max(n, 0)
}
