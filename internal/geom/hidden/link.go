package hidden

import (
	"cmp"
	"slices"

	"scantling/internal/geom/polygon"
)

// meets is how near the ends of two chords of a curve lie to count as one: merging
// moves them by less.
const meets = 3 * dust

// link makes chains of the chords of curves: lines between the same surfaces, one
// beginning where another ends. The strokes come sorted by class and stay so.
func link(all []Stroke) []Stroke {
	out := all[:0:0]
	for i := 0; i < len(all); {
		j := i + 1
		c := all[i].class()
		for j < len(all) && all[j].class() == c {
			j++
		}
		if group := all[i:j]; len(group) > 1 && c.surfs != [2]int32{} {
			out = append(out, chains(group)...)
		} else {
			out = append(out, group...)
		}
		i = j
	}
	return out
}

// end is one end of a chord: 2k is where chord k begins, 2k+1 where it ends.
type end struct {
	at    polygon.P2
	which int
}

// chains links the lines of one class; other strokes and single lines stay.
func chains(group []Stroke) []Stroke {
	mates := matesOf(group)
	used := make([]bool, len(group))
	var out []Stroke
	follow := func(first int) {
		s := group[first/2]
		used[first/2] = true
		points := []polygon.P2{s.end(first), s.end(first ^ 1)}
		for at := first ^ 1; ; {
			next := mates[at]
			if next < 0 || used[next/2] {
				break
			}
			used[next/2] = true
			at = next ^ 1
			points = append(points, group[next/2].end(at))
		}
		if len(points) > 2 {
			s.Kind, s.Chords, s.From, s.To = Chain, points, points[0], points[len(points)-1]
			if s.From.Sub(s.To).Norm() <= meets {
				points[len(points)-1], s.To = s.From, s.From
			}
		}
		out = append(out, s)
	}
	for k, s := range group {
		switch {
		case s.Kind != Line:
			used[k] = true
			out = append(out, s)
		case used[k]:
		case mates[2*k] < 0:
			follow(2 * k)
		case mates[2*k+1] < 0:
			follow(2*k + 1)
		}
	}
	for k := range group { // what is left is closed
		if !used[k] {
			follow(2 * k)
		}
	}
	return out
}

// end returns the point at the beginning (an even number) or the end of a line.
func (s *Stroke) end(which int) polygon.P2 {
	if which%2 == 0 {
		return s.From
	}
	return s.To
}

// matesOf pairs the ends of lines that meet, two and two; -1 where an end is alone
// or more than two meet.
func matesOf(group []Stroke) []int {
	mates := make([]int, 2*len(group))
	var ends []end
	for k := range mates {
		mates[k] = -1
		if group[k/2].Kind == Line {
			ends = append(ends, end{group[k/2].end(k), k})
		}
	}
	slices.SortFunc(ends, func(a, b end) int {
		return cmp.Or(cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y), cmp.Compare(a.which, b.which))
	})
	count := make([]int, len(mates))
	for i, a := range ends {
		for _, b := range ends[i+1:] {
			if b.at.X-a.at.X > meets {
				break
			}
			if b.at.Sub(a.at).Norm() <= meets {
				count[a.which]++
				count[b.which]++
				mates[a.which], mates[b.which] = b.which, a.which
			}
		}
	}
	for k := range mates {
		if count[k] != 1 {
			mates[k] = -1
		}
	}
	for k, m := range mates {
		if m >= 0 && mates[m] != k {
			mates[k] = -1
		}
	}
	return mates
}
