package strength

import (
	"fmt"

	"scantling/internal/analysis/estimate"
	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// dowels is the pull that draws a row of dowels: diameter, depth in the member, how
// many, the shear strengths of member and dowel in MPa.
func dowels(a []unit.Value) (unit.Value, error) {
	if len(a) != 5 {
		return unit.Value{}, fmt.Errorf("dowels take 5 values, not %d", len(a))
	}
	l, err := lengthsOf(a, 2)
	if err != nil {
		return unit.Value{}, err
	}
	one := mechanics.DowelWithdrawal(l[0], l[1], mechanics.Stress(a[3].Float()), mechanics.Stress(a[4].Float()))
	return estimate.Value(unit.DimForce, float64(one)*a[2].Float()), nil
}

// pairMoment is a pull at half a thickness from the edge that is pressed, in N m.
func pairMoment(a []unit.Value) (unit.Value, error) {
	if len(a) != 2 {
		return unit.Value{}, fmt.Errorf("a pull takes 2 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 1)
	if err != nil {
		return unit.Value{}, err
	}
	return estimate.Value(unit.DimUntyped, float64(mechanics.PairMoment(mechanics.Force(a[0].Float()), l[0]/2))/1000), nil
}

// cheeks is the moment of glue lines in torsion, in N m: width, length, how many, the
// strength of the glue line in MPa.
func cheeks(a []unit.Value) (unit.Value, error) {
	if len(a) != 4 {
		return unit.Value{}, fmt.Errorf("cheeks take 4 values, not %d", len(a))
	}
	l, err := lengthsOf(a, 2)
	n, ok := a[2].Int()
	if err != nil || !ok {
		return unit.Value{}, fmt.Errorf("%v cheeks: %v", a[2], err)
	}
	return estimate.Value(unit.DimUntyped, float64(mechanics.CheekMoment(l[0], l[1], mechanics.Stress(a[3].Float()), int(n)))/1000), nil
}

// screwOut is the pull that draws screws: specific gravity, diameter, thread in the
// wood, how many, and what end grain leaves of it.
func screwOut(a []unit.Value) (unit.Value, error) { return pullOut(a, mechanics.ScrewWithdrawal) }

// nailOut is the same of nails.
func nailOut(a []unit.Value) (unit.Value, error) { return pullOut(a, mechanics.NailWithdrawal) }

func pullOut(a []unit.Value, one func(mechanics.Gravity, unit.Length, unit.Length) mechanics.Force) (unit.Value, error) {
	if len(a) != 5 {
		return unit.Value{}, fmt.Errorf("a pull takes 5 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 2)
	if err != nil || l[1] <= 0 {
		return unit.Value{}, fmt.Errorf("%v deep: %v", a[2], err)
	}
	return estimate.Value(unit.DimForce, float64(one(mechanics.Gravity(a[0].Float()), l[0], l[1]))*a[3].Float()*a[4].Float()), nil
}

// sideways makes a side load a function: the constant of Table 8-4, the diameter, how
// many.
func sideways(one func(mechanics.Ratio, unit.Length) mechanics.Force) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) != 3 {
			return unit.Value{}, fmt.Errorf("a side load takes 3 values, not %d", len(a))
		}
		l, err := lengthsOf(a[1:], 1)
		if err != nil {
			return unit.Value{}, err
		}
		return estimate.Value(unit.DimForce, float64(one(mechanics.Ratio(a[0].Float()), l[0]))*a[2].Float()), nil
	}
}
