package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// TenonThickness returns how thick a tenon is on a part of a thickness: what two
// cheeks of a third, to the step, leave, to the step too, so that all three are
// figures to set; up to a half where the mortised part is the thicker. Common
// practice, no source. Key: "proportion.tenon-thickness". Errors:
// "figure.length-range" outside 1 mm to 5 m.
func TenonThickness(thickness, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("tenon-thickness", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	third := part(thickness, 1, 3, step)
	left := max(step, (thickness-2*third).Round(step, unit.Nearest))
	return ruled("tenon-thickness", left, min(left, third), part(thickness, 1, 2, step)), nil
}

// behindTenon is the least wood behind a stopped mortise.
const behindTenon = 6 * unit.Millimetre

// TenonLength returns how long a stopped tenon is that goes into a part so deep
// in its direction: two thirds, to the step, but at least 6 stay behind the
// mortise. Common practice, no source. Key: "proportion.tenon-length". Errors:
// "figure.length-range"; "proportion.tenon-short" where less than a quarter could
// go in.
func TenonLength(into, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("tenon-length", "thickness", into); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	most := (into - behindTenon).Round(step, unit.Down)
	if most < into/4 {
		return figure.Of[unit.Length]{}, figure.Refuse("proportion.tenon-short",
			message.Length("thickness", into), message.Length("left", max(most, 0)), message.Length("least", behindTenon)).
			Or("proportion.thicker-part").Or("proportion.through-tenon")
	}
	length := min(part(into, 2, 3, step), most)
	return ruled("tenon-length", length, min(length, part(into, 1, 2, step)), most), nil
}

// TenonShoulder returns the shoulder above or below a tenon on a part of a width
// where nothing asks for more: a tenth of the width, to the step, between 3 and
// 10; it hides the mortise's end. Common practice, no source. Key:
// "proportion.tenon-shoulder". Errors as in [TenonThickness].
func TenonShoulder(width, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("tenon-shoulder", "width", width); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	s := min(max(part(width, 1, 10, step), unit.MM(3)), unit.MM(10))
	return ruled("tenon-shoulder", s, unit.MM(3), max(s, unit.MM(12))), nil
}

// Haunch is the shoulder at the end of a mortised part, where the tenon keeps its
// full width for a little way so that the rail cannot twist.
type Haunch struct {
	// Shoulder is how wide it is, Length how far it goes in.
	Shoulder, Length figure.Of[unit.Length]
}

// TenonHaunch returns the haunch of a tenon on a part of a width, for a tenon of
// a thickness: a third of the width wide (others say a quarter), as long as the
// tenon is thick. Common practice, no source. Keys: "proportion.haunch-shoulder",
// "proportion.haunch-length". Errors as in [TenonThickness].
func TenonHaunch(width, thickness, step unit.Length) (Haunch, error) {
	if err := sized("haunch-shoulder", "width", width); err != nil {
		return Haunch{}, err
	}
	if err := sized("haunch-length", "thickness", thickness); err != nil {
		return Haunch{}, err
	}
	third := part(width, 1, 3, step)
	return Haunch{
		ruled("haunch-shoulder", third, part(width, 1, 4, step), third),
		ruled("haunch-length", thickness, part(thickness, 2, 3, step), thickness),
	}, nil
}

// GlueRoom returns how much deeper a stopped mortise is than its tenon is long: 1.5
// for the glue and the chips. Common practice, no source. Key:
// "proportion.glue-room".
func GlueRoom() figure.Of[unit.Length] {
	return ruled("glue-room", 1500*unit.Micrometre, unit.Millimetre, unit.MM(2))
}

// MortiseWall returns the least wood to leave beside a mortise in a part of a
// thickness: a fifth of it, at most 5. Common practice, no source. Key:
// "proportion.mortise-wall". Errors as in [TenonThickness].
func MortiseWall(thickness unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("mortise-wall", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	least := min(thickness/5, unit.MM(5))
	return ruled("mortise-wall", least, least, max(least, thickness/4)), nil
}

// MortiseEnd returns the least wood to leave between a mortise for a tenon of a
// thickness and the end of its part, so that it does not split out: the thickness
// of the tenon, at least 6. Common practice, no source. Key:
// "proportion.mortise-end". Errors as in [TenonThickness].
func MortiseEnd(thickness unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("mortise-end", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	least := max(thickness, behindTenon)
	return ruled("mortise-end", least, behindTenon, max(least, 2*thickness)), nil
}
