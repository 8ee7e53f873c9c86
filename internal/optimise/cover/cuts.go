package cover

import (
	"cmp"
	"math"
	"slices"
)

// Cut is a condition that whole boards fulfil and the linear relaxation may not:
// of the pieces of three kinds, a pattern holds so and so many pairs, and all
// patterns together hold no more pairs than there are (subset-row inequalities:
// Jepsen, Petersen, Spoorendonk, Pisinger, Operations Research 56, 2008).
type Cut struct {
	Kinds [3]int
	// Price of a pair, in an [Ask].
	Price int64
}

// Pairs returns how many pairs of a cut's kinds p holds.
func (c Cut) Pairs(p *Pattern) int {
	n := 0
	for _, e := range p.Use {
		if slices.Contains(c.Kinds[:], e.Kind) {
			n += e.N
		}
	}
	return n / 2
}

// most returns how many pairs there are in all.
func (c Cut) most(left []int) int {
	return (left[c.Kinds[0]] + left[c.Kinds[1]] + left[c.Kinds[2]]) / 2
}

// Counting is an oracle that can price cuts.
type Counting interface {
	// Counts says whether the cuts of an Ask are heeded.
	Counts() bool
}

func counts(o Oracle) bool {
	c, ok := o.(Counting)
	return ok && c.Counts()
}

// The bounds of separation: cuts added at a time and in all, how often a kind
// may stand in those added at a time, and the least violation.
const (
	cutsAtOnce   = 16
	cutsInAll    = 160
	cutsPerKind  = 3
	leastExcess  = 0.02
	maxSeparable = 400 // kinds
)

// excess is a cut with the amount by which the relaxation exceeds it.
type excess struct {
	cut Cut
	by  float64
}

// violated returns cuts that the solved relaxation does not fulfil, those of the
// greatest excess first.
func (r *relaxation) violated() []Cut {
	if len(r.rows) > maxSeparable || len(r.cuts) >= cutsInAll {
		return nil
	}
	x := r.program.Amounts()
	holding := make([][]int, len(r.p.Demand)) // columns, by kind
	for j, v := range x {
		if v > 1e-6 && j < len(r.columns) && r.columns[j] != nil {
			for _, e := range r.columns[j].Use {
				holding[e.Kind] = append(holding[e.Kind], j)
			}
		}
	}
	seen := map[[3]int]bool{}
	for _, c := range r.cuts {
		seen[c.Kinds] = true
	}
	var found []excess
	for _, k := range r.rows {
		near := r.beside(k, holding[k])
		for i, a := range near {
			for _, b := range near[i+1:] {
				c := Cut{Kinds: [3]int{a, b, k}}
				slices.Sort(c.Kinds[:])
				if seen[c.Kinds] {
					continue
				}
				seen[c.Kinds] = true
				if by := r.over(c, x, holding); by > leastExcess {
					found = append(found, excess{c, by})
				}
			}
		}
	}
	slices.SortFunc(found, func(a, b excess) int {
		return cmp.Or(cmp.Compare(b.by, a.by), slices.Compare(a.cut.Kinds[:], b.cut.Kinds[:]))
	})
	return spread(found)
}

// beside returns the kinds that share a column with kind k, in order.
func (r *relaxation) beside(k int, columns []int) []int {
	var near []int
	for _, j := range columns {
		for _, e := range r.columns[j].Use {
			if e.Kind != k {
				near = append(near, e.Kind)
			}
		}
	}
	slices.Sort(near)
	return slices.Compact(near)
}

// over returns the amount by which the columns exceed a cut.
func (r *relaxation) over(c Cut, x []float64, holding [][]int) float64 {
	sum := -float64(c.most(r.left))
	for i, k := range c.Kinds {
		for _, j := range holding[k] {
			first := !slices.ContainsFunc(c.Kinds[:i], func(a int) bool { return slices.Contains(holding[a], j) })
			if first {
				sum += float64(x[j] * float64(c.Pairs(r.columns[j])))
			}
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
		if slices.ContainsFunc(f.cut.Kinds[:], func(k int) bool { return times[k] == cutsPerKind }) {
			continue
		}
		for _, k := range f.cut.Kinds {
			times[k]++
		}
		out = append(out, f.cut)
	}
	return out
}

// tightenings bounds how often cuts are added in one task.
const tightenings = 3

// tighten adds cuts to the node's relaxation and proves what that proves. It
// leaves the cuts that hold the bound up in t.cuts.
func (t *task) tighten(left []int, oracle Oracle) {
	pr := newPricing(t.p, oracle)
	for range tightenings {
		r := newRelaxation(t.p, left, t.node.box, t.cuts, t.known, pr)
		solved := r.generate(t.known, math.MaxInt, t.meter, func(pr *pricing) bool {
			if pr.better && pr.bound > float64(t.proved)+1e-7 {
				t.proved = max(t.proved, pr.proves(r))
			}
			return t.proved < t.best
		})
		if !solved || !pr.exact {
			t.tight = t.tight || !pr.exact || t.meter.Ended()
			return
		}
		t.cuts = r.binding()
		more := r.violated()
		if len(more) == 0 {
			t.tight = true
			return
		}
		t.cuts = append(t.cuts, more...)
	}
}

// binding returns the cuts that have a price.
func (r *relaxation) binding() []Cut {
	var out []Cut
	prices := r.program.Prices()
	for i, c := range r.cuts {
		if prices[r.cutRow[i]] > 1e-7 {
			out = append(out, c)
		}
	}
	return out
}
