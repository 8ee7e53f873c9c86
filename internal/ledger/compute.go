package ledger

import (
	"fmt"

	"scantling/internal/unit"
)

// compute does the arithmetic of one entry. It reads nothing but the values of
// the arguments, so that doing it again gives the same value.
func (l *Ledger) compute(op Op, fn string, args []ID) (unit.Value, error) {
	var room [8]unit.Value
	vs := room[:0]
	for _, a := range args {
		e, ok := l.Entry(a)
		if !ok {
			return unit.Value{}, fmt.Errorf("argument %d is no entry of this ledger", a)
		}
		vs = append(vs, e.Value)
	}
	if least, most := takes(op); len(vs) < least || len(vs) > most {
		return unit.Value{}, fmt.Errorf("%s of %d arguments", op, len(vs))
	}
	switch op {
	case OpSame:
		return vs[0], nil
	case OpAdd:
		return fold(unit.Value.Add, vs)
	case OpSub:
		return fold(unit.Value.Sub, vs)
	case OpMul:
		return fold(unit.Value.Mul, vs)
	case OpDiv:
		return fold(unit.Value.Div, vs)
	case OpMin:
		return fold(unit.Value.Min, vs)
	case OpMax:
		return fold(unit.Value.Max, vs)
	case OpNeg:
		return vs[0].Neg()
	case OpRound:
		side, err := roundingOf(fn)
		if err != nil {
			return unit.Value{}, err
		}
		return vs[0].RoundTo(vs[1], side, 0)
	case OpShare:
		return share(vs)
	case OpItem:
		return item(vs)
	case OpAs:
		return as(fn, vs)
	case OpCall:
		f, ok := l.funcs[fn]
		if !ok {
			return unit.Value{}, fmt.Errorf("there is no function %q", fn)
		}
		return f(append([]unit.Value(nil), vs...))
	}
	return unit.Value{}, fmt.Errorf("%q is no operation on arguments", string(op))
}

// takes returns how many arguments an operation takes.
func takes(op Op) (least, most int) {
	const many = 1 << 20
	switch op {
	case OpSame, OpNeg:
		return 1, 1
	case OpRound, OpItem:
		return 2, 2
	case OpShare:
		return 3, 3
	case OpAs:
		return 1, 2
	case OpCall:
		return 0, many
	case OpDiv:
		return 2, many
	}
	return 1, many
}

// fold applies an operation from left to right. Bare numbers have no unit here.
func fold(op func(v, w unit.Value, bare unit.Length) (unit.Value, error), vs []unit.Value) (unit.Value, error) {
	v, err := vs[0], error(nil)
	for _, w := range vs[1:] {
		if v, err = op(v, w, 0); err != nil {
			return unit.Value{}, err
		}
	}
	return v, nil
}

func share(vs []unit.Value) (unit.Value, error) {
	whole, ok := vs[0].Length()
	n, okN := vs[1].Int()
	k, okK := vs[2].Int()
	if !ok || !okN || !okK {
		return unit.Value{}, fmt.Errorf("share of %s, %s and %s", vs[0].Dim(), vs[1].Dim(), vs[2].Dim())
	}
	part, ok := whole.ShareOf(k, n)
	if !ok {
		return unit.Value{}, fmt.Errorf("there is no part %d of %d", k, n)
	}
	return unit.OfLength(part), nil
}

func item(vs []unit.Value) (unit.Value, error) {
	n, ok := vs[1].Int()
	if !ok {
		return unit.Value{}, fmt.Errorf("an item is numbered by a whole number, not by %v", vs[1])
	}
	v, ok := vs[0].Item(n)
	if !ok {
		return unit.Value{}, fmt.Errorf("there is no item %d of %d", n, vs[0].Len())
	}
	return v, nil
}

func as(dim string, vs []unit.Value) (unit.Value, error) {
	var bare unit.Length
	if len(vs) == 2 {
		var ok bool
		if bare, ok = vs[1].Length(); !ok {
			return unit.Value{}, fmt.Errorf("a bare number counts in a length, not in %s", vs[1].Dim())
		}
	}
	return vs[0].As(unit.Dim(dim), bare)
}

func roundingOf(name string) (unit.Rounding, error) {
	for _, r := range []unit.Rounding{unit.Nearest, unit.Down, unit.Up} {
		if roundingName(r) == name {
			return r, nil
		}
	}
	return 0, fmt.Errorf("%q is no side to round to", name)
}
