package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// DowelDiameter returns the dowel for parts of a thickness: the largest of the
// diameters in the shop up to half of it (others say a third). Common practice,
// no source. Key: "proportion.dowel-diameter". Errors: "figure.length-range";
// "proportion.no-dowel" where all are thicker.
func DowelDiameter(thickness unit.Length, shop []unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("dowel-diameter", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	best, least := unit.Length(0), unit.Length(0)
	for _, d := range shop {
		if d > best && 2*d <= thickness {
			best = d
		}
		if least == 0 || d < least {
			least = d
		}
	}
	if best <= 0 {
		return figure.Of[unit.Length]{}, figure.Refuse("proportion.no-dowel", message.Length("thickness", thickness), message.Length("wanted", thickness/2), message.Length("least", least)).
			Or("proportion.thinner-dowel").Or("proportion.thicker-part")
	}
	return ruled("dowel-diameter", best, thickness/3, thickness/2), nil
}

// Dowel is how a dowel lies in both parts.
type Dowel struct {
	// Length is the whole dowel's, Into how far it goes into each part, Hole how
	// deep the holes are drilled, with room for glue.
	Length, Into, Hole figure.Of[unit.Length]
}

// DowelLength returns the length for a diameter: six to seven diameters (3/8 in:
// 2-1/2 in, half in each part), holes 1.5 deeper. Common practice, no source.
// Keys: "proportion.dowel-length", "proportion.dowel-into",
// "proportion.dowel-hole". Errors: "figure.length-range".
func DowelLength(diameter, step unit.Length) (Dowel, error) {
	if err := sized("dowel-length", "diameter", diameter); err != nil {
		return Dowel{}, err
	}
	length := (diameter * 20 / 3).Round(2*step, unit.Nearest)
	into := length / 2
	return Dowel{
		ruled("dowel-length", length, 6*diameter, 7*diameter),
		ruled("dowel-into", into, 3*diameter, diameter*7/2),
		ruled("dowel-hole", into+1500*unit.Micrometre, into+unit.Millimetre, into+unit.MM(2)),
	}, nil
}

// DowelInto returns how far a dowel may go into a part that is only so thick in
// its direction: all but 4 for the point of the drill and the face. Common
// practice, no source. Key: "proportion.dowel-into". Errors: "figure.length-range"
// below 8.
func DowelInto(thickness unit.Length) (figure.Of[unit.Length], error) {
	if err := figure.LengthRange("proportion.dowel-into", "quantity.thickness", thickness, unit.MM(8), maxSize); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	return ruled("dowel-into", thickness-unit.MM(4), thickness-unit.MM(6), thickness-unit.MM(3)), nil
}
