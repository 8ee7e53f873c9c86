package formula

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Functions returns the functions that the ledger must know to re-do what
// formulas enter in it. More are those of the caller; they may not bear a name
// of ours.
func Functions(more ledger.Functions) ledger.Functions {
	out := ledger.Functions{}
	maps.Copy(out, ours)
	maps.Copy(out, more)
	return out
}

var errArguments = errors.New("arguments that the function does not take")

var ours = ledger.Functions{
	"chosen": func(a []unit.Value) (unit.Value, error) { return nth(a, 2, 1) },
	"list":   func(a []unit.Value) (unit.Value, error) { return unit.OfList(a...), nil },
	"count":  func(a []unit.Value) (unit.Value, error) { return counted(a) },
	"slice":  sliced,
	"join":   joined,
	"not":    func(a []unit.Value) (unit.Value, error) { return truths(a, 1, func(t []bool) bool { return !t[0] }) },
	"and": func(a []unit.Value) (unit.Value, error) {
		return truths(a, 2, func(t []bool) bool { return t[0] && t[1] })
	},
	"or": func(a []unit.Value) (unit.Value, error) {
		return truths(a, 2, func(t []bool) bool { return t[0] || t[1] })
	},
	"equal":            func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c == 0 }) },
	"not_equal":        func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c != 0 }) },
	"less":             func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c < 0 }) },
	"less_or_equal":    func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c <= 0 }) },
	"greater":          func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c > 0 }) },
	"greater_or_equal": func(a []unit.Value) (unit.Value, error) { return compared(a, func(c int) bool { return c >= 0 }) },
	"odd":              func(a []unit.Value) (unit.Value, error) { return parity(a, 1) },
	"even":             func(a []unit.Value) (unit.Value, error) { return parity(a, 0) },
	"abs":              absolute,
	"floor":            func(a []unit.Value) (unit.Value, error) { return wholeOf(a, unit.Down) },
	"ceil":             func(a []unit.Value) (unit.Value, error) { return wholeOf(a, unit.Up) },
	"whole":            func(a []unit.Value) (unit.Value, error) { return wholeOf(a, unit.Nearest) },
	"sin":              ofAngle(math.Sin),
	"cos":              ofAngle(math.Cos),
	"tan":              ofAngle(math.Tan),
	"slope":            slope,
}

// nth returns argument i of n.
func nth(a []unit.Value, n, i int) (unit.Value, error) {
	if len(a) != n {
		return unit.Value{}, errArguments
	}
	return a[i], nil
}

func counted(a []unit.Value) (unit.Value, error) {
	if len(a) != 1 || a[0].Dim() != unit.DimList {
		return unit.Value{}, errArguments
	}
	return unit.OfCount(a[0].Len()), nil
}

// bounds returns the items of the list a[0] from number a[1] on, a[2] of them at
// most, as indices.
func bounds(n int, from, count int64) (int, int) {
	low := min(max(from-1, 0), int64(n))
	high := min(max(from-1+max(count, 0), low), int64(n))
	return int(low), int(high)
}

func sliced(a []unit.Value) (unit.Value, error) {
	if len(a) != 3 || a[0].Dim() != unit.DimList {
		return unit.Value{}, errArguments
	}
	from, okF := a[1].Int()
	count, okC := a[2].Int()
	if !okF || !okC || from > 1<<31 || count > 1<<31 {
		return unit.Value{}, errArguments
	}
	low, high := bounds(a[0].Len(), from, count)
	return unit.OfList(a[0].List()[low:high]...), nil
}

func joined(a []unit.Value) (unit.Value, error) {
	var all []unit.Value
	for _, l := range a {
		if l.Dim() != unit.DimList {
			return unit.Value{}, errArguments
		}
		all = append(all, l.List()...)
	}
	return unit.OfList(all...), nil
}

func truths(a []unit.Value, n int, f func([]bool) bool) (unit.Value, error) {
	if len(a) != n || slices.ContainsFunc(a, func(v unit.Value) bool { return v.Dim() != unit.DimTruth }) {
		return unit.Value{}, errArguments
	}
	t := make([]bool, n)
	for i, v := range a {
		t[i] = v.Truth()
	}
	return unit.OfTruth(f(t)), nil
}

func compared(a []unit.Value, f func(int) bool) (unit.Value, error) {
	if len(a) != 2 {
		return unit.Value{}, errArguments
	}
	if a[0].Dim() == unit.DimTruth && a[1].Dim() == unit.DimTruth {
		c := 1
		if a[0].Truth() == a[1].Truth() {
			c = 0
		}
		return unit.OfTruth(f(c)), nil
	}
	c, err := a[0].Compare(a[1], 0)
	return unit.OfTruth(f(c)), err
}

func parity(a []unit.Value, rest int64) (unit.Value, error) {
	if len(a) != 1 {
		return unit.Value{}, errArguments
	}
	n, ok := a[0].Int()
	if !ok || (a[0].Dim() != unit.DimCount && a[0].Dim() != unit.DimUntyped) {
		return unit.Value{}, errArguments
	}
	return unit.OfTruth((n%2+2)%2 == rest), nil
}

func absolute(a []unit.Value) (unit.Value, error) {
	if len(a) != 1 || !a[0].IsNumeric() {
		return unit.Value{}, errArguments
	}
	if a[0].Sign() < 0 {
		return a[0].Neg()
	}
	return a[0], nil
}

// wholeOf rounds a number without a unit to a whole one.
func wholeOf(a []unit.Value, r unit.Rounding) (unit.Value, error) {
	if len(a) != 1 {
		return unit.Value{}, errArguments
	}
	d := a[0].Dim()
	if d != unit.DimUntyped && d != unit.DimRatio && d != unit.DimCount {
		return unit.Value{}, fmt.Errorf("a %s is not rounded to a whole number: %w", d, errArguments)
	}
	one := unit.OfInt(unit.DimRatio, 1)
	v, err := a[0].As(unit.DimRatio, 0)
	if err != nil {
		return unit.Value{}, err
	}
	if v, err = v.RoundTo(one, r, 0); err != nil {
		return unit.Value{}, err
	}
	return v.As(unit.DimCount, 0)
}
