package cover

import "math/big"

// estimate works out, in floats, what the present prices prove.
func (pr *pricing) estimate(r *relaxation) {
	pr.scaleAll = false
	pr.bound = pr.estimated(r)
	pr.scaleAll = true
	if b := pr.estimated(r); b > pr.bound {
		pr.bound = b
	} else {
		pr.scaleAll = false
	}
	pr.better = pr.bound > pr.best
	pr.best = max(pr.best, pr.bound)
}

// scales says whether the prices are scaled down until no pattern on stock i is
// worth more than its board. On other stock the excess is paid instead.
func (pr *pricing) scales(r *relaxation, i int) bool {
	return pr.scaleAll || r.box.hi[i] == Plenty
}

func (pr *pricing) estimated(r *relaxation) float64 {
	theta := 1.0
	for i := range pr.p.Stock {
		if price := pr.p.Stock[i].Cost * pr.scale; pr.scales(r, i) && pr.worth[i] > price {
			theta = min(theta, float64(price)/float64(pr.worth[i]))
		}
	}
	sum := 0.0
	for k, n := range r.left {
		sum += float64(theta * float64(float64(pr.value[k])*float64(n)))
	}
	for _, c := range pr.cuts {
		sum -= float64(theta * float64(float64(c.Price)*float64(c.most(r.left))))
	}
	for i := range pr.p.Stock {
		spare := float64(pr.p.Stock[i].Cost*pr.scale) - float64(theta*float64(pr.worth[i]))
		if spare < 0 && !pr.scales(r, i) {
			sum += float64(spare * float64(r.box.hi[i]))
		} else if spare > 0 {
			sum += float64(spare * float64(r.box.lo[i]))
		}
	}
	return sum / float64(pr.scale)
}

// proves returns the cost that the present prices prove for what is left, in
// exact arithmetic: linear programming duality. Parts are given prices such
// that no pattern on unlimited stock is worth more than its board (Farley, "A
// note on bounding a class of linear programming problems, including cutting
// stock problems", Operations Research 38, 1990). On other stock the excess is
// paid once for every board that may be used, and what a board costs beyond its
// pattern's worth is gained for every board that must. Each cut costs its price
// for all its sets, as a pattern's worth is less the price of those it holds.
// The worths are those of an exact knapsack.
func (pr *pricing) proves(r *relaxation) int64 {
	theta := big.NewRat(1, 1)
	for i := range pr.p.Stock {
		if price := pr.p.Stock[i].Cost * pr.scale; pr.scales(r, i) && pr.worth[i] > price {
			if q := big.NewRat(price, pr.worth[i]); q.Cmp(theta) < 0 {
				theta = q
			}
		}
	}
	total := new(big.Int)
	for k, n := range r.left {
		total.Add(total, new(big.Int).Mul(big.NewInt(pr.value[k]), big.NewInt(int64(n))))
	}
	for _, c := range pr.cuts {
		total.Sub(total, new(big.Int).Mul(big.NewInt(c.Price), big.NewInt(int64(c.most(r.left)))))
	}
	sum := new(big.Rat).Mul(theta, new(big.Rat).SetInt(total))
	for i := range pr.p.Stock {
		spare := new(big.Rat).SetInt64(pr.p.Stock[i].Cost * pr.scale)
		spare.Sub(spare, new(big.Rat).Mul(theta, big.NewRat(pr.worth[i], 1)))
		switch n := r.box.hi[i]; {
		case spare.Sign() < 0 && !pr.scales(r, i):
			sum.Add(sum, spare.Mul(spare, big.NewRat(int64(n), 1)))
		case spare.Sign() > 0:
			sum.Add(sum, spare.Mul(spare, big.NewRat(int64(r.box.lo[i]), 1)))
		}
	}
	sum.Quo(sum, big.NewRat(pr.scale, 1))
	if sum.Sign() < 0 {
		return 0
	}
	return pr.p.RoundUp(sum)
}
