package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// HousingDepth returns how deep a housing goes into a side: a third of its
// thickness, to the step; makers use a quarter to a third, and half is too much
// where two meet back to back. Common practice, no source. Key:
// "proportion.housing-depth". Errors: "figure.length-range" outside 1 mm to 5 m.
func HousingDepth(side, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("housing-depth", "thickness", side); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	third := part(side, 1, 3, step)
	return ruled("housing-depth", third, part(side, 1, 4, step), third), nil
}

// LeastBetween returns the least wood to leave between two housings that meet
// back to back: two fifths of the side, to the step. Common practice, no source.
// Key: "proportion.back-to-back". Errors as in [HousingDepth].
func LeastBetween(side, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("back-to-back", "thickness", side); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	return ruled("back-to-back", part(side, 2, 5, step), part(side, 1, 3, step), part(side, 1, 2, step)), nil
}

// StoppedEnd returns how far a stopped housing ends before the edge: half the
// side's thickness, to the step, at least 6. Common practice, no source. Key:
// "proportion.stopped-end". Errors as in [HousingDepth].
func StoppedEnd(side, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("stopped-end", "thickness", side); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	end := max(unit.MM(6), part(side, 1, 2, step))
	return ruled("stopped-end", end, unit.MM(5), max(end, unit.MM(12))), nil
}

// GrooveWidth returns how wide a groove or housing is for a part of a measured
// thickness: 0.1 more; 0.2 for parts that are slid in often. Common practice, no
// source. Key: "proportion.groove-width". Errors as in [HousingDepth].
func GrooveWidth(thickness unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("groove-width", "thickness", thickness); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	return ruled("groove-width", thickness+100*unit.Micrometre, thickness, thickness+200*unit.Micrometre), nil
}

// Groove is a groove for a drawer's bottom.
type Groove struct {
	// Depth is into the side, Width for the bottom as measured, Up from the lower
	// edge of the side to the groove.
	Depth, Width, Up figure.Of[unit.Length]
}

// BottomGroove returns the groove for a drawer's bottom: half the side's
// thickness deep (others say a third), wide as [GrooveWidth], 10 up from the edge
// with at least 6.35 left below. Common practice, no source. Keys:
// "proportion.bottom-groove-depth", "proportion.groove-width",
// "proportion.bottom-groove-up". Errors: "figure.length-range";
// "proportion.side-too-thin" where less than 2 would stay behind the groove.
func BottomGroove(side, bottom, step unit.Length) (Groove, error) {
	if err := sized("bottom-groove-depth", "thickness", side); err != nil {
		return Groove{}, err
	}
	width, err := GrooveWidth(bottom)
	if err != nil {
		return Groove{}, err
	}
	depth := part(side, 1, 2, step)
	if side-depth < unit.MM(2) {
		return Groove{}, figure.Refuse("proportion.side-too-thin", message.Length("side", side), message.Length("left", side-depth), message.Length("least", unit.MM(2))).
			Or("proportion.thicker-side").Or("proportion.bottom-slips")
	}
	return Groove{
		ruled("bottom-groove-depth", depth, part(side, 1, 3, step), depth),
		width,
		ruled("bottom-groove-up", unit.MM(10), 6350*unit.Micrometre, unit.MM(12)),
	}, nil
}

// HalvingDepth returns how deep each of two crossing parts of one width is cut:
// half, and 0.5 more so that neither rides on the other. Common practice, no
// source. Key: "proportion.halving-depth". Errors as in [HousingDepth].
func HalvingDepth(width, step unit.Length) (figure.Of[unit.Length], error) {
	if err := sized("halving-depth", "width", width); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	deep := (width / 2).Round(step, unit.Up)
	return ruled("halving-depth", deep+unit.Millimetre/2, deep, deep+unit.Millimetre), nil
}
