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

// TestRestart checks that a program whose demands fall and whose columns are
// barred comes to the same cost as a fresh one.
func TestRestart(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 8))
		m := 2 + r.IntN(20)
		demand := make([]float64, m)
		for i := range demand {
			demand[i] = float64(1 + r.IntN(9))
		}
		build := func(demand []float64, columns [][]Entry, barred []bool) *Program {
			p := New(demand)
			for j, c := range columns {
				p.Add(1+float64(j%7)/10, c)
				if barred != nil && barred[j] {
					p.Bar(j)
				}
			}
			p.Start()
			return p
		}
		var columns [][]Entry
		for i := range m {
			columns = append(columns, []Entry{{i, 1}})
		}
		for range 60 {
			var col []Entry
			for i := range m {
				if r.IntN(4) == 0 {
					col = append(col, Entry{i, float64(1 + r.IntN(3))})
				}
			}
			if len(col) > 0 {
				columns = append(columns, col)
			}
		}
		all := work.New(context.Background(), math.MaxInt64)
		p := build(append([]float64(nil), demand...), columns, nil)
		if !p.Solve(all) {
			t.Fatalf("seed %d", seed)
		}
		barred := make([]bool, len(columns))
		for range 4 {
			for range 6 {
				if j := m + r.IntN(len(columns)-m); !barred[j] {
					barred[j] = true
					p.Bar(j)
				}
			}
			i := r.IntN(m)
			demand[i] = max(0, demand[i]-float64(r.IntN(4)))
			p.SetDemand(i, demand[i])
			p.Restart()
			q := build(append([]float64(nil), demand...), columns, barred)
			if !p.Solve(all) || !q.Solve(all) {
				t.Fatalf("seed %d: no optimum", seed)
			}
			a, _ := p.Value()
			b, _ := q.Value()
			if math.Abs(a-b) > 1e-5*(1+b) {
				t.Errorf("seed %d: %g after changes, %g afresh", seed, a, b)
			}
		}
	}
}
