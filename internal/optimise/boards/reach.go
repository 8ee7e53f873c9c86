package boards

import (
	"math/bits"

	"scantling/internal/optimise/work"
)

// reach tells which lengths can be filled exactly by pieces of a kind and
// shorter ones: a mark for each sum, by the recursion over kinds, shortest first.
type reach struct {
	by   [][]uint64 // by kind: the sums of kinds from there on; nil: not known
	size int64
}

// maxReach bounds the words of the marks.
const maxReach = 1 << 20

// fill marks the sums of up to left pieces of each kind. Where the marks would
// be too many it leaves them out; it returns false when the meter ends.
func (r *reach) fill(m *model, left []int, meter *work.Meter) bool {
	r.size, r.by = m.top()+1, nil
	words, kinds, steps := (r.size+63)/64, int64(0), int64(0)
	for _, n := range left {
		if n > 0 {
			kinds++
			steps += int64(bits.Len(uint(n)))
		}
	}
	if kinds == 0 || words > maxReach/kinds {
		return true
	}
	if !meter.Take((kinds + steps) * words) {
		return false
	}
	r.by = make([][]uint64, len(left))
	sums := make([]uint64, words)
	sums[0] = 1
	for k := len(left) - 1; k >= 0; k-- {
		if left[k] > 0 {
			next := append(make([]uint64, 0, words), sums...)
			for n, step := left[k], 1; n > 0; step *= 2 {
				step = min(step, n)
				n -= step
				shiftOr(next, m.kinds[k].w*int64(step))
			}
			sums = next
		}
		r.by[k] = sums
	}
	return true
}

// shiftOr adds n to each sum, beside the sums themselves.
func shiftOr(sums []uint64, n int64) {
	whole, part := int(min(n/64, int64(len(sums)))), uint(n%64)
	for i := len(sums) - 1; i >= whole; i-- {
		v := sums[i-whole] << part
		if part > 0 && i > whole {
			v |= sums[i-whole-1] >> (64 - part)
		}
		sums[i] |= v
	}
}

// some says whether pieces of kind k and shorter may fill at least least and at
// most most; where it is not known, it says yes.
func (r *reach) some(k int, least, most int64) bool {
	if r.by == nil {
		return true
	}
	sums := r.by[k]
	most = min(most, r.size-1)
	for i := least / 64; i <= most/64; i++ {
		v := sums[i]
		if i == least/64 {
			v &= ^uint64(0) << uint(least%64)
		}
		if i == most/64 {
			v &= ^uint64(0) >> uint(63-most%64)
		}
		if v != 0 {
			return true
		}
	}
	return false
}
