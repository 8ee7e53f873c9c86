package sheets

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

// conflict returns the least number of sheets, where all are of one kind, that
// parts too large to lie together need: the sum of their areas after both axes
// were mapped by dual feasible functions. A part that may be turned counts as it
// counts least.
func (m *model) conflict(meter *work.Meter) int64 {
	if len(m.stock) != 1 || !m.fine() || len(m.p.Sequences) > 0 {
		return 0
	}
	t := &m.stock[0]
	var xs, ys []int64
	for _, l := range m.order(largest) {
		xs, ys = append(xs, l.x), append(ys, l.y)
	}
	fx, fy := scales(t.x, xs), scales(t.y, ys)
	var best int64
	for _, f := range fx {
		if !meter.Take(int64(len(fy) * len(m.kinds) * 4)) {
			break
		}
		for _, g := range fy {
			var sum int64
			for _, k := range m.kinds {
				v := f.value(k.x) * g.value(k.y)
				if k.turn && k.x <= t.y && k.y <= t.x {
					turned := f.value(k.y) * g.value(k.x)
					if k.x > t.x || k.y > t.y {
						v = turned
					}
					v = min(v, turned)
				}
				sum += v * int64(k.d)
			}
			whole := f.over * g.over
			best = max(best, (sum+whole-1)/whole)
		}
	}
	return best
}
