package rows

import (
	"slices"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// sliceCount is how many slices an axis is cut into.
const sliceCount = 256

// slicing finds regions by where they lie along an axis: the piece is cut into
// slices, each with the numbers of the regions that reach into it.
type slicing struct {
	lo, step [3]unit.Length
	lists    [3][][]int32
	count    int
	all      []int32
}

func newSlicing(regions []region) *slicing {
	s := &slicing{count: len(regions)}
	for i := range regions {
		s.all = append(s.all, int32(i))
	}
	for a := range 3 {
		var lo, hi unit.Length
		for i, r := range regions {
			if i == 0 || r.lo[a] < lo {
				lo = r.lo[a]
			}
			if i == 0 || r.hi[a] > hi {
				hi = r.hi[a]
			}
		}
		s.lo[a], s.step[a] = lo, max((hi-lo)/sliceCount+1, 1)
		s.lists[a] = make([][]int32, sliceCount)
		for i, r := range regions {
			from, to := s.slice(a, r.lo[a]), s.slice(a, r.hi[a])
			for k := from; k <= to; k++ {
				s.lists[a][k] = append(s.lists[a][k], int32(i))
			}
		}
	}
	return s
}

func (s *slicing) slice(a int, at unit.Length) int {
	return int(min(max((at-s.lo[a])/s.step[a], 0), sliceCount-1))
}

// near returns the numbers of the regions that may reach into a region seen along
// an axis, in order: those of its slices on whichever of the two other axes lists
// fewer, or all if that is no gain.
func (s *slicing) near(l line, r region) []int32 {
	best, least := piece.Axis(-1), s.count
	for _, a := range l.across() {
		n := 0
		for k := s.slice(int(a), r.lo[a]); k <= s.slice(int(a), r.hi[a]); k++ {
			n += len(s.lists[a][k])
		}
		if n < least {
			best, least = a, n
		}
	}
	if best < 0 {
		return s.all
	}
	out := make([]int32, 0, least)
	for k := s.slice(int(best), r.lo[best]); k <= s.slice(int(best), r.hi[best]); k++ {
		out = append(out, s.lists[best][k]...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
