package problem

import (
	"cmp"
	"slices"

	"scantling/internal/unit"
)

// rooms returns rectangles such that whatever lies clear of the defects of s
// lies in one of them: for boards the clear lengths, for sheets the largest
// empty rectangles (at most a few hundred; beyond that the whole sheet).
func (p Problem) rooms(s Stock) []Size {
	usable := s.Usable(p.Form)
	if p.Form == Boards {
		var out []Size
		for _, c := range s.Clear() {
			out = append(out, Size{Length: c.Length})
		}
		return out
	}
	if len(s.Defects) == 0 || len(s.Defects) > 20 {
		return []Size{usable}
	}
	return largestClear(s, usable)
}

// Clear returns the lengths of a board between its trims that are free of
// defects, in order. Where defects touch or overlap they count as one.
func (s Stock) Clear() []Box {
	from, to := s.Trim.Start, s.Length-s.Trim.End
	defects := slices.Clone(s.Defects)
	slices.SortFunc(defects, func(a, b Box) int {
		return cmp.Or(cmp.Compare(a.Along, b.Along), cmp.Compare(a.Length, b.Length))
	})
	var out []Box
	for _, d := range defects {
		if end := min(d.Along, to); end > from {
			out = append(out, Box{Point{Along: from}, Size{Length: end - from}})
		}
		from = max(from, d.Along+d.Length)
	}
	if to > from {
		out = append(out, Box{Point{Along: from}, Size{Length: to - from}})
	}
	return out
}

// largestClear returns the maximal rectangles free of defects, by trying every
// pair of defect edges for the low and high side and sweeping along.
func largestClear(s Stock, usable Size) []Size {
	x0, y0 := s.Trim.Start, s.Trim.Low
	x1, y1 := x0+usable.Length, y0+usable.Width
	lows, highs := []unit.Length{y0}, []unit.Length{y1}
	for _, d := range s.Defects {
		if e := d.Across + d.Width; e > y0 && e < y1 {
			lows = append(lows, e)
		}
		if d.Across > y0 && d.Across < y1 {
			highs = append(highs, d.Across)
		}
	}
	var out []Size
	for _, lo := range lows {
		for _, hi := range highs {
			if hi <= lo {
				continue
			}
			row := Stock{Size: Size{Length: x1, Width: s.Width}, Trim: Trim{Start: x0}}
			for _, d := range s.Defects {
				if d.Across < hi && d.Across+d.Width > lo {
					row.Defects = append(row.Defects, d)
				}
			}
			for _, c := range row.Clear() {
				out = append(out, Size{c.Length, hi - lo})
			}
		}
	}
	return out
}
