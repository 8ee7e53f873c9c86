package share

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// PlayAlong returns the play at the end of a thing that lies in its channel: a
// rod of 180 gets a place of 182 to 183. It is a 120th of the length to the
// nearest half millimetre, at least 2; High is a millimetre more. Common
// practice, no source. Errors: "figure.length-range" outside 1 mm to 10 m.
func PlayAlong(length unit.Length) (figure.Of[unit.Length], error) {
	source := figure.PracticeSource("share.play-along")
	if err := figure.LengthRange(source.Key, "quantity.length", length, unit.Millimetre, maxRadius); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	play := max(unit.MM(2), (length/120).Round(unit.Millimetre/2, unit.Nearest))
	return figure.Between(play, play, play+unit.Millimetre, source), nil
}

// Hollow is a finger hollow: a trough across the channels in which a finger gets
// under what lies in them.
type Hollow struct {
	// Along is its size along the things, Depth below the surface.
	Along, Depth figure.Of[unit.Length]
}

// FingerHollow returns the hollow for things of which the deepest lies sit deep:
// 32 along (one maker's fingers between dividers; others 30 to 40) and 3 deeper
// than the deepest, at least 8. Common practice, no source. Errors:
// "figure.length-range" for a sit below zero or above 10 m.
func FingerHollow(sit unit.Length) (Hollow, error) {
	along, depth := figure.PracticeSource("share.finger-hollow-along"), figure.PracticeSource("share.finger-hollow-depth")
	if err := figure.LengthRange(depth.Key, "quantity.sit", sit, 0, maxRadius); err != nil {
		return Hollow{}, err
	}
	deep := max(unit.MM(8), sit+unit.MM(3))
	return Hollow{
		figure.Between(unit.MM(32), unit.MM(30), unit.MM(40), along),
		figure.Between(deep, sit+unit.MM(2), deep+unit.MM(4), depth),
	}, nil
}

// LeastLand returns the least land to leave between channels cut to a depth: a
// quarter of the depth, at least 1.5 mm in any wood (thinner lands break out at
// the ends). Common practice, no source.
func LeastLand(depth unit.Length) figure.Of[unit.Length] {
	land := max(1500*unit.Micrometre, (depth/4).Round(unit.Millimetre/10, unit.Up))
	return figure.Between(land, unit.Millimetre, max(land, unit.MM(3)), figure.PracticeSource("share.least-land"))
}

// LeastFloor returns the least thickness to leave under channels cut to a depth:
// as much as the depth, at least 3 mm. Common practice, no source.
func LeastFloor(depth unit.Length) figure.Of[unit.Length] {
	floor := max(unit.MM(3), depth)
	return figure.Between(floor, min(floor, max(unit.MM(3), depth/2)), floor, figure.PracticeSource("share.least-floor"))
}
