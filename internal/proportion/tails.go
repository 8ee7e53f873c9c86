package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Slope returns how many times as long as its lean the side of a dovetail is: 6 in
// softwood, 8 in hardwood. Common practice, no source. Key: "proportion.slope".
func Slope(softwood bool) figure.Of[int] {
	s := figure.PracticeSource("proportion.slope")
	if softwood {
		return figure.Between(6, 5, 7, s)
	}
	return figure.Between(8, 6, 8, s)
}

// Lean returns how far the side of a dovetail of a length leans in over that length,
// at the slope of [Slope], to a hundredth of a millimetre. Key: "proportion.slope".
// Errors: "figure.length-range" outside 1 mm to 5 m.
func Lean(length unit.Length, softwood bool) (figure.Of[unit.Length], error) {
	if err := sized("slope", "length", length); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	s := Slope(softwood)
	at := func(n int) unit.Length {
		return max(unit.Millimetre/100, (length/unit.Length(n)).Round(unit.Millimetre/100, unit.Nearest))
	}
	return ruled("slope", at(s.Value), at(s.High), at(s.Low)), nil
}

// Lap returns the wood that stays before the tails of a half-blind dovetail: a fifth
// of the front's thickness, to the step, at least 3 (others leave a third). Common
// practice, no source. Key: "proportion.lap". Errors: "figure.length-range".
func Lap(front, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("lap", "thickness", front); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	lap := max(unit.MM(3), part(front, 1, 5, step))
	return ruled("lap", lap, unit.MM(3), max(lap, part(front, 1, 3, step))), nil
}

// PinWidth returns how wide the pins between tails are at their narrow ends, and the
// half pins outside: half the thickness, to the step (hand-cut pins go down to a saw's
// kerf). Common practice, no source. Key: "proportion.pin". Errors:
// "figure.length-range" outside 1 mm to 5 m.
func PinWidth(thickness, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("pin", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	half := part(thickness, 1, 2, step)
	return ruled("pin", half, unit.MM(3)/2, thickness), nil
}

// LeastRoot is the least wood that a tail keeps at its root. Common practice, no
// source.
const LeastRoot = 3 * unit.Millimetre

// TailCount returns how many tails stand in parts of a width and a thickness, with
// pins and half pins of such widths and sides of a lean: one for every two thicknesses
// of the width; fewer where they would keep less than [LeastRoot] at their roots.
// Common practice, no source. Errors: "figure.length-range";
// "proportion.tails-too-narrow" where not even one tail has room.
func TailCount(width, thickness, pin, half, lean unit.Length) (int, error) {
	if err := sized("tails", "thickness", thickness); err != nil {
		return 0, err
	}
	if err := sized("tails", "width", width); err != nil {
		return 0, err
	}
	n := max(1, min(maxFingers, (width+thickness)/(2*thickness)))
	for ; ; n-- {
		root := (width-2*half-pin*(n-1))/n - 2*lean
		if root >= LeastRoot {
			return int(n), nil
		}
		if n == 1 {
			return 0, figure.Refuse("proportion.tails-too-narrow", message.Length("width", width),
				message.Length("root", root), message.Length("least", LeastRoot)).Or("proportion.narrower-pins").Or("proportion.other-joint")
		}
	}
}

// Slide is a sliding dovetail.
type Slide struct {
	// Neck is its thickness at the shoulders and Depth its height.
	Neck, Depth figure.Of[unit.Length]
}

// SlidingTail returns the sliding dovetail on a part of a thickness that slides into
// a side of another: a third of the side deep, as a housing is, and two thirds of the
// part thick at its neck. Common practice, no source. Keys: "proportion.slide-depth",
// "proportion.slide-neck". Errors: "figure.length-range" outside 1 mm to 5 m.
func SlidingTail(side, thickness, step unit.Length) (Slide, error) {
	if err := sized("slide-depth", "thickness", side); err != nil {
		return Slide{}, err
	}
	if err := sized("slide-neck", "thickness", thickness); err != nil {
		return Slide{}, err
	}
	return Slide{
		ruled("slide-neck", part(thickness, 2, 3, step), part(thickness, 1, 2, step), part(thickness, 3, 4, step)),
		ruled("slide-depth", part(side, 1, 3, step), part(side, 1, 4, step), part(side, 1, 2, step)),
	}, nil
}
