package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Spacing is a row of fasteners along a joint.
type Spacing struct {
	// Ends is how far the outer ones stand from the ends of the joint, Apart the
	// greatest distance allowed between two.
	Ends, Apart figure.Of[unit.Length]
	// At are their places from the start of the joint, symmetrical.
	At []unit.Length
}

// maxRow bounds a row of fasteners.
const maxRow = 200

// PinSpacing returns where pins stand along a joint: 12 from the ends, at most 50
// apart. Common practice, no source. Keys: "proportion.pin-ends",
// "proportion.pin-apart". Errors: "figure.length-range";
// "proportion.too-many-fasteners" above 200.
func PinSpacing(length unit.Length) (Spacing, error) {
	return spaced("pin", length, ruled("pin-ends", unit.MM(12), unit.MM(8), unit.MM(20)), ruled("pin-apart", unit.MM(50), unit.MM(30), unit.MM(75)))
}

// ScrewSpacing returns where screws stand along a joint: 25 from the ends, at
// most 150 apart. Common practice, no source. Keys: "proportion.screw-ends",
// "proportion.screw-apart". Errors as in [PinSpacing].
func ScrewSpacing(length unit.Length) (Spacing, error) {
	return spaced("screw", length, ruled("screw-ends", unit.MM(25), unit.MM(20), unit.MM(40)), ruled("screw-apart", unit.MM(150), unit.MM(100), unit.MM(200)))
}

// DowelSpacing returns where dowels stand along a joint: twice the diameter from
// the ends at least, at most 75 apart. Common practice, no source. Keys:
// "proportion.dowel-ends", "proportion.dowel-apart". Errors as in [PinSpacing].
func DowelSpacing(length, diameter unit.Length) (Spacing, error) {
	if err := sized("dowel-ends", "diameter", diameter); err != nil {
		return Spacing{}, err
	}
	ends := max(unit.MM(15), 2*diameter)
	return spaced("dowel", length, ruled("dowel-ends", ends, 2*diameter, unit.MM(40)), ruled("dowel-apart", unit.MM(75), unit.MM(50), unit.MM(150)))
}

// spaced puts the fewest fasteners between the ends; a joint too short for two
// gets one in its middle.
func spaced(key string, length unit.Length, ends, apart figure.Of[unit.Length]) (Spacing, error) {
	if err := sized(key+"-apart", "length", length); err != nil {
		return Spacing{}, err
	}
	s := Spacing{Ends: ends, Apart: apart}
	between := length - 2*ends.Value
	if between < ends.Value {
		s.At = []unit.Length{length / 2}
		return s, nil
	}
	gaps := int((between + apart.Value - 1) / apart.Value)
	if gaps >= maxRow {
		return Spacing{}, figure.Refuse("proportion.too-many-fasteners", message.Count("count", gaps+1), message.Count("most", maxRow)).Or("proportion.other-joint")
	}
	at := ends.Value
	s.At = append(s.At, at)
	for _, gap := range between.Share(gaps) {
		at += gap
		s.At = append(s.At, at)
	}
	return s, nil
}

// PinLength returns how long a pin or nail is that holds a part of a thickness on
// the end or edge of another: two and a half times the thickness, to the next
// whole 5 millimetres; at least twice. Common practice, no source. Key:
// "proportion.pin-length". Errors: "figure.length-range".
func PinLength(through unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("pin-length", "thickness", through); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	return ruled("pin-length", (through*5/2).Round(unit.MM(5), unit.Nearest), 2*through, 3*through), nil
}
