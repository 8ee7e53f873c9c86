package sheets

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/work"
)

// ceiling works out what a sheet can be worth at most when every kind may be
// cut any number of times, stage by stage: columns by a knapsack over y, strips
// over x, the sheet over y again (Gilmore and Gomory, "Multistage cutting stock
// problems of two and more dimensions", Operations Research 13, 1965).
type ceiling struct {
	m      *model
	x, y   int64 // of the sheet
	lying  []lying
	value  []int64
	widths []int64   // distinct widths of columns, rising
	column [][]int64 // by width and height: the best column
	height []int64   // of strips, rising
	strip  []int64   // the best strip of each height, as long as the sheet
	sheet  []int64   // by y: the best sheet
	cells  []int64
}

// build fills the tables for one sheet. Only kinds with a value that are left
// count. With all set, strips may be as high as any stack; otherwise only as a
// single piece.
func (c *ceiling) build(m *model, i int, value []int64, left []int, all bool, meter *work.Meter) bool {
	c.m, c.x, c.y, c.value = m, m.stock[i].x, m.stock[i].y, value
	c.lying = c.lying[:0]
	for _, l := range m.order(widest) {
		if value[l.kind] > 0 && left[l.kind] > 0 && l.x <= c.x && l.y <= c.y {
			c.lying = append(c.lying, l)
		}
	}
	c.widths = c.widths[:0]
	for _, l := range slices.Backward(c.lying) {
		if n := len(c.widths); n == 0 || c.widths[n-1] != l.x {
			c.widths = append(c.widths, l.x)
		}
	}
	c.setHeights(all)
	n := int64(len(c.lying)+len(c.widths)) * c.y
	if !meter.Take(n + int64(len(c.height))*int64(len(c.widths))*c.x + int64(len(c.height))*c.y) {
		return false
	}
	c.buildColumns()
	c.buildStrips()
	return true
}

// setHeights lists the heights that strips may have.
func (c *ceiling) setHeights(all bool) {
	reach := make([]bool, c.y+1)
	for _, l := range c.lying {
		reach[l.y] = true
		if all && c.m.p.Cutting.Stages != 2 {
			for y := l.y; y <= c.y; y++ {
				reach[y] = reach[y] || reach[y-l.y]
			}
		}
	}
	c.height = c.height[:0]
	for y := int64(1); y <= c.y; y++ {
		if reach[y] {
			c.height = append(c.height, y)
		}
	}
}

func (c *ceiling) buildColumns() {
	exact, two := c.m.p.Cutting.Exact, c.m.p.Cutting.Stages == 2
	c.column = make([][]int64, len(c.widths))
	at := len(c.lying) - 1 // narrowest first
	for w, x := range c.widths {
		col := make([]int64, c.y+1)
		if w > 0 && !exact && !two {
			copy(col, c.column[w-1])
		}
		c.column[w] = col
		for ; at >= 0 && c.lying[at].x == x; at-- {
			l := c.lying[at]
			v := c.value[l.kind]
			switch {
			case two && exact:
				col[l.y] = max(col[l.y], v)
			case two:
				for y := l.y; y <= c.y; y++ {
					col[y] = max(col[y], v)
				}
			default:
				for y := l.y; y <= c.y; y++ {
					col[y] = max(col[y], col[y-l.y]+v)
				}
			}
		}
	}
}

func (c *ceiling) buildStrips() {
	c.strip = make([]int64, len(c.height))
	c.cells = make([]int64, c.x+1)
	for h, y := range c.height {
		clear(c.cells)
		for w, x := range c.widths {
			if v := c.column[w][y]; v > 0 {
				cells := c.cells
				for at := x; at <= c.x; at++ {
					if u := cells[at-x] + v; u > cells[at] {
						cells[at] = u
					}
				}
			}
		}
		c.strip[h] = c.cells[c.x]
	}
	c.sheet = make([]int64, c.y+1)
	for y := int64(1); y <= c.y; y++ {
		best := c.sheet[y-1]
		for h, high := range c.height {
			if high > y {
				break
			}
			best = max(best, c.sheet[y-high]+c.strip[h])
		}
		c.sheet[y] = best
	}
}

// worth returns the ceiling of the whole sheet.
func (c *ceiling) worth() int64 { return c.sheet[c.y] }

// promising returns up to n heights for the next strip, those first after which
// the sheet's remaining y can still be worth most.
func (c *ceiling) promising(y int64, n int) []int64 {
	type candidate struct{ h, v int64 }
	var list []candidate
	for h, high := range c.height {
		if high <= y && c.strip[h] > 0 {
			list = append(list, candidate{high, c.strip[h] + c.sheet[y-high]})
		}
	}
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Or(cmp.Compare(b.v, a.v), cmp.Compare(b.h, a.h)) })
	var out []int64
	for _, l := range list[:min(n, len(list))] {
		out = append(out, l.h)
	}
	return out
}
