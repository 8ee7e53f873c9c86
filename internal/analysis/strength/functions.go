package strength

import (
	"fmt"

	"scantling/internal/analysis/estimate"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{
		"mass of wood":     numbers(unit.DimMass, 2, func(x []float64) float64 { return x[0] * x[1] / 1000 }), // cm3, kg/m3
		"so many times":    numbers(unit.DimMass, 2, func(x []float64) float64 { return x[0] * x[1] }),
		"sum of masses":    numbers(unit.DimMass, 1, total),
		"weight of a mass": numbers(unit.DimForce, 1, func(x []float64) float64 { return float64(mechanics.Mass(x[0] / 1000).Weight()) }),
		"spread load":      spreadLoad,
		"share of a load":  numbers(unit.DimForce, 3, func(x []float64) float64 { return x[0] * x[1] / x[2] }),
		"strip of a panel": stripOfPanel,
		"sag":              sag, "sag with others": sagInStack, "upright hands down": handedDown,
		"sag after years": lengths(1, func(l []unit.Length, x []float64) (unit.Length, error) {
			return mechanics.Lasting(l[0], mechanics.Ratio(x[1]), 1), nil
		}),
		"push of use": numbers(unit.DimForce, 1, func(x []float64) float64 {
			return float64(mechanics.PushOfUse(mechanics.Mass(x[0] / 1000)).Value)
		}),
		"moment on a corner": cornerMoment, "shift of a panel": panelShift,
		"moment about the feet":  standsBy(func(s mechanics.Standing) float64 { return float64(s.Holds) / 1000 }),
		"moment on a soft floor": softFloor,
		"lean":                   standsBy(func(s mechanics.Standing) float64 { return float64(s.Lean()) }),
		"force at a distance":    forceAt,
		"dowels pull out":        dowels,
		"pull bears":             pairMoment,
		"cheeks bear":            cheeks,
		"screw pulls out":        screwOut, "nail pulls out": nailOut,
		"screw pushed sideways": sideways(mechanics.ScrewLateral), "nail pushed sideways": sideways(mechanics.NailLateral),
		"moment over": numbers(unit.DimUntyped, 2, func(x []float64) float64 { return x[0] / x[1] }),
		"force over":  numbers(unit.DimForce, 2, func(x []float64) float64 { return x[0] / x[1] }),
		"jams beyond": lengths(1, func(l []unit.Length, x []float64) (unit.Length, error) {
			return mechanics.JamsBeyond(l[0], mechanics.Friction(x[1])), nil
		}),
		"sticks at": lengths(1, func(l []unit.Length, x []float64) (unit.Length, error) {
			return mechanics.SticksAt(l[0], mechanics.Friction(x[1])), nil
		}),
		"wobble": lengths(2, func(l []unit.Length, _ []float64) (unit.Length, error) {
			half := l[1] / 2
			return mechanics.Wobble(l[0], half, half), nil
		}),
	}
}

func total(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum
}

// floats reads numbers of any dimension, in the unit of the dimension.
func floats(a []unit.Value) []float64 {
	out := make([]float64, len(a))
	for i, v := range a {
		if v.IsNumeric() {
			out[i] = v.Float()
		}
	}
	return out
}

// numbers makes a function of at least so many numbers a function of the ledger.
func numbers(d unit.Dim, least int, what func([]float64) float64) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) < least {
			return unit.Value{}, fmt.Errorf("%d values, not %d", len(a), least)
		}
		for i, v := range a {
			if !v.IsNumeric() {
				return unit.Value{}, fmt.Errorf("value %d is a %s", i+1, v.Dim())
			}
		}
		return estimate.Value(d, what(floats(a))), nil
	}
}

// lengths makes a function of so many lengths and numbers, of which it gives a
// length to the micrometre, a function of the ledger.
func lengths(first int, what func([]unit.Length, []float64) (unit.Length, error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		l, err := lengthsOf(a, first)
		if err != nil || len(a) < 2 {
			return unit.Value{}, fmt.Errorf("%d values: %v", len(a), err)
		}
		out, err := what(l, floats(a))
		return unit.OfLength(out.Round(unit.Micrometre, unit.Nearest)), err
	}
}

func lengthsOf(a []unit.Value, n int) ([]unit.Length, error) {
	if len(a) < n {
		return nil, fmt.Errorf("%d values, not %d", len(a), n)
	}
	out := make([]unit.Length, n)
	for i := range out {
		l, ok := a[i].Length()
		if !ok {
			return nil, fmt.Errorf("value %d is a %s, not a length", i+1, a[i].Dim())
		}
		out[i] = l
	}
	return out, nil
}

// mostOnShelf is the greatest load of a shelf, 200 lb.
const mostOnShelf = 200

// spreadLoad is a pressure in kilopascals on a span and a width, at most 200 lb.
func spreadLoad(a []unit.Value) (unit.Value, error) {
	if len(a) != 3 {
		return unit.Value{}, fmt.Errorf("a load takes 3 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 2)
	if err != nil {
		return unit.Value{}, err
	}
	return estimate.Value(unit.DimForce, float64(min(mechanics.Pounds(mostOnShelf), mechanics.Pressure(a[0].Float()).On(l[0], l[1])))), nil
}

// sag is that of a supported beam under a spread load.
func sag(a []unit.Value) (unit.Value, error) {
	b, load, err := beam(a)
	if err != nil {
		return unit.Value{}, err
	}
	s, err := b.Sag(load)
	return unit.OfLength(s.Whole().Round(unit.Micrometre, unit.Nearest)), err
}

// beam reads a supported beam under a spread load: load, span, width, thickness, modulus
// in GPa, modulus of rigidity as a part of it.
func beam(a []unit.Value) (mechanics.Beam, mechanics.Force, error) {
	if len(a) != 6 {
		return mechanics.Beam{}, 0, fmt.Errorf("a sag takes 6 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 3)
	if err != nil {
		return mechanics.Beam{}, 0, err
	}
	stiff := a[4].Float() * 1000
	return mechanics.Beam{
		Span: l[0], Width: l[1], Thickness: l[2], Stiff: mechanics.Stress(stiff), Rigid: mechanics.Stress(stiff * a[5].Float()),
		Loading: mechanics.Spread, Ends: mechanics.Supported,
	}, mechanics.Force(a[0].Float()), nil
}

// cornerMoment is a push, the height of its place and the number of corners, in N m.
func cornerMoment(a []unit.Value) (unit.Value, error) {
	if len(a) != 3 {
		return unit.Value{}, fmt.Errorf("a corner takes 3 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 1)
	n, ok := a[2].Int()
	if err != nil || !ok || n < 1 {
		return unit.Value{}, fmt.Errorf("%v corners: %v", a[2], err)
	}
	return estimate.Value(unit.DimUntyped, float64(mechanics.RackingMoment(mechanics.Force(a[0].Float()), l[0], int(n)))/1000), nil
}

// panelShift is a push, the panel's width, height and thickness, its rigidity in MPa.
func panelShift(a []unit.Value) (unit.Value, error) {
	if len(a) != 5 {
		return unit.Value{}, fmt.Errorf("a panel takes 5 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 3)
	if err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(mechanics.PanelShift(mechanics.Force(a[0].Float()), l[0], l[1], l[2], mechanics.Stress(a[4].Float())).Round(unit.Micrometre, unit.Nearest)), nil
}

// standsBy makes what keeps a piece standing a function: for each body its mass in
// grams, how far its centre is behind the front feet, and how high.
func standsBy(what func(mechanics.Standing) float64) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) == 0 || len(a)%3 != 0 {
			return unit.Value{}, fmt.Errorf("bodies take 3 values each, not %d in all", len(a))
		}
		var loads []mechanics.Load
		for i := 0; i < len(a); i += 3 {
			l, err := lengthsOf(a[i+1:], 2)
			if err != nil {
				return unit.Value{}, err
			}
			loads = append(loads, mechanics.Load{Mass: mechanics.Mass(a[i].Float() / 1000), Behind: l[0], High: l[1]})
		}
		return estimate.Value(unit.DimUntyped, what(mechanics.Stand(loads))), nil
	}
}

// softFloor is the moment about the front feet when the back feet stand 0.43 in higher:
// the depth between the feet, then the bodies as in standsBy.
func softFloor(a []unit.Value) (unit.Value, error) {
	depth, err := lengthsOf(a, 1)
	if err != nil || depth[0] <= 0 {
		return unit.Value{}, fmt.Errorf("a soft floor under %v", a)
	}
	return standsBy(func(s mechanics.Standing) float64 {
		forward := mechanics.Carpet(mechanics.CarpetStrip.Value, depth[0], s.High)
		return (float64(s.Holds) - float64(float64(s.Mass.Weight())*forward.Millimetres())) / 1000
	})(a[1:])
}

// forceAt is the force that has a moment in N m at a distance; nought where the moment
// is nought or less.
func forceAt(a []unit.Value) (unit.Value, error) {
	if len(a) != 2 {
		return unit.Value{}, fmt.Errorf("a force takes 2 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 1)
	if err != nil || l[0] <= 0 {
		return unit.Value{}, fmt.Errorf("at a distance of %v: %v", a[1], err)
	}
	return estimate.Value(unit.DimForce, max(0, a[0].Float())*1000/l[0].Millimetres()), nil
}
