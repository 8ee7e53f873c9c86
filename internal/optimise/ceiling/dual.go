package ceiling

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/work"
)

// scale is a dual feasible function of one axis: it maps sizes so that what lay
// side by side within the sheet still does. Values are over a common
// denominator.
type scale struct {
	value  func(size int64) int64
	over   int64
	marker int64
}

// scales lists functions for an axis of the given size: the identity, those that
// drop what is smaller than p and fill up what leaves less than p, and those
// that count in fractions of k (Fekete and Schepers, "New classes of fast lower
// bounds for bin packing problems", Mathematical Programming 91, 2001).
func scales(size int64, sides []int64) []scale {
	out := []scale{{func(s int64) int64 { return s }, size, 0}}
	for _, p := range sides {
		if 2*p > size {
			p = size - p + 1 // from here on it counts as a whole
		}
		if p < 1 || 2*p > size {
			continue
		}
		out = append(out, scale{func(s int64) int64 {
			switch {
			case s > size-p:
				return size
			case s < p:
				return 0
			}
			return s
		}, size, p})
	}
	for k := int64(1); k <= 5; k++ {
		out = append(out, scale{func(s int64) int64 {
			if (k+1)*s%size == 0 {
				return s * k
			}
			return (k + 1) * s / size * size
		}, size * k, -k})
	}
	slices.SortStableFunc(out, func(a, b scale) int { return cmp.Compare(a.marker, b.marker) })
	return slices.CompactFunc(out, func(a, b scale) bool { return a.marker == b.marker })
}

// Sheets returns the least number of sheets of x by y that parts too large to
// lie together need: the sum of their areas after both axes were mapped by dual
// feasible functions. A part that may be turned counts as it counts least.
// pieces are all parts in all ways they may lie, demand is by kind. x and y must
// not exceed [MostUnits].
func Sheets(x, y int64, pieces []Piece, demand []int, meter *work.Meter) int64 {
	var xs, ys []int64
	for _, l := range pieces {
		xs, ys = append(xs, l.X), append(ys, l.Y)
	}
	fx, fy := scales(x, xs), scales(y, ys)
	least := make([]int64, len(demand))
	var best int64
	for _, f := range fx {
		if !meter.Take(int64(len(fy) * len(pieces) * 4)) {
			break
		}
		for _, g := range fy {
			for k := range least {
				least[k] = -1
			}
			for _, l := range pieces {
				if l.X <= x && l.Y <= y {
					if v := f.value(l.X) * g.value(l.Y); least[l.Kind] < 0 || v < least[l.Kind] {
						least[l.Kind] = v
					}
				}
			}
			var sum int64
			for k, v := range least {
				sum += max(0, v) * int64(demand[k])
			}
			whole := f.over * g.over
			best = max(best, (sum+whole-1)/whole)
		}
	}
	return best
}
