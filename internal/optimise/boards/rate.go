package boards

import (
	"cmp"
	"math/bits"
	"slices"
)

// byRate returns the stock kinds, cheapest per clear length first.
func (m *model) byRate() []int {
	order := make([]int, len(m.stock))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &m.stock[a], &m.stock[b]
		return compareProducts(x.cost, y.length(), y.cost, x.length())
	})
	return order
}

// compareProducts compares a*b with c*d, none of them negative, exactly.
func compareProducts(a, b, c, d int64) int {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	return cmp.Or(cmp.Compare(h1, h2), cmp.Compare(l1, l2))
}

func sortBy(list []int, compare func(a, b int) int) { slices.SortStableFunc(list, compare) }
