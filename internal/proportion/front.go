package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Scoop is a finger grip cut into the top edge of a front.
type Scoop struct {
	// Width is along the edge, Depth down from it, Below the least front left
	// underneath.
	Width, Depth, Below figure.Of[unit.Length]
}

// FingerScoop returns a scoop for two or three fingers: 40 wide and 15 deep with
// at least 20 of the front left below. A handhold for a whole hand is 25 by 89
// (US federal specification AA-F-358J), which no thin front gives. Common
// practice, no source. Keys: "proportion.scoop-width", "proportion.scoop-depth",
// "proportion.scoop-below".
func FingerScoop() Scoop {
	return Scoop{
		ruled("scoop-width", unit.MM(40), unit.MM(40), unit.MM(100)),
		ruled("scoop-depth", unit.MM(15), unit.MM(12), unit.MM(25)),
		ruled("scoop-below", unit.MM(20), unit.MM(15), unit.MM(25)),
	}
}

// Knobs returns where knobs stand along a front, from its left end: one in the
// middle up to 610 (24 in), above that two a sixth of the width from each end.
// Sources name 18, 24, 30 and 36 in for the change and do not agree. Common
// practice, no source. Key of the change: "proportion.two-knobs-from". Errors:
// "figure.length-range".
func Knobs(width unit.Length) ([]unit.Length, figure.Of[unit.Length], error) {
	from := ruled("two-knobs-from", 24*unit.Inch, 18*unit.Inch, 36*unit.Inch)
	if err := sized("two-knobs-from", "width", width); err != nil {
		return nil, from, err
	}
	if width <= from.Value {
		return []unit.Length{width / 2}, from, nil
	}
	return []unit.Length{width / 6, width - width/6}, from, nil
}

// KnobHeight returns how high a knob stands on a front, from its lower edge: a
// little above the middle, by a twentieth of the height, because a centred knob
// looks low from above. Common practice, no source. Key: "proportion.knob-height".
// Errors: "figure.length-range".
func KnobHeight(height, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("knob-height", "height", height); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	return ruled("knob-height", part(height, 11, 20, step), height/2, part(height, 3, 5, step)), nil
}
