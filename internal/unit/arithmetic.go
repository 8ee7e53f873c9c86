package unit

// The operations below work on numbers of any dimension and check that the
// dimensions go together. Where one operand is untyped, or is a text, it takes
// the dimension of the other ([Value.As]); bare is the unit that a bare number
// counts in beside a length, and 0 refuses bare numbers there. Errors are
// [*OpError] and name both dimensions.

// As returns v as a quantity of dimension d.
//
// An untyped number becomes a length in the unit bare, degrees, a count if it
// is whole, a ratio, whole money, percent of humidity or moisture; for area,
// volume, mass, force, time and temperature it is refused, since its unit would
// be a guess. A text is read as by [ParseValue]. A ratio becomes percent or, if
// it is whole, a count; a count becomes a ratio. All else stays as it is or is
// refused.
func (v Value) As(d Dim, bare Length) (Value, error) {
	refuse := func(f Fault) (Value, error) { return Value{}, &OpError{Fault: f, Op: "as", A: v.dim, B: d} }
	switch {
	case v.dim == d && d != "":
		return v, nil
	case v.dim == DimText:
		read, err := v.quantity("as", d, bare)
		if err != nil {
			return Value{}, err
		}
		return read.As(d, bare)
	}
	factor, fault := conversion(v.dim, d, bare)
	if fault != "" {
		return refuse(fault)
	}
	n := v.num.mul(factor)
	if d == DimCount && !n.isWhole() {
		return refuse(FaultNotWhole)
	}
	if n.tooLarge() {
		return refuse(FaultTooLarge)
	}
	return Value{dim: d, num: n}, nil
}

// conversion returns what a number of one dimension is multiplied by to become
// one of another.
func conversion(from, to Dim, bare Length) (number, Fault) {
	one, hundred := whole(1), whole(100)
	switch from {
	case DimUntyped:
		switch to {
		case DimLength:
			if bare <= 0 {
				return one, FaultNeedsUnit
			}
			return whole(int64(bare)), ""
		case DimMoney:
			return hundred, ""
		case DimAngle, DimCount, DimRatio, DimHumidity, DimMoisture:
			return one, ""
		case DimArea, DimVolume, DimMass, DimForce, DimTime, DimTemp:
			return one, FaultNeedsUnit
		}
	case DimRatio:
		switch to {
		case DimHumidity, DimMoisture:
			return hundred, ""
		case DimCount:
			return one, ""
		}
	case DimCount:
		if to == DimRatio {
			return one, ""
		}
	}
	return one, FaultDimensions
}

// quantity reads a text value as a quantity.
func (v Value) quantity(op string, other Dim, bare Length) (Value, error) {
	read, err := ParseValue(v.Text(), bare)
	if err != nil {
		cause, _ := err.(*ParseError)
		return Value{}, &OpError{Fault: FaultNotANumber, Op: op, A: v.dim, B: other, Text: v.Text(), Cause: cause}
	}
	return read, nil
}

// match brings two operands to one dimension.
func match(op string, a, b Value, bare Length) (Value, Value, error) {
	a, b, err := numeric(op, a, b, bare)
	switch {
	case err != nil || a.dim == b.dim:
		return a, b, err
	case a.dim == DimUntyped && b.dim == DimCount && !a.num.isWhole():
		return Value{DimRatio, a.num, nil}, Value{DimRatio, b.num, nil}, nil
	case b.dim == DimUntyped && a.dim == DimCount && !b.num.isWhole():
		return Value{DimRatio, a.num, nil}, Value{DimRatio, b.num, nil}, nil
	case a.dim == DimUntyped, a.dim == DimCount && b.dim == DimRatio:
		conv, err := a.As(b.dim, bare)
		return conv, b, inOperation(err, op, a, b)
	case b.dim == DimUntyped, b.dim == DimCount && a.dim == DimRatio:
		conv, err := b.As(a.dim, bare)
		return a, conv, inOperation(err, op, a, b)
	}
	return a, b, &OpError{Fault: FaultDimensions, Op: op, A: a.dim, B: b.dim}
}

// inOperation says of a failed conversion in which operation it failed.
func inOperation(err error, op string, a, b Value) error {
	if e, ok := err.(*OpError); ok {
		return &OpError{Fault: e.Fault, Op: op, A: a.dim, B: b.dim, Text: e.Text, Cause: e.Cause}
	}
	return err
}

// numeric reads texts that stand beside numbers and refuses what is none.
func numeric(op string, a, b Value, bare Length) (Value, Value, error) {
	var err error
	if a.dim == DimText && b.IsNumeric() {
		if a, err = a.quantity(op, b.dim, bare); err != nil {
			return a, b, err
		}
	}
	if b.dim == DimText && a.IsNumeric() {
		if b, err = b.quantity(op, a.dim, bare); err != nil {
			return a, b, err
		}
	}
	if !a.IsNumeric() || !b.IsNumeric() {
		return a, b, &OpError{Fault: FaultNotANumber, Op: op, A: a.dim, B: b.dim}
	}
	return a, b, nil
}

// result makes a value of an operation's outcome, unless it has grown too large.
func result(op string, a, b Value, d Dim, n number) (Value, error) {
	if n.tooLarge() {
		return Value{}, &OpError{Fault: FaultTooLarge, Op: op, A: a.dim, B: b.dim}
	}
	return Value{dim: d, num: n}, nil
}

// Add returns v plus w.
func (v Value) Add(w Value, bare Length) (Value, error) {
	a, b, err := match("+", v, w, bare)
	if err != nil {
		return Value{}, err
	}
	return result("+", v, w, a.dim, a.num.add(b.num))
}

// Sub returns v less w.
func (v Value) Sub(w Value, bare Length) (Value, error) {
	a, b, err := match("-", v, w, bare)
	if err != nil {
		return Value{}, err
	}
	return result("-", v, w, a.dim, a.num.add(b.num.neg()))
}

// Neg returns v with the other sign.
func (v Value) Neg() (Value, error) {
	if !v.IsNumeric() {
		return Value{}, &OpError{Fault: FaultNotANumber, Op: "-", A: v.dim, B: v.dim}
	}
	return Value{dim: v.dim, num: v.num.neg()}, nil
}

// Mul returns v times w: a number, count or ratio times anything, a length
// times a length (an area) or an area (a volume). A count times what makes it
// no longer whole is a ratio.
func (v Value) Mul(w Value, bare Length) (Value, error) {
	a, b, err := numeric("*", v, w, bare)
	if err != nil {
		return Value{}, err
	}
	d, ok := product(a.dim, b.dim)
	if !ok {
		return Value{}, &OpError{Fault: FaultDimensions, Op: "*", A: a.dim, B: b.dim}
	}
	n := a.num.mul(b.num)
	return result("*", v, w, wholeOrRatio(d, n), n)
}

// Div returns v by w: anything by a number, count or ratio; two of one
// dimension, which gives a ratio; a volume by an area or a length, and an area
// by a length. A count by a number that does not go into it is a ratio.
func (v Value) Div(w Value, bare Length) (Value, error) {
	a, b, err := numeric("/", v, w, bare)
	if err != nil {
		return Value{}, err
	}
	d, ok := quotient(a.dim, b.dim)
	if !ok {
		return Value{}, &OpError{Fault: FaultDimensions, Op: "/", A: a.dim, B: b.dim}
	}
	if b.num.sign() == 0 {
		return Value{}, &OpError{Fault: FaultByNought, Op: "/", A: a.dim, B: b.dim}
	}
	n := a.num.mul(b.num.inverse())
	return result("/", v, w, wholeOrRatio(d, n), n)
}

func wholeOrRatio(d Dim, n number) Dim {
	if d == DimCount && !n.isWhole() {
		return DimRatio
	}
	return d
}

// rank orders the dimensions that are plain numbers: of two, the later wins.
func rank(d Dim) int {
	switch d {
	case DimUntyped:
		return 1
	case DimCount:
		return 2
	case DimRatio:
		return 3
	}
	return 0
}

// power is how many lengths a dimension is multiplied from; -1 if it is none.
func power(d Dim) int {
	switch d {
	case DimLength:
		return 1
	case DimArea:
		return 2
	case DimVolume:
		return 3
	}
	return -1
}

var powers = [...]Dim{DimRatio, DimLength, DimArea, DimVolume}

func product(a, b Dim) (Dim, bool) {
	ra, rb := rank(a), rank(b)
	switch {
	case a == DimTemp || b == DimTemp:
		return "", false
	case ra > 0 && (rb == 0 || rb > ra):
		return b, true
	case rb > 0:
		return a, true
	case power(a) > 0 && power(b) > 0 && power(a)+power(b) < len(powers):
		return powers[power(a)+power(b)], true
	}
	return "", false
}

func quotient(a, b Dim) (Dim, bool) {
	ra, rb := rank(a), rank(b)
	switch {
	case a == DimTemp || b == DimTemp:
		return "", false
	case ra > 0 && rb > 0:
		if a == DimCount && b == DimUntyped || a == DimUntyped && b == DimUntyped {
			return a, true
		}
		return DimRatio, true
	case rb > 0:
		return a, true
	case power(a) > 0 && power(b) > 0 && power(a) >= power(b):
		return powers[power(a)-power(b)], true
	case a == b:
		return DimRatio, true
	}
	return "", false
}

// Compare returns -1, 0 or 1 as v is less than, equal to or greater than w.
// Two texts are compared by their bytes.
func (v Value) Compare(w Value, bare Length) (int, error) {
	if v.dim == DimText && w.dim == DimText {
		switch a, b := v.Text(), w.Text(); {
		case a < b:
			return -1, nil
		case a > b:
			return 1, nil
		}
		return 0, nil
	}
	a, b, err := match("compare", v, w, bare)
	if err != nil {
		return 0, err
	}
	return a.num.cmp(b.num), nil
}

// Min returns the lesser of v and w, in their common dimension.
func (v Value) Min(w Value, bare Length) (Value, error) { return pick("min", v, w, bare, -1) }

// Max returns the greater of v and w, in their common dimension.
func (v Value) Max(w Value, bare Length) (Value, error) { return pick("max", v, w, bare, 1) }

func pick(op string, v, w Value, bare Length, sign int) (Value, error) {
	a, b, err := match(op, v, w, bare)
	if err != nil {
		return Value{}, err
	}
	if a.num.cmp(b.num)*sign >= 0 {
		return a, nil
	}
	return b, nil
}

// RoundTo returns the multiple of step beside v on the given side; step must be
// above nought and of the dimension of v.
func (v Value) RoundTo(step Value, side Rounding, bare Length) (Value, error) {
	a, b, err := match("round", v, step, bare)
	if err != nil {
		return Value{}, err
	}
	if b.num.sign() <= 0 {
		return Value{}, &OpError{Fault: FaultByNought, Op: "round", A: a.dim, B: b.dim}
	}
	steps := a.num.mul(b.num.inverse()).round(side)
	return result("round", v, step, a.dim, steps.mul(b.num))
}
