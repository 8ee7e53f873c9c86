package hidden

import (
	"slices"

	"scantling/internal/analysis/check/bodies"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// mostLines bounds the edges that openings at one end may have in either direction;
// an end with more has more wood in it than any joint puts there, and its openings are
// taken one by one.
const mostLines = 256

// widest returns the largest rectangle of openings side by side that is wider than a
// limit both ways; false if there is none. So an opening that is told in strips is seen
// as one.
func widest(open []bodies.Box, a, b piece.Axis, limit unit.Length) (bodies.Box, bool) {
	xs, ys := lines(open, a), lines(open, b)
	var best bodies.Box
	try := func(o bodies.Box) {
		if min(o[a].Size(), o[b].Size()) > limit && area(o, a, b) > area(best, a, b) {
			best = o
		}
	}
	if len(xs) > mostLines || len(ys) > mostLines {
		for _, o := range open {
			try(o)
		}
		return best, best[a].Size() > 0
	}
	cells := make([][]bool, max(len(xs)-1, 0))
	for i := range cells {
		cells[i] = make([]bool, len(ys)-1)
	}
	for _, o := range open {
		for i := at(xs, o[a].Low); i < at(xs, o[a].High); i++ {
			for k := at(ys, o[b].Low); k < at(ys, o[b].High); k++ {
				cells[i][k] = true
			}
		}
	}
	for from := range cells {
		all := slices.Clone(cells[from])
		for to := from; to < len(cells); to++ {
			for k := range all {
				all[k] = all[k] && cells[to][k]
			}
			for low, k := 0, 0; k <= len(all); k++ {
				if k < len(all) && all[k] {
					continue
				}
				o := open[0]
				o[a], o[b] = bodies.Span{Low: xs[from], High: xs[to+1]}, bodies.Span{Low: ys[low], High: ys[k]}
				try(o)
				low = k + 1
			}
		}
	}
	return best, best[a].Size() > 0
}

// lines returns where boxes begin and end along an axis, in order.
func lines(open []bodies.Box, a piece.Axis) []unit.Length {
	var out []unit.Length
	for _, o := range open {
		out = append(out, o[a].Low, o[a].High)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func at(lines []unit.Length, l unit.Length) int {
	i, _ := slices.BinarySearch(lines, l)
	return i
}

// area compares openings; whole square micrometres stay in range.
func area(b bodies.Box, a, c piece.Axis) int64 {
	return int64(b[a].Size()/unit.Micrometre) * int64(b[c].Size()/unit.Micrometre)
}
