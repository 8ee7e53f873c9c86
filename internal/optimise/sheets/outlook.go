package sheets

import "scantling/internal/optimise/work"

// outlook says what can still be gained beyond a front: in the rest of the
// column, the strip and the sheet, if every kind may be cut any number of times
// at its value less the price of its limit. With what the placed pieces gain it
// is close to a ceiling, and guides a beam.
type outlook struct {
	ceiling
	two   bool
	high  []int32   // by height: its index among the heights, or -1
	wide  []int32   // by width of a column: its index, or -1
	ahead [][]int64 // by height of strip and length: the best part of a strip
	first map[[3]int64]int64
}

// mostAhead bounds the size of the table over strips.
const mostAhead = 1 << 23

// newOutlook builds the tables at the given values, or returns nil if they would
// be too large or the meter ends.
func newOutlook(m *model, value []int64, meter *work.Meter) *outlook {
	left, _ := m.demand()
	o := &outlook{two: m.p.Cutting.Stages == 2, first: map[[3]int64]int64{}}
	if !m.fine() || !o.build(m, 0, value, left, true, meter) {
		return nil
	}
	cells := int64(len(o.height)) * (o.x + 1)
	if cells > mostAhead || !meter.Take(cells*int64(len(o.widths))) {
		return nil
	}
	o.high, o.wide = index(o.height, o.y), index(o.widths, o.x)
	for _, h := range o.height {
		row := make([]int64, o.x+1)
		for w, x := range o.widths {
			if v := o.column[w][h]; v > 0 {
				for at := x; at <= o.x; at++ {
					row[at] = max(row[at], row[at-x]+v)
				}
			}
		}
		for at := int64(1); at <= o.x; at++ {
			row[at] = max(row[at], row[at-1])
		}
		o.ahead = append(o.ahead, row)
	}
	return o
}

// index inverts a rising list of sizes.
func index(sizes []int64, most int64) []int32 {
	out := make([]int32, most+1)
	for i := range out {
		out[i] = -1
	}
	for i, s := range sizes {
		out[s] = int32(i)
	}
	return out
}

// beyond returns what can be gained beyond a front. Only a strip that has one
// column is thought to grow: each filling can be made with the highest column
// of each strip first.
func (o *outlook) beyond(f front) int64 {
	if f.x0 > 0 || o.two {
		return o.within(f, f.y1)
	}
	key := [3]int64{f.y0, f.x1, f.yc}
	if v, ok := o.first[key]; ok {
		return v
	}
	best := int64(0)
	for _, h := range o.height {
		if y := f.y0 + h; y >= f.y1 && y <= o.y {
			best = max(best, o.within(f, y))
		}
	}
	o.first[key] = best
	return best
}

// within returns what can be gained if the strip ends at y.
func (o *outlook) within(f front, y int64) int64 {
	sum := o.sheet[o.y-y]
	if h := o.high[y-f.y0]; h >= 0 {
		sum += o.ahead[h][o.x-f.x1]
	}
	if w := o.wide[f.x1-f.x0]; w >= 0 && !o.two {
		sum += o.column[w][y-f.yc]
	}
	return sum
}
