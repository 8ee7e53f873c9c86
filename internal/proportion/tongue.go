package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Tongue is the tongue of a tongue and groove.
type Tongue struct {
	// Thickness and Length of the tongue.
	Thickness, Length figure.Of[unit.Length]
}

// TongueFor returns the tongue for parts of which the thinner is so thick: a third of
// it thick, so that the groove's walls are as strong, and as long as it is thick
// (makers go to a half). Common practice, no source. Keys:
// "proportion.tongue-thickness", "proportion.tongue-length". Errors:
// "figure.length-range" outside 1 mm to 5 m.
func TongueFor(thickness, step unit.Length) (Tongue, error) {
	if err := sized("tongue-thickness", "thickness", thickness); err != nil {
		return Tongue{}, err
	}
	third := part(thickness, 1, 3, step)
	return Tongue{
		ruled("tongue-thickness", third, part(thickness, 1, 4, step), part(thickness, 2, 5, step)),
		ruled("tongue-length", third, third, part(thickness, 1, 2, step)),
	}, nil
}
