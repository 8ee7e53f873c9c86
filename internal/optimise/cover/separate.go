package cover

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scantling/internal/optimise/work"
)

// The bounds of separation: cuts added at a time and in all, how often a kind
// may stand in those added at a time, the least violation, the most kinds.
const (
	cutsAtOnce   = 24
	cutsInAll    = 200
	cutsPerKind  = 4
	leastExcess  = 0.015
	maxSeparable = 400
)

// shapes are the points of the cuts that are sought, the greatest first, and
// what they are divided by.
var shapes = []struct {
	points []int
	of     int
}{
	{[]int{1, 1, 1}, 2},
	{[]int{2, 1, 1, 1}, 3},
	{[]int{1, 1, 1, 1, 1}, 2},
	{[]int{2, 2, 1, 1, 1}, 3},
	{[]int{1, 1, 1, 1, 1}, 3},
	{[]int{2, 2, 1, 1, 1}, 4},
	{[]int{3, 1, 1, 1, 1}, 4},
	{[]int{3, 2, 2, 1, 1}, 5},
	{[]int{3, 3, 2, 2, 1}, 4},
}

// separation looks for cuts that a solved relaxation does not fulfil.
type separation struct {
	r       *relaxation
	x       []float64
	holding [][]int // columns with an amount, by kind
	near    [][]int // kinds that share such a column, by kind
	points  []int   // by kind, of the cut that is tried
	seen    map[string]bool
	marked  []bool // by column
	steps   int64
}

// excess is a cut with the amount by which the relaxation exceeds it.
type excess struct {
	cut Cut
	key string
	by  float64
}

// violated returns cuts that the solved relaxation does not fulfil, those of the
// greatest excess first.
func (r *relaxation) violated(meter *work.Meter) []Cut {
	if len(r.rows) > maxSeparable || len(r.cuts) >= cutsInAll {
		return nil
	}
	s := &separation{r: r, x: r.program.Amounts(), seen: map[string]bool{}, points: make([]int, len(r.p.Demand))}
	s.look()
	for _, c := range r.cuts {
		s.seen[c.key()] = true
	}
	var found []excess
	for _, shape := range shapes {
		for _, k := range r.rows {
			s.steps = 0
			if e, ok := s.grow(k, shape.points, shape.of); ok {
				found = append(found, e)
			}
			if !meter.Take(s.steps) {
				return nil
			}
		}
	}
	slices.SortStableFunc(found, func(a, b excess) int {
		return cmp.Or(cmp.Compare(b.by, a.by), cmp.Compare(a.key, b.key))
	})
	return spread(found)
}

func (c Cut) key() string { return fmt.Sprint(c.Of, c.Kinds, c.Points) }

// look notes which columns hold which kinds, and which kinds lie together.
func (s *separation) look() {
	n := len(s.r.p.Demand)
	s.holding, s.near, s.marked = make([][]int, n), make([][]int, n), make([]bool, len(s.x))
	for j, v := range s.x {
		if v < 1e-6 || j >= len(s.r.columns) || s.r.columns[j] == nil {
			continue
		}
		for _, e := range s.r.columns[j].Use {
			s.holding[e.Kind] = append(s.holding[e.Kind], j)
			for _, f := range s.r.columns[j].Use {
				if f.Kind != e.Kind {
					s.near[e.Kind] = append(s.near[e.Kind], f.Kind)
				}
			}
		}
	}
	for k := range s.near {
		slices.Sort(s.near[k])
		s.near[k] = slices.Compact(s.near[k])
	}
}

// grow chooses kinds for the points one after the other, beginning with kind
// first, so that the patterns leave as few points unused as may be, and then
// exchanges single ones.
func (s *separation) grow(first int, points []int, of int) (excess, bool) {
	kinds := []int{first}
	s.points[first] = points[0]
	defer func() {
		for _, k := range kinds {
			s.points[k] = 0
		}
	}()
	for len(kinds) < len(points) {
		k, _ := s.choose(kinds, points[len(kinds)], of)
		if k < 0 {
			return excess{}, false
		}
		kinds = append(kinds, k)
		s.points[k] = points[len(kinds)-1]
	}
	for i := len(kinds) - 1; i > 0; i-- {
		old := kinds[i]
		s.points[old] = 0
		rest := slices.Concat(kinds[:i], kinds[i+1:])
		k, _ := s.choose(rest, points[i], of)
		if k < 0 {
			k = old
		}
		kinds[i] = k
		s.points[k] = points[i]
	}
	c := Cut{Kinds: slices.Sorted(slices.Values(kinds)), Of: of}
	total := 0
	for _, k := range c.Kinds {
		c.Points = append(c.Points, s.points[k])
		total += s.points[k] * s.r.left[k]
	}
	by := float64(total%of)/float64(of) - s.unused(c.Kinds, of)
	if key := c.key(); by > leastExcess && !s.seen[key] {
		s.seen[key] = true
		return excess{c, key, by}, true
	}
	return excess{}, false
}

// choose returns the kind beside the others that, with so many points, leaves
// the fewest unused, or -1.
func (s *separation) choose(kinds []int, points, of int) (int, float64) {
	best, least := -1, math.Inf(1)
	with := append(slices.Clone(kinds), 0)
	for _, k := range kinds {
		for _, a := range s.near[k] {
			if s.points[a] > 0 {
				continue
			}
			with[len(kinds)] = a
			s.points[a] = points
			if u := s.unused(with, of); u < least-1e-9 || u < least+1e-9 && a < best {
				best, least = a, u
			}
			s.points[a] = 0
		}
	}
	return best, least
}

// unused returns the points that the patterns hold beyond whole sets, in sets.
func (s *separation) unused(kinds []int, of int) float64 {
	sum := 0.0
	for _, k := range kinds {
		for _, j := range s.holding[k] {
			if s.marked[j] {
				continue
			}
			s.marked[j] = true
			n := 0
			for _, e := range s.r.columns[j].Use {
				n += s.points[e.Kind] * e.N
			}
			s.steps += int64(len(s.r.columns[j].Use))
			sum += float64(s.x[j] * float64(n%of) / float64(of))
		}
	}
	for _, k := range kinds {
		for _, j := range s.holding[k] {
			s.marked[j] = false
		}
	}
	return sum
}

// spread chooses the first cuts, no kind in too many.
func spread(found []excess) []Cut {
	var out []Cut
	times := map[int]int{}
	for _, f := range found {
		if len(out) == cutsAtOnce {
			break
		}
		if slices.ContainsFunc(f.cut.Kinds, func(k int) bool { return times[k] == cutsPerKind }) {
			continue
		}
		for _, k := range f.cut.Kinds {
			times[k]++
		}
		out = append(out, f.cut)
	}
	return out
}
