package ceiling

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/work"
)

// Stages works out what a sheet can be worth at most when every kind may be cut
// any number of times, stage by stage: columns by a knapsack over y, strips over
// x, the sheet over y again (Gilmore and Gomory, "Multistage cutting stock
// problems of two and more dimensions", Operations Research 13, 1965).
type Stages struct {
	X, Y    int64     // of the sheet
	Widths  []int64   // distinct widths of columns, rising
	Column  [][]int64 // by width and height: the best column
	Heights []int64   // of strips, rising
	Sheet   []int64   // by y: the best sheet

	rules  Rules
	pieces []Piece
	value  []int64
	strip  []int64 // the best strip of each height, as long as the sheet
	cells  []int64
}

// Rules are what the stages allow.
type Rules struct {
	Two   bool // no stacking in columns
	Exact bool // no trimming cut after the last stage
	// All lets strips be as high as any stack; otherwise only as a single piece.
	All bool
}

// Build fills the tables for a sheet of x by y. Of pieces, widest first, those
// count that have a value and are left. It returns false if the meter ends.
func (c *Stages) Build(x, y int64, pieces []Piece, value []int64, left []int, rules Rules, meter *work.Meter) bool {
	c.X, c.Y, c.value, c.rules = x, y, value, rules
	c.pieces = Fits(c.pieces[:0], pieces, x, y, value, left)
	c.Widths = c.Widths[:0]
	for _, l := range slices.Backward(c.pieces) {
		if n := len(c.Widths); n == 0 || c.Widths[n-1] != l.X {
			c.Widths = append(c.Widths, l.X)
		}
	}
	c.setHeights()
	n := int64(len(c.pieces)+len(c.Widths)) * c.Y
	if !meter.Take(n + int64(len(c.Heights))*c.Y) {
		return false
	}
	c.buildColumns()
	return c.buildStrips(meter)
}

// setHeights lists the heights that strips may have.
func (c *Stages) setHeights() {
	reach := make([]bool, c.Y+1)
	for _, l := range c.pieces {
		reach[l.Y] = true
		if c.rules.All && !c.rules.Two {
			for y := l.Y; y <= c.Y; y++ {
				reach[y] = reach[y] || reach[y-l.Y]
			}
		}
	}
	c.Heights = c.Heights[:0]
	for y := int64(1); y <= c.Y; y++ {
		if reach[y] {
			c.Heights = append(c.Heights, y)
		}
	}
}

func (c *Stages) buildColumns() {
	exact, two := c.rules.Exact, c.rules.Two
	c.Column = make([][]int64, len(c.Widths))
	at := len(c.pieces) - 1 // narrowest first
	for w, x := range c.Widths {
		col := make([]int64, c.Y+1)
		if w > 0 && !exact && !two {
			copy(col, c.Column[w-1])
		}
		c.Column[w] = col
		for ; at >= 0 && c.pieces[at].X == x; at-- {
			l := c.pieces[at]
			v := c.value[l.Kind]
			switch {
			case two && exact:
				col[l.Y] = max(col[l.Y], v)
			case two:
				for y := l.Y; y <= c.Y; y++ {
					col[y] = max(col[y], v)
				}
			default:
				for y := l.Y; y <= c.Y; y++ {
					col[y] = max(col[y], col[y-l.Y]+v)
				}
			}
		}
	}
}

// buildStrips leaves out columns that are worth no more than as many narrower
// ones as fit in their place.
func (c *Stages) buildStrips(meter *work.Meter) bool {
	c.strip = make([]int64, len(c.Heights))
	c.cells = make([]int64, c.X+1)
	cells := c.cells
	for h, y := range c.Heights {
		clear(cells)
		steps := c.X
		for w, x := range c.Widths {
			v := c.Column[w][y]
			if v <= cells[x] {
				continue
			}
			steps += c.X - x
			for at := x; at <= c.X; at++ {
				if u := cells[at-x] + v; u > cells[at] {
					cells[at] = u
				}
			}
		}
		c.strip[h] = cells[c.X]
		if !meter.Take(steps) {
			return false
		}
	}
	c.Sheet = make([]int64, c.Y+1)
	for y := int64(1); y <= c.Y; y++ {
		best := c.Sheet[y-1]
		for h, high := range c.Heights {
			if high > y {
				break
			}
			best = max(best, c.Sheet[y-high]+c.strip[h])
		}
		c.Sheet[y] = best
	}
	return true
}

// Worth returns the ceiling of the whole sheet.
func (c *Stages) Worth() int64 { return c.Sheet[c.Y] }

// Promising returns up to n heights for the next strip, those first after which
// the sheet's remaining y can still be worth most.
func (c *Stages) Promising(y int64, n int) []int64 {
	type candidate struct{ h, v int64 }
	var list []candidate
	for h, high := range c.Heights {
		if high <= y && c.strip[h] > 0 {
			list = append(list, candidate{high, c.strip[h] + c.Sheet[y-high]})
		}
	}
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Or(cmp.Compare(b.v, a.v), cmp.Compare(b.h, a.h)) })
	var out []int64
	for _, l := range list[:min(n, len(list))] {
		out = append(out, l.h)
	}
	return out
}

// Ahead returns, by length, what a strip of the h-th height can be worth at most
// over that length.
func (c *Stages) Ahead(h int) []int64 {
	row := make([]int64, c.X+1)
	for w, x := range c.Widths {
		if v := c.Column[w][c.Heights[h]]; v > 0 {
			for at := x; at <= c.X; at++ {
				row[at] = max(row[at], row[at-x]+v)
			}
		}
	}
	for at := int64(1); at <= c.X; at++ {
		row[at] = max(row[at], row[at-1])
	}
	return row
}
