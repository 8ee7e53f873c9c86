package unit

import (
	"math/big"
	"strings"
)

// amount reads one number and the unit behind it, if one stands there.
func (r *reader) amount() (amount, *ParseError) {
	a, fault := r.mixed()
	if fault != nil {
		return a, fault
	}
	a.unit, fault = r.unit()
	return a, fault
}

// mixed reads 18, 17.6, 3/4, ¾, 5 3/8, 5-3/8 or 5⅜.
func (r *reader) mixed() (amount, *ParseError) {
	first := r.next()
	a := amount{first: first}
	switch first.kind {
	case tokVulgar:
		a.n, a.fraction = big.NewRat(first.frac[0], first.frac[1]), true
		return a, nil
	case tokNumber:
	case tokEnd:
		return a, r.fault(FaultNoNumber, first)
	default:
		return a, r.fault(FaultUnexpected, first)
	}
	if r.peek().kind == tokSlash {
		var fault *ParseError
		a.n, fault = r.fractionOver(first)
		a.fraction = true
		return a, fault
	}
	var fault *ParseError
	if a.n, fault = r.decimal(first); fault != nil {
		return a, fault
	}
	part, fault := r.fractionBehind(first)
	if part != nil {
		a.n.Add(a.n, part)
		a.fraction = true
	}
	return a, fault
}

// fractionBehind reads the fraction of a mixed number; nil if none stands there.
func (r *reader) fractionBehind(first token) (*big.Rat, *ParseError) {
	start := r.pos
	t := r.peek()
	if t.kind == tokHyphen {
		if t.space || t.after {
			return nil, r.fault(FaultUnexpected, t) // 5 - 3/8 looks like a sum
		}
		r.next()
		t = r.peek()
	}
	var part *big.Rat
	switch {
	case t.kind == tokVulgar:
		r.next()
		part = big.NewRat(t.frac[0], t.frac[1])
	case t.kind == tokNumber && r.toks[r.pos+1].kind == tokSlash:
		r.next()
		var fault *ParseError
		if part, fault = r.fractionOver(t); fault != nil {
			return nil, fault
		}
	case r.pos != start:
		return nil, r.fault(FaultUnexpected, r.toks[start])
	case t.kind == tokNumber:
		return nil, r.fault(FaultTwoNumbers, t)
	default:
		return nil, nil
	}
	if strings.Contains(first.text, ".") {
		return nil, r.fault(FaultTwoNumbers, t)
	}
	if part.Cmp(big.NewRat(1, 1)) >= 0 {
		return nil, r.fault(FaultImproper, t)
	}
	return part, nil
}

// fractionOver reads the bar and what is below it, behind the number above.
func (r *reader) fractionOver(above token) (*big.Rat, *ParseError) {
	r.next()
	below := r.next()
	if below.kind != tokNumber {
		return nil, r.fault(FaultNoNumber, below)
	}
	if strings.Contains(above.text+below.text, ".") {
		return nil, r.fault(FaultUnexpected, below)
	}
	n, _ := new(big.Int).SetString(above.text, 10)
	d, _ := new(big.Int).SetString(below.text, 10)
	if d.Sign() == 0 {
		return nil, r.fault(FaultNoughtBelow, below)
	}
	return new(big.Rat).SetFrac(n, d), nil
}

// decimal reads the digits of a token, and refuses a comma that may stand for
// thousands: one to three digits, none of them a leading nought, before exactly
// three.
func (r *reader) decimal(t token) (*big.Rat, *ParseError) {
	if t.comma {
		before, behind, _ := strings.Cut(t.text, ".")
		if len(behind) == 3 && len(before) >= 1 && len(before) <= 3 && before[0] != '0' {
			return nil, r.fault(FaultComma, t)
		}
	}
	n, ok := new(big.Rat).SetString(t.text)
	if !ok {
		return nil, r.fault(FaultNoNumber, t)
	}
	return n, nil
}

// unit reads the words behind a number; nil if there are none.
func (r *reader) unit() (*symbol, *ParseError) {
	first := r.peek()
	if first.kind != tokWord {
		return nil, nil
	}
	words := []string{r.next().text}
	for !quote(first) && r.peek().kind == tokWord && !quote(r.peek()) {
		words = append(words, r.next().text)
	}
	s, ok := symbols[strings.Join(words, " ")]
	if !ok {
		return nil, r.fault(FaultUnknownUnit, first)
	}
	return s, nil
}

func quote(t token) bool { return t.text == `"` || t.text == `'` }
