package boards

import (
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// subset fills a length as far as whole pieces go: the bounded subset-sum
// problem, by the recursion over kinds with one mark per reachable sum
// (Martello and Toth, "Knapsack Problems", Wiley 1990, chapter 4).
type subset struct {
	reach reach
}

// maxStates bounds the tables of the exact fillings.
const maxStates = 1 << 18

// fill returns counts of kinds from first on that fill at most room, as full
// as possible, and the sum; among equally full ones that with the longest
// pieces. It returns false when the meter ends or room is beyond the table.
func (s *subset) fill(m *model, left []int, first int, room int64, meter *work.Meter) ([]cover.Entry, int64, bool) {
	if room >= maxStates || room < 0 || !s.reach.fill(m, left, first, room, meter) || s.reach.by == nil {
		return nil, 0, false
	}
	sum := s.reach.greatest(first, room)
	var out []cover.Entry
	rest := sum
	for k := first; rest > 0; k++ {
		w := m.kinds[k].w
		for n := min(int64(left[k]), rest/w); n > 0; n-- {
			if s.reach.has(k+1, rest-n*w) {
				out = append(out, cover.Entry{Kind: k, N: int(n)})
				rest -= n * w
				break
			}
		}
	}
	return out, sum, true
}

// greedy fills a length with the longest pieces that fit.
func (m *model) greedy(left []int, first int, room int64) ([]cover.Entry, int64) {
	var out []cover.Entry
	var sum int64
	for k := first; k < len(m.kinds); k++ {
		w := m.kinds[k].w
		if n := min(int64(left[k]), (room-sum)/w); n > 0 {
			out = append(out, cover.Entry{Kind: k, N: int(n)})
			sum += n * w
		}
	}
	return out, sum
}
