package hardware

import (
	"strings"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// ReadScrew reads the kind of a screw as a document says it: "screw 4 x 30",
// "screw no. 8 x 1-1/4 in". The length is as it is said, sold or not; a bare one
// counts in millimetres. False for what is no screw of the table.
func ReadScrew(kind string) (Screw, bool) {
	name, length, ok := sizeOf(kind, "screw ")
	if !ok {
		return Screw{}, false
	}
	s, err := FindScrew(name, unit.Metre)
	if err != nil {
		return Screw{}, false
	}
	s.Length = length
	return s, true
}

// ReadPin reads the kind of a pin or a nail: "panel pin 1.25 x 20", "6d nail x 50".
// False for what is none of the table, or has no thickness.
func ReadPin(kind string) (Pin, bool) {
	name, length, ok := sizeOf(kind, "")
	if !ok {
		return Pin{}, false
	}
	p, err := FindPin(name, unit.Metre)
	if err != nil {
		return Pin{}, false
	}
	p.Length = length
	return p, true
}

// sizeOf parts a kind into its name and its length.
func sizeOf(kind, prefix string) (name string, length unit.Length, ok bool) {
	rest, ok := strings.CutPrefix(strings.ToLower(strings.TrimSpace(kind)), prefix)
	if !ok || len(rest) > maxName {
		return "", 0, false
	}
	name, long, ok := strings.Cut(rest, " x ")
	if !ok {
		return "", 0, false
	}
	length, err := unit.Parse(strings.TrimSpace(long), unit.Millimetre)
	if err != nil || length <= 0 || length > unit.Metre {
		return "", 0, false
	}
	return strings.TrimSpace(name), length, true
}

// plugs are the diameters that plug cutters come in (usual trade sizes, from memory).
var plugs = [...]unit.Length{6 * unit.Millimetre, 8 * unit.Millimetre, 10 * unit.Millimetre, 12 * unit.Millimetre, 15 * unit.Millimetre}

// Plug returns the plug over a head of a width, the least that covers it: its
// diameter and how deep it stands, half that and at least 5. Common practice, no
// source. Key: "hardware.plug".
func Plug(head unit.Length) (diameter, depth figure.Of[unit.Length]) {
	d := plugs[len(plugs)-1]
	for i := len(plugs) - 1; i >= 0; i-- {
		if plugs[i] >= head {
			d = plugs[i]
		}
	}
	return figure.Between(d, min(d, head), max(d, 15*unit.Millimetre), figure.PracticeSource("hardware.plug")), PlugDepth(d)
}

// PlugDepth returns how deep a plug of a diameter stands, as [Plug].
func PlugDepth(diameter unit.Length) figure.Of[unit.Length] {
	deep := max(5*unit.Millimetre, diameter/2)
	return figure.Between(deep, min(deep, 5*unit.Millimetre), max(deep, diameter), figure.PracticeSource("hardware.plug"))
}
