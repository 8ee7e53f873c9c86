package rules

import (
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// ofCorners are the rules of tongues, mitres and dovetails.
func ofCorners() ledger.Functions {
	return ledger.Functions{
		"tongue_depth":     proportioned(tongueDepth),
		"tongue_thickness": sized(2, tongueThickness),
		"slide_depth":      proportioned(slideDepth),
		"slide_neck":       sized(3, slideNeck),
		"lap":              sized(2, lap),
		"lean_softwood":    sized(1, lean(true)),
		"lean_hardwood":    sized(1, lean(false)),
		"pin":              sized(2, pin),
		"spline_thickness": sized(3, splineThickness),
		"spline_depth":     sized(3, splineDepth),
		"spline_heel":      sized(3, splineHeel),
		"key_thickness":    sized(4, keyThickness),
		"key_depth":        sized(4, keyDepth),
		"mitre_length": sized(2, func(l []unit.Length) (figure.Of[unit.Length], error) {
			return figure.Exactly(proportion.MitreLength(l[0], l[1]), figure.Source{}), nil
		}),
		"mitre_along": triangle(proportion.MitreAlong),
		"mitre_leg":   triangle(proportion.MitreLeg),
	}
}

// triangle makes a rule of a mitre's triangle a function of three lengths.
func triangle(rule func(length, of, by unit.Length) unit.Length) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		l, err := lengths(a)
		if err != nil || len(l) != 3 {
			return unit.Value{}, errArguments
		}
		return unit.OfLength(rule(l[0], l[1], l[2])), nil
	}
}

func tongueThickness(l []unit.Length) (figure.Of[unit.Length], error) {
	t, err := proportion.TongueFor(l[0], l[1])
	return t.Thickness, err
}

func tongueDepth(side, other, step unit.Length) (figure.Of[unit.Length], error) {
	t, err := proportion.TongueFor(min(side, other), step)
	return t.Length, err
}

func slideDepth(side, other, step unit.Length) (figure.Of[unit.Length], error) {
	s, err := proportion.SlidingTail(side, other, step)
	return s.Depth, err
}

func slideNeck(l []unit.Length) (figure.Of[unit.Length], error) {
	s, err := proportion.SlidingTail(l[0], l[1], l[2])
	return s.Neck, err
}

func lap(l []unit.Length) (figure.Of[unit.Length], error) { return proportion.Lap(l[0], l[1]) }

func lean(softwood bool) func(l []unit.Length) (figure.Of[unit.Length], error) {
	return func(l []unit.Length) (figure.Of[unit.Length], error) { return proportion.Lean(l[0], softwood) }
}

func pin(l []unit.Length) (figure.Of[unit.Length], error) { return proportion.PinWidth(l[0], l[1]) }

func splineThickness(l []unit.Length) (figure.Of[unit.Length], error) {
	s, err := proportion.MitreSpline(l[0], l[1], l[2])
	return s.Thickness, err
}

func splineDepth(l []unit.Length) (figure.Of[unit.Length], error) {
	s, err := proportion.MitreSpline(l[0], l[1], l[2])
	return s.Depth, err
}

func splineHeel(l []unit.Length) (figure.Of[unit.Length], error) {
	s, err := proportion.MitreSpline(l[0], l[1], l[2])
	return s.Heel, err
}

func keyThickness(l []unit.Length) (figure.Of[unit.Length], error) {
	k, err := proportion.MitreKeys(l[0], l[1], l[2], l[3])
	return k.Thickness, err
}

func keyDepth(l []unit.Length) (figure.Of[unit.Length], error) {
	k, err := proportion.MitreKeys(l[0], l[1], l[2], l[3])
	return k.Depth, err
}
