package rules

import (
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// ofTenons are the rules of tenons and loose tenons.
func ofTenons() ledger.Functions {
	loose := func(what func(proportion.Loose) figure.Of[unit.Length]) func([]unit.Value) (unit.Value, error) {
		return sized(4, func(l []unit.Length) (figure.Of[unit.Length], error) {
			r, err := proportion.LooseTenon(l[0], l[1], l[2], l[3])
			return what(r), err
		})
	}
	return ledger.Functions{
		// into, the part's own thickness, step
		"tenon_length": proportioned(func(into, _, step unit.Length) (figure.Of[unit.Length], error) {
			return proportion.TenonLength(into, step)
		}),
		// thickness, step
		"tenon_thickness": sized(2, func(l []unit.Length) (figure.Of[unit.Length], error) { return proportion.TenonThickness(l[0], l[1]) }),
		// width, step
		"tenon_shoulder": sized(2, func(l []unit.Length) (figure.Of[unit.Length], error) { return proportion.TenonShoulder(l[0], l[1]) }),
		// width, the tenon's thickness, step
		"haunch_shoulder": sized(3, func(l []unit.Length) (figure.Of[unit.Length], error) {
			h, err := proportion.TenonHaunch(l[0], l[1], l[2])
			return h.Shoulder, err
		}),
		// thickness, width of the joint, the lesser depth, step
		"loose_thickness": loose(func(l proportion.Loose) figure.Of[unit.Length] { return l.Thickness }),
		"loose_width":     loose(func(l proportion.Loose) figure.Of[unit.Length] { return l.Width }),
		"loose_into":      loose(func(l proportion.Loose) figure.Of[unit.Length] { return l.Into }),
		"loose_margin":    loose(func(l proportion.Loose) figure.Of[unit.Length] { return l.Margin }),
	}
}

// sized makes a rule of so many lengths a function.
func sized(n int, rule func([]unit.Length) (figure.Of[unit.Length], error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		l, err := lengths(a)
		if err != nil || len(l) != n {
			return unit.Value{}, errArguments
		}
		f, err := rule(l)
		return unit.OfLength(f.Value), err
	}
}
