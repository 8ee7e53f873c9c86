package unit

import "math"

// Length is a length in whole nanometres.
//
// The range is about ±9 200 km, which no document comes near: readers bound
// what they accept to ±[MaxLength].
type Length int64

// Units of length that are whole numbers of nanometres.
const (
	Nanometre  Length = 1
	Micrometre Length = 1000
	Millimetre Length = 1_000_000
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch       Length = 25_400_000
	Foot              = 12 * Inch

	// SixtyFourth is 1/64 in, the finest fraction that is exact.
	SixtyFourth = Inch / 64
)

// MaxLength is the largest length that a document may state: one kilometre.
const MaxLength = 1000 * Metre

// Millimetres returns the length in millimetres as a float, for geometry and
// for drawing. It is the one way out of exact lengths.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// FromMillimetres returns the length nearest to mm millimetres, halves away
// from zero. What is not a number becomes nought, and what is beyond the range
// of a Length becomes its end, on every machine alike.
func FromMillimetres(mm float64) Length {
	n := math.Round(float64(mm * float64(Millimetre)))
	switch {
	case n != n:
		return 0
	case n >= math.MaxInt64:
		return math.MaxInt64
	case n <= -math.MaxInt64:
		return -math.MaxInt64
	}
	return Length(n)
}

// MM returns n whole millimetres.
func MM(n int64) Length { return Length(n) * Millimetre }

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Rounding says to which side a length goes when it is rounded.
type Rounding int

// The three ways to round. What goes into something rounds down; what
// something goes into rounds up.
const (
	Nearest Rounding = iota // halves away from zero
	Down                    // towards minus infinity
	Up                      // towards plus infinity
)

// Round returns the multiple of step that lies beside l in the direction r.
// A step of zero or less leaves l as it is.
func (l Length) Round(step Length, r Rounding) Length {
	if step <= 0 {
		return l
	}
	floor := l / step
	if l%step != 0 && l < 0 {
		floor--
	}
	low := floor * step
	rest := l - low
	switch {
	case rest == 0 || r == Down:
		return low
	case r == Up:
		return low + step
	case 2*rest > step || (2*rest == step && l > 0):
		return low + step
	default:
		return low
	}
}

// Share divides l into n parts that differ by at most one nanometre and add up
// to l exactly: the remainder is spread along the series, so that rows close.
// It returns nil if n is not positive.
func (l Length) Share(n int) []Length {
	if n <= 0 {
		return nil
	}
	parts := make([]Length, n)
	var done Length
	for i := range parts {
		upTo := mulDiv(l, int64(i)+1, int64(n))
		parts[i] = upTo - done
		done = upTo
	}
	return parts
}

// ShareOf returns part number k, from 1, of l shared into n parts as by
// [Length.Share], without making the others; false if there is no such part or
// n is above [MaxShare].
func (l Length) ShareOf(k, n int64) (Length, bool) {
	if k < 1 || k > n || n > MaxShare {
		return 0, false
	}
	return mulDiv(l, k, n) - mulDiv(l, k-1, n), true
}

// MaxShare is the greatest number of parts that ShareOf shares into.
const MaxShare = 1 << 30

// mulDiv returns l*a/b rounded towards zero; it does not overflow for
// 0 <= a <= b <= [MaxShare].
func mulDiv(l Length, a, b int64) Length {
	q, r := int64(l)/b, int64(l)%b
	return Length(q*a + r*a/b)
}
