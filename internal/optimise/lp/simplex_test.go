package lp

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/work"
)

// TestDuality checks optimality by weak duality: on random covering programs
// the prices are feasible and their worth equals the cost.
func TestDuality(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 7))
		m, n := 1+r.IntN(25), 1+r.IntN(120)
		demand := make([]float64, m)
		for i := range demand {
			demand[i] = float64(1 + r.IntN(9))
		}
		limited := r.IntN(2) == 0
		if limited {
			demand = append(demand, -float64(r.IntN(4)))
		}
		p := New(demand)
		for i := range m {
			p.Add(1+r.Float64(), []Entry{{i, 1}})
		}
		for range n {
			var col []Entry
			for i := range m {
				if r.IntN(4) == 0 {
					col = append(col, Entry{i, float64(1 + r.IntN(4))})
				}
			}
			if limited && r.IntN(3) == 0 {
				col = append(col, Entry{m, -1})
			}
			p.Add(0.5+r.Float64(), col)
		}
		p.Start()
		if !p.Solve(work.New(context.Background(), math.MaxInt64)) {
			t.Fatalf("seed %d: no optimum", seed)
		}
		worth, x := 0.0, p.Amounts()
		for i, y := range p.Prices() {
			if y < -1e-7 {
				t.Errorf("seed %d: price %g", seed, y)
			}
			worth += y * p.rhs[i]
		}
		cover := make([]float64, len(demand))
		for j := range x {
			if r := p.Reduced(j); r < -1e-7 {
				t.Errorf("seed %d: column %d has reduced cost %g", seed, j, r)
			}
			for _, e := range p.columns[j] {
				cover[e.Row] += e.Value * x[j]
			}
		}
		for i := range cover {
			if cover[i] < demand[i]-1e-6 {
				t.Errorf("seed %d: row %d covered %g of %g", seed, i, cover[i], demand[i])
			}
		}
		if v, ok := p.Value(); !ok || math.Abs(v-worth) > 1e-6*(1+math.Abs(v)) {
			t.Errorf("seed %d: cost %g, worth %g", seed, v, worth)
		}
	}
}
