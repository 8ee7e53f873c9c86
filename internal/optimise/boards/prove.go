package boards

import "math/big"

// estimate works out, in floats, what the present prices prove.
func (pr *pricing) estimate(r *relaxation) {
	theta := 1.0
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if price := t.cost * pr.scale; t.limit == 0 && pr.worth[i] > price {
			theta = min(theta, float64(price)/float64(pr.worth[i]))
		}
	}
	sum := 0.0
	for k, n := range r.left {
		sum += float64(theta * float64(float64(pr.value[k])*float64(n)))
	}
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if over := float64(theta*float64(pr.worth[i])) - float64(t.cost*pr.scale); t.limit > 0 && over > 0 {
			sum -= float64(over * float64(r.stockLeft[i]))
		}
	}
	pr.bound = sum / float64(pr.scale)
	pr.better = pr.bound > pr.best
	pr.best = max(pr.best, pr.bound)
}

// proves returns the cost that the present prices prove for the whole problem,
// in exact arithmetic: linear programming duality. Parts are given prices such
// that no pattern on unlimited stock is worth more than its board; on limited
// stock the excess is paid once for each board there is (Farley, "A note on
// bounding a class of linear programming problems, including cutting stock
// problems", Operations Research 38, 1990, extended by limits). The worths are
// those of an exact knapsack.
func (pr *pricing) proves(left, stockLeft []int) int64 {
	theta := big.NewRat(1, 1)
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if price := t.cost * pr.scale; t.limit == 0 && pr.worth[i] > price {
			if q := big.NewRat(price, pr.worth[i]); q.Cmp(theta) < 0 {
				theta = q
			}
		}
	}
	total := new(big.Int)
	for k, n := range left {
		total.Add(total, new(big.Int).Mul(big.NewInt(pr.value[k]), big.NewInt(int64(n))))
	}
	sum := new(big.Rat).Mul(theta, new(big.Rat).SetInt(total))
	for i := range pr.m.stock {
		t := &pr.m.stock[i]
		if t.limit == 0 {
			continue
		}
		over := new(big.Rat).Mul(theta, big.NewRat(pr.worth[i], 1))
		over.Sub(over, big.NewRat(t.cost*pr.scale, 1))
		if over.Sign() > 0 {
			sum.Sub(sum, over.Mul(over, big.NewRat(int64(stockLeft[i]), 1)))
		}
	}
	sum.Quo(sum, big.NewRat(pr.scale, 1))
	if sum.Sign() < 0 {
		return 0
	}
	return pr.m.roundUp(sum)
}
