package mechanics

import "math"

const (
	ln2      = 0.693147180559945309417232121458
	mostLog  = 700 // e to the 700 is still a float64
	expTerms = 22
	logTerms = 40
)

// Exp returns e to the x, by its power series after taking out the powers of two;
// the standard library's differs from machine to machine. Within 2 units of the
// last place for |x| up to 700; beyond, nought or infinity.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > mostLog:
		return math.Inf(1)
	case x < -mostLog:
		return 0
	}
	n := math.Floor(x/ln2 + 0.5)
	r := x - float64(n*ln2)
	sum, term := 1.0, 1.0
	for k := 1; k <= expTerms; k++ {
		term = float64(term*r) / float64(k)
		sum += term
	}
	return math.Ldexp(sum, int(n))
}

// Ln returns the natural logarithm of a positive number, by the series of the
// inverse hyperbolic tangent; the standard library's differs from machine to
// machine. Not a number for anything else.
func Ln(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 1) {
		return math.NaN()
	}
	m, e := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m, e = 2*m, e-1
	}
	s := (m - 1) / (m + 1)
	square, power, sum := float64(s*s), s, 0.0
	for k := 1; k < logTerms; k += 2 {
		sum += power / float64(k)
		power = float64(power * square)
	}
	return float64(2*sum) + float64(float64(e)*ln2)
}

// Power returns x to the y for a positive x.
func Power(x, y float64) float64 { return Exp(float64(y * Ln(x))) }

// root3 is the cube root of a positive number.
func root3(x float64) float64 {
	if !(x > 0) {
		return 0
	}
	r := Power(x, 1.0/3)
	return r - (r-x/float64(r*r))/3 // one step of Newton's
}
