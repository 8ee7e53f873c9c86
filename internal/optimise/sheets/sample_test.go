package sheets

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// TestSample: a sample is of kinds that are left at the values asked, the eight
// that are worth most per area at least where there are as many; beyond those its
// rectangles are few. What sampling finds is worth more than its price and makes
// nothing too often.
func TestSample(t *testing.T) {
	found, leftOut := 0, 0
	for seed := range uint64(5) {
		r := rand.New(rand.NewPCG(seed, 23))
		p := problem.Problem{Form: problem.Sheets, Cutting: problem.Cutting{First: problem.Rip},
			Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(2500), Width: unit.MM(1200)}, Cost: 1}}}
		for range 30 {
			p.Parts = append(p.Parts, problem.Part{Size: problem.Size{Length: unit.MM(250 + r.Int64N(900)), Width: unit.MM(150 + r.Int64N(500))}, Quantity: 1 + r.IntN(3)})
		}
		m := newModel(p, problem.Rip)
		left, _ := m.demand()
		left[3] = 0
		ask := cover.Ask{Left: left, Stock: []int{5}, Value: m.values(), Price: []int64{2500 * 1200 * 7 / 10}, Prove: true}
		value := m.sample(0, ask, r, free())
		some := 0
		for k, v := range value {
			if v != 0 && (v != ask.Value[k] || left[k] == 0) {
				t.Errorf("seed %d: kind %d is worth %d in the sample, %d asked, %d left", seed, k, v, ask.Value[k], left[k])
			}
			if v != 0 {
				some++
			} else if left[k] > 0 {
				leftOut++
			}
		}
		fits := ceiling.Fits(nil, m.order(largest), m.stock[0].x, m.stock[0].y, value, left)
		n := len(ceiling.XPoints(m.stock[0].x, fits, left).At) * len(ceiling.YPoints(m.stock[0].y, fits, left).At)
		if some < 8 || some > 8 && n > mostSampled {
			t.Errorf("seed %d: %d kinds with %d rectangles", seed, some, n)
		}
		var reply cover.Reply
		newOracle([]*model{m}).sampled(ask, &reply, free())
		for _, q := range reply.Found {
			found++
			if worth(q, ask.Value) <= ask.Price[0] || q.Times(left) < 1 {
				t.Errorf("seed %d: %v is worth %d at a price of %d", seed, q.Use, worth(q, ask.Value), ask.Price[0])
			}
		}
	}
	if found == 0 || leftOut == 0 {
		t.Errorf("%d patterns found, %d kinds left out: nothing was tested", found, leftOut)
	}
}
