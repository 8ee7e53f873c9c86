package shortlist

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// staged is a run over columns, strips and sheets, for cutting in stages.
type staged struct {
	lister
	rules   ceiling.Rules
	table   ceiling.Stages
	ahead   [][]int64   // by height of strip and length: the most within it
	beside  [][]int64   // by width and height of a column: the most beside it
	columns [][][]int32 // by width and height
	strips  [][]int32   // by height: those as long as the sheet
}

// mostCells bounds the lists and table entries of one run.
const mostCells = 1 << 22

func newStaged(q Question, rules ceiling.Rules, length int, meter *work.Meter) *staged {
	s := &staged{lister: newLister(q, length, meter), rules: rules}
	s.rules.All = true
	if !s.table.Build(q.X, q.Y, q.Pieces, s.q.Guide, q.Left, s.rules, meter) {
		return nil
	}
	t := &s.table
	nw, nh := int64(len(t.Widths)), int64(len(t.Heights))
	if nw*(t.Y+1) > mostCells || nh*(t.X+1) > mostCells || !meter.Take(nh*nw*(t.X+t.Y)) {
		return nil
	}
	for h := range t.Heights {
		s.ahead = append(s.ahead, t.Ahead(h))
	}
	s.lookBeside()
	s.begin()
	return s
}

// rest is what may be gained beyond a strip of height h.
func (s *staged) rest(h int64) int64 { return s.table.Sheet[s.table.Y-h] }

// lookBeside works out what may be gained beside each column, and above it.
func (s *staged) lookBeside() {
	t := &s.table
	s.beside = make([][]int64, len(t.Widths))
	for w := len(t.Widths) - 1; w >= 0; w-- {
		row := make([]int64, t.Y+2)
		for i := range row {
			row[i] = -1 << 60
		}
		for h, high := range t.Heights {
			sum := s.ahead[h][t.X-t.Widths[w]] + s.rest(high)
			for y := int64(0); y <= high; y++ {
				if !s.rules.Two {
					row[y] = max(row[y], t.Column[w][high-y]+sum)
				} else {
					row[y] = max(row[y], sum)
				}
			}
		}
		if w+1 < len(t.Widths) && !s.rules.Exact {
			for y := range row {
				row[y] = max(row[y], s.beside[w+1][y])
			}
		}
		for y := t.Y; y >= 0; y-- {
			row[y] = max(row[y], row[y+1])
		}
		s.beside[w] = row
	}
}

// run fills columns, strips and the sheet; it returns false if the meter ended.
func (s *staged) run() bool {
	for w := range s.table.Widths {
		if !s.stack(w) {
			return false
		}
	}
	s.strips = make([][]int32, len(s.table.Heights))
	for h := range s.table.Heights {
		mark := len(s.fillings)
		if !s.strip(h) {
			return false
		}
		s.strips[h] = s.forget(mark, s.strips[h])
	}
	return s.sheet()
}

// stack makes the lists of columns of one width.
func (s *staged) stack(w int) bool {
	t := &s.table
	lists := make([][]int32, t.Y+1)
	s.columns = append(s.columns, lists)
	for y := int64(1); y <= t.Y; y++ {
		if !s.start(s.beside[w][y], t.Column[w][y]) {
			continue
		}
		if !s.rules.Two || !s.rules.Exact {
			s.inherit(lists[y-1])
		}
		if w > 0 && !s.rules.Exact && !s.rules.Two {
			s.inherit(s.columns[w-1][y])
		}
		for f, l := range s.pieces {
			if l.X > t.Widths[w] || l.Y > y || (s.rules.Exact || s.rules.Two) && l.X != t.Widths[w] {
				continue
			}
			one := []int32{int32(f)}
			if l.Y == y {
				s.inherit(one)
			}
			if !s.rules.Two {
				s.join(lists[y-l.Y], one, stacked, 0)
			}
		}
		s.steps += int64(len(s.pieces))
		lists[y] = slices.Clone(s.present)
		if !s.paid() {
			return false
		}
	}
	return true
}

// strip makes the list of strips of one height as long as the sheet.
func (s *staged) strip(h int) bool {
	t := &s.table
	high := t.Heights[h]
	lists := make([][]int32, t.X+1)
	for x := int64(1); x <= t.X; x++ {
		if !s.start(s.ahead[h][t.X-x]+s.rest(high), s.ahead[h][x]) {
			continue
		}
		s.inherit(lists[x-1])
		for w, wide := range t.Widths {
			if wide > x {
				break
			}
			if wide == x {
				s.inherit(s.columns[w][high])
			}
			s.join(lists[x-wide], s.columns[w][high], beside, 0)
		}
		s.steps += int64(len(t.Widths))
		lists[x] = slices.Clone(s.present)
		if !s.paid() {
			return false
		}
	}
	s.strips[h] = lists[t.X]
	return true
}

// sheet makes the lists of strips above each other.
func (s *staged) sheet() bool {
	t := &s.table
	lists := make([][]int32, t.Y+1)
	for y := int64(1); y <= t.Y; y++ {
		if !s.start(s.rest(y), t.Sheet[y]) {
			continue
		}
		s.inherit(lists[y-1])
		for h, high := range t.Heights {
			if high > y {
				break
			}
			if high == y {
				s.inherit(s.strips[h])
			}
			s.join(lists[y-high], s.strips[h], above, 0)
		}
		lists[y] = slices.Clone(s.present)
		if !s.paid() {
			return false
		}
	}
	return true
}
