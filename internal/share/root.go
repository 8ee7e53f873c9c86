package share

import (
	"math"
	"math/bits"

	"scantling/internal/unit"
)

// product is an exact product of two lengths that are not negative.
type product struct{ hi, lo uint64 }

func times(a, b unit.Length) product {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	return product{hi, lo}
}

// less returns p - q; p must not be smaller than q.
func (p product) less(q product) product {
	lo, borrow := bits.Sub64(p.lo, q.lo, 0)
	hi, _ := bits.Sub64(p.hi, q.hi, borrow)
	return product{hi, lo}
}

// over reports whether p is greater than q.
func (p product) over(q product) bool {
	return p.hi > q.hi || (p.hi == q.hi && p.lo > q.lo)
}

// root returns the square root to the nearest nanometre. It is exact for squares
// of lengths up to 2^62; a float gives the start, whole numbers the answer.
func (p product) root() unit.Length {
	x := unit.Length(math.Sqrt(float64(float64(p.hi)*(1<<64)) + float64(p.lo)))
	for x > 0 && times(x, x).over(p) {
		x--
	}
	for !times(x+1, x+1).over(p) {
		x++
	}
	if rest := p.less(times(x, x)); rest.hi > 0 || rest.lo > uint64(x) {
		x++ // p > x*x + x, so the root lies above x + 1/2
	}
	return x
}
