package beam

import (
	"cmp"
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
	"slices"
)

// Outlook says what can still be gained beyond a front: in the rest of the
// column, the strip and the sheet, if every kind may be cut any number of times
// at its value less the price of its limit. With what the placed pieces gain it
// is close to a ceiling, and guides a beam.
type Outlook struct {
	ceiling.Stages
	value []int64
	two   bool
	high  []int32   // by height: its index among the heights, or -1
	wide  []int32   // by width of a column: its index, or -1
	ahead [][]int64 // by height of strip and length: the best part of a strip
	first map[[3]int64]int64
}

// mostAhead bounds the size of the table over strips.
const mostAhead = 1 << 23

// NewOutlook builds the tables at the given values by kind, or returns nil if they
// would be too large or the meter ends.
func NewOutlook(q Question, value []int64, meter *work.Meter) *Outlook {
	o := &Outlook{value: value, two: q.Rules.Two, first: map[[3]int64]int64{}}
	if q.X > ceiling.MostUnits || q.Y > ceiling.MostUnits {
		return nil
	}
	pieces := slices.Clone(q.Pieces)
	slices.SortStableFunc(pieces, func(a, b ceiling.Piece) int { return cmp.Compare(b.X, a.X) })
	rules := q.Rules
	rules.All = true
	if !o.Build(q.X, q.Y, pieces, value, q.Left, rules, meter) {
		return nil
	}
	cells := int64(len(o.Heights)) * (o.X + 1)
	if cells > mostAhead || !meter.Take(cells*int64(len(o.Widths))) {
		return nil
	}
	o.high, o.wide = index(o.Heights, o.Y), index(o.Widths, o.X)
	for h := range o.Heights {
		o.ahead = append(o.ahead, o.Ahead(h))
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
func (o *Outlook) beyond(f front) int64 {
	if f.x0 > 0 || o.two {
		return o.within(f, f.y1)
	}
	key := [3]int64{f.y0, f.x1, f.yc}
	if v, ok := o.first[key]; ok {
		return v
	}
	best := int64(0)
	for _, h := range o.Heights {
		if y := f.y0 + h; y >= f.y1 && y <= o.Y {
			best = max(best, o.within(f, y))
		}
	}
	o.first[key] = best
	return best
}

// within returns what can be gained if the strip ends at y.
func (o *Outlook) within(f front, y int64) int64 {
	sum := o.Sheet[o.Y-y]
	if h := o.high[y-f.y0]; h >= 0 {
		sum += o.ahead[h][o.X-f.x1]
	}
	if w := o.wide[f.x1-f.x0]; w >= 0 && !o.two {
		sum += o.Column[w][y-f.yc]
	}
	return sum
}
