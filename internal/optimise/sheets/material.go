package sheets

import (
	"math/big"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
)

func area(x, y int64) *big.Int { return new(big.Int).Mul(big.NewInt(x), big.NewInt(y)) }

// material returns the cost below which the sheets cannot be as large as the
// parts: the cheapest way to buy the total area in fractions of sheets, limited
// kinds up to their limit. The second result is false when all sheets together
// are too small. Kerfs are in the sizes on both sides, as they are in the
// pieces; defects count as good area.
func (m *model) material() (int64, bool) {
	if m.p.Goal == problem.MostValue {
		return m.worthByArea(), true
	}
	need := new(big.Int)
	for _, k := range m.kinds {
		need.Add(need, new(big.Int).Mul(m.areaOf(k), big.NewInt(int64(k.d))))
	}
	left, cost := new(big.Rat).SetInt(need), new(big.Rat)
	order := make([]*stock, len(m.stock))
	for i := range m.stock {
		order[i] = &m.stock[i]
	}
	slices.SortStableFunc(order, func(a, b *stock) int {
		x := new(big.Int).Mul(big.NewInt(a.cost), area(b.x, b.y))
		return x.Cmp(new(big.Int).Mul(big.NewInt(b.cost), area(a.x, a.y)))
	})
	for _, t := range order {
		size := new(big.Rat).SetInt(area(t.x, t.y))
		n := new(big.Rat).Quo(left, size)
		if limit := big.NewRat(int64(t.limit), 1); t.limit < cover.Plenty && n.Cmp(limit) > 0 {
			n = limit
		}
		cost.Add(cost, new(big.Rat).Mul(n, big.NewRat(t.cost, 1)))
		if left.Sub(left, new(big.Rat).Mul(n, size)); left.Sign() <= 0 {
			return m.roundUp(cost), true
		}
	}
	return 0, false
}

// pricesByArea returns prices of the limits, in units of one in lagrange of a
// value: what a piece is worth beyond the area it takes, at the worth of the last
// piece of [model.worthByArea].
func (m *model) pricesByArea() []int64 {
	price := make([]int64, len(m.kinds))
	_, last := m.filledByArea()
	if last == nil {
		return price
	}
	each := float64(last.value) / (float64(last.x) * float64(last.y))
	for k, kd := range m.kinds {
		over := float64(kd.value) - float64(each*float64(kd.x)*float64(kd.y))
		price[k] = max(0, min(int64(over*lagrange), kd.value*lagrange))
	}
	return price
}

// worthByArea returns the value that cannot be exceeded: the sheet filled with
// the pieces that are worth most per area, the last one in part.
func (m *model) worthByArea() int64 {
	worth, _ := m.filledByArea()
	return worth
}

// filledByArea returns what [model.worthByArea] does, and the piece that is the
// last, nil if all go in.
func (m *model) filledByArea() (int64, *kind) {
	var last *kind
	kinds := slices.Clone(m.kinds)
	slices.SortStableFunc(kinds, func(a, b kind) int {
		x := new(big.Int).Mul(big.NewInt(b.value), area(a.x, a.y))
		return x.Cmp(new(big.Int).Mul(big.NewInt(a.value), area(b.x, b.y)))
	})
	t := &m.stock[0]
	left, worth := new(big.Rat).SetInt(area(t.x, t.y)), new(big.Rat)
	for _, k := range kinds {
		if (k.x > t.x || k.y > t.y) && (!k.turn || k.y > t.x || k.x > t.y) {
			continue
		}
		size := new(big.Rat).SetInt(area(k.x, k.y))
		n := new(big.Rat).Quo(left, size)
		if d := big.NewRat(int64(k.d), 1); n.Cmp(d) > 0 {
			n = d
		}
		worth.Add(worth, new(big.Rat).Mul(n, big.NewRat(k.value, 1)))
		if left.Sub(left, new(big.Rat).Mul(n, size)); left.Sign() <= 0 {
			last = &k
			break
		}
	}
	q := new(big.Rat).Quo(worth, big.NewRat(m.step, 1))
	n := new(big.Int).Quo(q.Num(), q.Denom())
	return n.Int64() * m.step, last
}

// roundUp returns the least possible total cost that is not below r.
func (m *model) roundUp(r *big.Rat) int64 {
	q := new(big.Rat).Quo(r, big.NewRat(m.step, 1))
	n := new(big.Int).Add(q.Num(), new(big.Int).Sub(q.Denom(), big.NewInt(1)))
	n.Quo(n, q.Denom())
	n.Mul(n, big.NewInt(m.step))
	if !n.IsInt64() {
		return 0
	}
	return n.Int64()
}

// areaOf returns the area of one piece of a kind, kerfs included; of a sequence
// that of its parts, as what is beside a narrow one may be used.
func (m *model) areaOf(k kind) *big.Int {
	if k.row == problem.Any {
		return area(k.x, k.y)
	}
	sum := new(big.Int)
	for _, i := range m.p.Sequences[k.sources[0].sequence].Parts {
		sum.Add(sum, area(m.axes(m.p.Parts[i].Size)))
	}
	return sum
}
