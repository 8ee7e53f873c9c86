package sundries

import (
	"scantling/internal/unit"
)

// Coverage is how far a finish goes, in square metres to the litre.
type Coverage float64

// CoverageOf returns the coverage that an American tin states in square feet to the
// gallon (of 3.785411784 litres).
func CoverageOf(squareFeet float64) Coverage {
	return Coverage(squareFeet * 0.09290304 / 3.785411784)
}

// WetFilm returns how thick a coat lies when it is wet: one over the coverage, a
// litre on so many square metres. Nought where nothing is covered.
func WetFilm(c Coverage) unit.Length {
	if c <= 0 {
		return 0
	}
	return unit.FromMillimetres(1 / float64(c))
}

// Litres returns how much finish so many coats on an area take, before what stays
// in the brush. The area in square metres.
func Litres(area float64, coats int, c Coverage) float64 {
	if c <= 0 || coats < 0 {
		return 0
	}
	return area * float64(coats) / float64(c)
}
