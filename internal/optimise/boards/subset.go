package boards

import (
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// subset fills a length as far as whole pieces go: the bounded subset-sum
// problem, by the recursion over kinds with one mark per reachable sum
// (Martello and Toth, "Knapsack Problems", Wiley 1990, chapter 4).
type subset struct {
	from []int32 // kind by which a sum was first reached, -1: not reached
	used []int32
}

// maxStates bounds the tables of the exact fillings.
const maxStates = 1 << 18

// fill returns counts of kinds from first on that fill at most room, as full
// as possible, and the sum. Kinds are tried longest first, so that long pieces
// go first among equals. It returns false when the meter ends or room is
// beyond the table.
func (s *subset) fill(m *model, left []int, first int, room int64, meter *work.Meter) ([]cover.Entry, int64, bool) {
	if room >= maxStates || room < 0 {
		return nil, 0, false
	}
	n := int(room) + 1
	if cap(s.from) < n {
		s.from, s.used = make([]int32, n), make([]int32, n)
	}
	from, used := s.from[:n], s.used[:n]
	for i := range from {
		from[i] = -1
	}
	from[0] = int32(len(m.kinds))
	for k := first; k < len(m.kinds) && from[room] < 0; k++ {
		w := m.kinds[k].w
		if left[k] == 0 || w > room {
			continue
		}
		if !meter.Take(room) {
			return nil, 0, false
		}
		clear(used)
		b := int32(min(int64(left[k]), room/w))
		for c := w; c <= room; c++ {
			if from[c] < 0 && from[c-w] >= 0 && used[c-w] < b {
				from[c], used[c] = int32(k), used[c-w]+1
			}
		}
	}
	sum := room
	for from[sum] < 0 {
		sum--
	}
	var out []cover.Entry
	for c := sum; c > 0; {
		k := int(from[c])
		if last := len(out) - 1; last >= 0 && out[last].Kind == k {
			out[last].N++
		} else {
			out = append(out, cover.Entry{Kind: k, N: 1})
		}
		c -= m.kinds[k].w
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
