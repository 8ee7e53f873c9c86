package solid

import (
	"cmp"
	"slices"
)

// Between is the least distance between two of many placed solids, by their
// indices, the lesser first.
type Between struct {
	I, J int
	Gap
}

// Distances returns the least distances of all pairs that come within a distance
// of one another, touching ones too, in order of their indices. Only pairs whose
// boxes come so near are looked at (see [Pairs]). A pair that cannot be measured is
// there with its reason.
func Distances(all []Placed, within float64) []Between {
	var out []Between
	for _, p := range Pairs(all, within) {
		g := Distance(all[p[0]], all[p[1]])
		if g.Status != Verified || g.Distance <= within {
			out = append(out, Between{p[0], p[1], g})
		}
	}
	return out
}

// Nearest returns the two solids that come nearest to each other without
// touching, and whether there are any. Pairs are measured from those on whose
// boxes come nearest, until no box of the rest comes nearer than what was found;
// the first of equal pairs counts. Pairs that cannot be measured are passed over.
func Nearest(all []Placed) (Between, bool) {
	boxes := make([]boxNode, len(all))
	for i, p := range all {
		boxes[i].lo, boxes[i].hi = p.Bounds()
	}
	type candidate struct {
		i, j int
		gap  float64
	}
	var list []candidate
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			list = append(list, candidate{i, j, boxGap(&boxes[i], &boxes[j])})
		}
	}
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Compare(a.gap, b.gap) })
	best, found := Between{Gap: Gap{Distance: inf}}, false
	for _, c := range list {
		if c.gap >= best.Distance {
			break
		}
		if g := Distance(all[c.i], all[c.j]); g.Status == Verified && g.Distance > 0 && g.Distance < best.Distance {
			best, found = Between{c.i, c.j, g}, true
		}
	}
	return best, found
}
