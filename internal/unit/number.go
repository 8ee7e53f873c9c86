package unit

import (
	"math/big"
	"math/bits"
)

// maxBits bounds both halves of a rational, so that no document can make sums
// grow without end: 512 bits are more than 150 digits.
const maxBits = 512

// number is an exact rational. Nearly all figures are whole nanometres or
// simple fractions, which are kept in two machine words; only what does not fit
// is a big.Rat. The zero number is none at all.
//
// A number has one form: it is small if and only if both halves fit an int64
// (the least int64 apart), so that small numbers are equal exactly when their
// fields are.
type number struct {
	n, d int64    // lowest terms, d > 0; d == 0 if big or none
	big  *big.Rat // never changed once made
}

func whole(n int64) number {
	if n == -n && n != 0 { // the least int64 has no opposite
		return number{big: new(big.Rat).SetInt64(n)}
	}
	return number{n: n, d: 1}
}

// ofRat takes r over: the caller must not change it afterwards.
func ofRat(r *big.Rat) number {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		if n := r.Num().Int64(); n != -n || n == 0 {
			return number{n: n, d: r.Denom().Int64()}
		}
	}
	return number{big: r}
}

func fraction(n, d int64) number {
	if g := gcd(n, d); g > 1 {
		n, d = n/g, d/g
	}
	return number{n: n, d: d}
}

func gcd(a, b int64) int64 {
	if a < 0 {
		a = -a
	}
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (x number) none() bool { return x.d == 0 && x.big == nil }

// rat returns the number for reading; it may be shared.
func (x number) rat() *big.Rat {
	if x.big != nil {
		return x.big
	}
	return big.NewRat(x.n, x.d)
}

func (x number) sign() int {
	switch {
	case x.big != nil:
		return x.big.Sign()
	case x.n > 0:
		return 1
	case x.n < 0:
		return -1
	}
	return 0
}

func (x number) isWhole() bool {
	if x.big != nil {
		return x.big.IsInt()
	}
	return x.d == 1
}

func (x number) tooLarge() bool {
	return x.big != nil && (x.big.Num().BitLen() > maxBits || x.big.Denom().BitLen() > maxBits)
}

func (x number) equal(y number) bool {
	if x.big == nil || y.big == nil {
		return x == y
	}
	return x.big.Cmp(y.big) == 0
}

func (x number) cmp(y number) int {
	if x.big == nil && y.big == nil {
		a, ok := times(x.n, y.d)
		b, ok2 := times(y.n, x.d)
		if ok && ok2 {
			switch {
			case a < b:
				return -1
			case a > b:
				return 1
			}
			return 0
		}
	}
	return x.rat().Cmp(y.rat())
}

func (x number) neg() number {
	if x.big != nil {
		return ofRat(new(big.Rat).Neg(x.big))
	}
	return number{n: -x.n, d: x.d}
}

func (x number) add(y number) number {
	if x.big == nil && y.big == nil {
		a, ok := times(x.n, y.d)
		b, ok2 := times(y.n, x.d)
		d, ok3 := times(x.d, y.d)
		// No overflow: the sum moves to the side of b, and has an opposite.
		if n := a + b; ok && ok2 && ok3 && (b >= 0) == (n >= a) && (n == 0 || n != -n) {
			return fraction(n, d)
		}
	}
	return ofRat(new(big.Rat).Add(x.rat(), y.rat()))
}

func (x number) mul(y number) number {
	if x.big == nil && y.big == nil {
		g, h := gcd(x.n, y.d), gcd(y.n, x.d)
		n, ok := times(x.n/g, y.n/h)
		d, ok2 := times(x.d/h, y.d/g)
		if ok && ok2 {
			return number{n: n, d: d}
		}
	}
	return ofRat(new(big.Rat).Mul(x.rat(), y.rat()))
}

// inverse returns one by x, which must not be nought.
func (x number) inverse() number {
	if x.big != nil {
		return ofRat(new(big.Rat).Inv(x.big))
	}
	if x.n < 0 {
		return number{n: -x.d, d: -x.n}
	}
	return number{n: x.d, d: x.n}
}

// floor returns the greatest whole number that is not above x.
func (x number) floor() number {
	if x.isWhole() {
		return x
	}
	if x.big == nil {
		q := x.n / x.d
		if x.n < 0 {
			q--
		}
		return whole(q)
	}
	// Div is Euclidean: for a positive denominator it is the floor.
	return ofRat(new(big.Rat).SetInt(new(big.Int).Div(x.big.Num(), x.big.Denom())))
}

// round returns a whole number beside x, as [Length.Round] does.
func (x number) round(r Rounding) number {
	low := x.floor()
	if low.equal(x) || r == Down {
		return low
	}
	high := low.add(whole(1))
	if r == Up {
		return high
	}
	switch c := x.cmp(low.add(fraction(1, 2))); {
	case c > 0, c == 0 && x.sign() > 0:
		return high
	default:
		return low
	}
}

// int64 returns a whole number that fits.
func (x number) int64() (int64, bool) {
	if x.big != nil {
		if x.big.IsInt() && x.big.Num().IsInt64() {
			return x.big.Num().Int64(), true
		}
		return 0, false
	}
	return x.n, x.d == 1
}

// times multiplies, and says whether the product fits with its opposite.
func times(a, b int64) (int64, bool) {
	if b == 1 {
		return a, true
	}
	ua, ub := uint64(a), uint64(b)
	if a < 0 {
		ua = -ua
	}
	if b < 0 {
		ub = -ub
	}
	hi, lo := bits.Mul64(ua, ub)
	if hi != 0 || lo > 1<<63-1 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}
