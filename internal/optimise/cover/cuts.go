package cover

import (
	"math"
	"slices"
)

// Cut is a condition that whole boards fulfil and the linear relaxation may not:
// pieces of some kinds count for so many points each; a pattern holds as many
// sets as its points, divided by Of, come to whole; and all patterns together
// hold no more sets than all the pieces do (Chvátal-Gomory cuts of few rows:
// Jepsen, Petersen, Spoorendonk, Pisinger, Operations Research 56, 2008; the
// points after Pecin, Pessoa, Poggi, Uchoa, Santos, Operations Research Letters
// 45, 2017, quoted from memory).
type Cut struct {
	Kinds  []int // ascending
	Points []int // of one piece of each
	Of     int
	// Price of a set, in an [Ask].
	Price int64
}

// Sets returns how many sets p holds.
func (c Cut) Sets(p *Pattern) int {
	sum := 0
	for _, e := range p.Use {
		if i := slices.Index(c.Kinds, e.Kind); i >= 0 {
			sum += c.Points[i] * e.N
		}
	}
	return sum / c.Of
}

// most returns how many sets there are in all.
func (c Cut) most(left []int) int {
	sum := 0
	for i, k := range c.Kinds {
		sum += c.Points[i] * left[k]
	}
	return sum / c.Of
}

// Counting is an oracle that can price cuts and keep kinds together or apart.
type Counting interface {
	// Counts says whether Cuts, Together and Apart of an Ask are heeded.
	Counts() bool
}

func counts(o Oracle) bool {
	c, ok := o.(Counting)
	return ok && c.Counts()
}

// tightenings bounds how often cuts are added in one task.
const tightenings = 3

// tighten adds cuts to the node's relaxation and proves what that proves. It
// leaves the cuts that hold the bound up in t.cuts.
func (t *task) tighten(left []int, oracle Oracle) {
	pr := newPricing(t.p, oracle)
	for range tightenings {
		r := newRelaxation(t.p, left, t.node.box, t.cuts, t.known, pr, t.meter)
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
		more := r.violated(t.meter)
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
