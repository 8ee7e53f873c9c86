package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// SourceStrips is where the two strips of a panel come from.
var SourceStrips = figure.Source{Key: "mechanics.strips", Title: "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells", Edition: "2nd edition, 1959", Clause: "Table 8, for the plate that the strips stay above", Status: figure.Memory}

// StripShare returns the share of a spread load that a panel bears along its span where
// it is held at all four edges. Two strips that cross in its middle sag alike,
// q1 a4/E1 = q2 b4/E2 with q1 + q2 = q (the method of Rankine and Grashof), so the share
// is (E1/a4) / (E1/a4 + E2/b4).
//
// The strips leave out that a panel resists twisting: a square one sags 0.0443 q a4/(E h3)
// and its strips 0.0781 (half of 5/32), a long one comes down to the strip alone. So
// what is worked out by it is more than what is there, never less. 1 where a figure is
// nought or less.
func StripShare(span, cross unit.Length, along, across Stress) Ratio {
	if span <= 0 || cross <= 0 || along <= 0 || across <= 0 {
		return 1
	}
	r := span.Millimetres() / cross.Millimetres()
	other := float64(across) / float64(along) * (r * r) * (r * r)
	return Ratio(1 / (1 + float64(other)))
}
