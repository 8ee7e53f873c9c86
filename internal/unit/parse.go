package unit

import (
	"math/big"
	"strings"
)

// Parse reads a length as a maker writes it. A bare number counts in the given
// unit, which is [Millimetre] or [Inch] in practice.
//
// Understood are decimals with a point or a comma, fractions and mixed numbers
// (5 3/8, 5-3/8, 5⅜, 5 13⁄64), every usual sign and name of millimetre,
// centimetre, metre, micrometre, inch and foot, feet with inches behind (1' 2
// 1/2", 1 ft 2), and one sign before it all. What is refused rather than
// guessed at: 1,500 (a decimal comma or thousands?), a fraction without a unit
// where a bare number is metric, 5 9/8, and two numbers in a row.
//
// The result is exact. A text that is no whole number of nanometres is an error
// that names the exact lengths on either side: 1/128 in and 1/3 in are none,
// while any decimal of an inch with at most five places is (1e-5 in is 254 nm).
// Errors are [*ParseError]; lengths beyond ±[MaxLength] are one.
func Parse(text string, bare Length) (Length, error) {
	v, err := ParseValue(text, bare)
	if err != nil {
		return 0, err
	}
	l, ok := v.Length()
	if !ok {
		return 0, &ParseError{Fault: FaultWrongKind, Text: text, Got: v.Dim()}
	}
	return l, nil
}

// ParseValue reads a quantity with its unit: a length as [Parse] does, an angle
// (45 deg), a mass (2 lb 3 oz), a force, a time (1 h 30 min), an area, a volume
// (also board feet), a temperature, a humidity (45 %rh), a moisture (8 %mc), a
// percentage (38 %, a ratio) or a slope (1:8, a ratio).
//
// A text is never a bare number: without a unit it is a length in the given
// unit, or an error if bare is not above 0. Errors are [*ParseError].
func ParseValue(text string, bare Length) (Value, error) {
	toks, fault := scan(text)
	if fault != nil {
		return Value{}, fault
	}
	r := reader{text: text, toks: toks, bare: bare}
	v, fault := r.quantity()
	if fault != nil {
		return Value{}, fault
	}
	return v, nil
}

// ParseNumber reads a number literal of a document: digits, a decimal point, an
// exponent of at most ±30. It is untyped, as a constant in Go is.
func ParseNumber(literal string) (Value, error) {
	bad := func(f Fault) (Value, error) {
		return Value{}, &ParseError{Fault: f, Text: strings.ToValidUTF8(literal[:min(len(literal), MaxText)], "\uFFFD")}
	}
	if len(literal) > MaxText {
		return bad(FaultTooLong)
	}
	mantissa, exponent, hasExponent := strings.Cut(strings.ToLower(literal), "e")
	digits := strings.TrimPrefix(mantissa, "-")
	if n := numberLength(digits); n == 0 || n != len(digits) || strings.Contains(digits, ",") {
		return bad(FaultNoNumber)
	}
	n, _ := new(big.Rat).SetString(mantissa)
	if hasExponent {
		sign, places := exponentOf(exponent)
		if places < 0 {
			return bad(FaultNoNumber)
		} else if places > 30 {
			return bad(FaultTooLarge)
		}
		power := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
		if sign < 0 {
			power.Inv(power)
		}
		n.Mul(n, power)
	}
	return Value{dim: DimUntyped, num: ofRat(n)}, nil
}

// exponentOf reads +7 or -7; the places are -1 if it is no number and large if
// it is too large.
func exponentOf(s string) (sign, places int) {
	sign = 1
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		sign, s = -1, rest
	} else {
		s = strings.TrimPrefix(s, "+")
	}
	if s == "" || digitsLength(s) != len(s) {
		return sign, -1
	}
	for i := range len(s) {
		places = min(10*places+int(s[i]-'0'), 1000)
	}
	return sign, places
}

// reader reads one quantity from tokens.
type reader struct {
	text string
	toks []token
	pos  int
	bare Length
}

func (r *reader) peek() token { return r.toks[r.pos] }

// next moves past a token; the end stays.
func (r *reader) next() token {
	t := r.toks[r.pos]
	if t.kind != tokEnd {
		r.pos++
	}
	return t
}

func (r *reader) fault(f Fault, t token) *ParseError {
	return &ParseError{Fault: f, Text: r.text, Word: t.text, At: t.at}
}

// amount is a number as it was written, with its unit once that is known.
type amount struct {
	n        *big.Rat
	fraction bool // written with a bar
	unit     *symbol
	first    token
}

func (r *reader) quantity() (Value, *ParseError) {
	if r.peek().kind == tokEnd {
		return Value{}, r.fault(FaultEmpty, r.peek())
	}
	negative := false
	switch r.peek().kind {
	case tokHyphen:
		negative = true
		r.next()
	case tokPlus:
		r.next()
	}
	var terms []amount
	for r.peek().kind != tokEnd {
		a, fault := r.amount()
		if fault != nil {
			return Value{}, fault
		}
		if len(terms) == 0 && r.peek().kind == tokColon && a.unit == nil {
			return r.slope(a, negative)
		}
		terms = append(terms, a)
	}
	if len(terms) == 0 {
		return Value{}, r.fault(FaultNoNumber, r.peek())
	}
	return r.total(terms, negative)
}

// total adds the terms up: one amount, or several of which each may follow the
// one before, as inches feet.
func (r *reader) total(terms []amount, negative bool) (Value, *ParseError) {
	if fault := r.giveUnit(&terms[0]); fault != nil {
		return Value{}, fault
	}
	sum := new(big.Rat)
	for i := range terms {
		t := &terms[i]
		if i > 0 {
			before := terms[i-1]
			less := lesser[before.unit.name]
			if t.unit == nil && before.unit.name == "ft" {
				t.unit = symbols["in"] // 1' 2
			}
			if t.unit == nil || t.unit.name != less || !before.n.IsInt() {
				return Value{}, r.fault(FaultTwoNumbers, t.first)
			}
		}
		sum.Add(sum, new(big.Rat).Mul(t.n, t.unit.factor))
	}
	if negative {
		sum.Neg(sum)
	}
	unit := terms[len(terms)-1].unit
	sum.Add(sum, unit.offset)
	v := Value{dim: unit.dim, num: ofRat(sum)}
	if v.dim == DimLength {
		return v, r.exact(v.num, unit)
	}
	if v.num.tooLarge() {
		return Value{}, r.fault(FaultTooLarge, r.toks[0])
	}
	return v, nil
}

// giveUnit gives a first amount without a unit the unit of bare numbers.
func (r *reader) giveUnit(a *amount) *ParseError {
	switch {
	case a.unit != nil:
		return nil
	case r.bare <= 0:
		return r.fault(FaultNeedsUnit, a.first)
	case a.fraction && r.bare%Inch != 0:
		return r.fault(FaultFractionUnit, a.first)
	}
	name := "mm"
	if r.bare%Inch == 0 {
		name = "in"
	}
	a.unit = &symbol{name: name, dim: DimLength, factor: new(big.Rat).SetInt64(int64(r.bare)), offset: new(big.Rat)}
	return nil
}

// exact says what is wrong with a length in nanometres, if anything is.
func (r *reader) exact(n number, u *symbol) *ParseError {
	step := number{n: 1, d: 1}
	if u.name == "in" || u.name == "ft" {
		step = whole(int64(SixtyFourth))
	}
	if limit := whole(int64(MaxLength)); n.cmp(limit) > 0 || n.cmp(limit.neg()) < 0 {
		return r.fault(FaultTooLarge, r.toks[0])
	}
	if n.isWhole() {
		return nil
	}
	fault := r.fault(FaultNotExact, r.toks[0])
	low, _ := n.mul(step.inverse()).floor().mul(step).int64()
	fault.Low, fault.High = Length(low), Length(low+step.n)
	return fault
}

// slope reads the rest of 1:8.
func (r *reader) slope(rise amount, negative bool) (Value, *ParseError) {
	colon := r.next()
	run, fault := r.amount()
	if fault != nil {
		return Value{}, fault
	}
	if run.unit != nil || r.peek().kind != tokEnd {
		return Value{}, r.fault(FaultUnexpected, colon)
	}
	if run.n.Sign() == 0 {
		return Value{}, r.fault(FaultNoughtBelow, run.first)
	}
	n := new(big.Rat).Quo(rise.n, run.n)
	if negative {
		n.Neg(n)
	}
	return Value{dim: DimRatio, num: ofRat(n)}, nil
}
