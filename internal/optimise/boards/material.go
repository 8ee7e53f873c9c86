package boards

import (
	"math/big"

	"scantling/internal/optimise/cover"
)

// material returns the cost below which the boards cannot be as long as the
// parts: the cheapest way to buy the total length in fractions of boards,
// limited kinds up to their limit. The second result is false when all boards
// together are too short.
func (m *model) material() (int64, bool) {
	need := new(big.Int)
	for _, k := range m.kinds {
		need.Add(need, new(big.Int).Mul(big.NewInt(k.w), big.NewInt(int64(k.d))))
	}
	left := new(big.Rat).SetInt(need)
	cost := new(big.Rat)
	for _, i := range m.rates {
		t := &m.stock[i]
		length := big.NewRat(t.length(), 1)
		n := new(big.Rat).Quo(left, length)
		if limit := big.NewRat(int64(t.limit), 1); t.limit < cover.Plenty && n.Cmp(limit) > 0 {
			n = limit
		}
		cost.Add(cost, new(big.Rat).Mul(n, big.NewRat(t.cost, 1)))
		if left.Sub(left, new(big.Rat).Mul(n, length)); left.Sign() <= 0 {
			return m.roundUp(cost), true
		}
	}
	return 0, false
}

// length returns the clear length of a board, kerfs added.
func (t *stock) length() int64 {
	var sum int64
	for _, c := range t.wide {
		sum += c
	}
	return sum
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
