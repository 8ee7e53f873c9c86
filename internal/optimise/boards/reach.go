package boards

import (
	"math/bits"

	"scantling/internal/optimise/work"
)

// reach tells which lengths can be filled exactly by pieces of a kind and
// shorter ones: a mark for each sum, by the recursion over kinds, shortest first.
type reach struct {
	by    [][]uint64 // by kind: the sums of kinds from there on; nil: not known
	cells []uint64
	size  int64
}

// maxReach bounds the words of the marks.
const maxReach = 1 << 20

// fill marks the sums up to top of up to left pieces of each kind from first on.
// Where the marks would be too many it leaves them out; it returns false when
// the meter ends.
func (r *reach) fill(m *model, left []int, first int, top int64, meter *work.Meter) bool {
	r.size, r.by = top+1, r.by[:0]
	words, kinds, steps := (r.size+63)/64, int64(0), int64(0)
	for k := first; k < len(left); k++ {
		if left[k] > 0 && m.kinds[k].w <= top {
			kinds++
			steps += int64(bits.Len(uint(left[k])))
		}
	}
	if words > maxReach/(kinds+1) {
		r.by = nil
		return true
	}
	if !meter.Take((kinds+steps)*words + int64(len(left))) {
		return false
	}
	if n := int((kinds + 1) * words); cap(r.cells) < n {
		r.cells = make([]uint64, n)
	}
	free := r.cells[:cap(r.cells)]
	sums := free[:words]
	free = free[words:]
	clear(sums)
	sums[0] = 1
	for len(r.by) <= len(left) {
		r.by = append(r.by, nil)
	}
	r.by[len(left)] = sums
	for k := len(left) - 1; k >= first; k-- {
		if w := m.kinds[k].w; left[k] > 0 && w <= top {
			next := free[:words]
			free = free[words:]
			copy(next, sums)
			for n, step := left[k], 1; n > 0; step *= 2 {
				step = min(step, n)
				n -= step
				shiftOr(next, w*int64(step))
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
	if part == 0 {
		for i := len(sums) - 1; i >= whole; i-- {
			sums[i] |= sums[i-whole]
		}
		return
	}
	for i := len(sums) - 1; i > whole; i-- {
		sums[i] |= sums[i-whole]<<part | sums[i-whole-1]>>(64-part)
	}
	if whole < len(sums) {
		sums[whole] |= sums[0] << part
	}
}

// has says whether pieces of kind k and shorter fill length exactly.
func (r *reach) has(k int, length int64) bool {
	return r.by[k][length/64]>>uint(length%64)&1 == 1
}

// greatest returns the greatest sum of kind k and shorter up to most.
func (r *reach) greatest(k int, most int64) int64 {
	sums := r.by[k]
	i := most / 64
	for v := sums[i] & (^uint64(0) >> uint(63-most%64)); ; v = sums[i] {
		if v != 0 {
			return i*64 + int64(bits.Len64(v)) - 1
		}
		i-- // the sum 0 is always there
	}
}

// some says whether pieces of kind k and shorter may fill at least least and at
// most most; where it is not known, it says yes.
func (r *reach) some(k int, least, most int64) bool {
	if r.by == nil {
		return true
	}
	return r.greatest(k, min(most, r.size-1)) >= least
}
