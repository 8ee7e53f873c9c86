package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// SourceBow is the source of [TwoLayer.Bow].
var SourceBow = figure.Source{Key: "mechanics.bow", Title: "Timoshenko, Analysis of Bi-Metal Thermostats", Edition: "1925", Clause: "", Status: figure.Memory}

// TwoLayer is two layers glued face to face that want different lengths.
type TwoLayer struct {
	// First and Second are the thicknesses, StiffFirst and StiffSecond the moduli
	// along the direction that bows.
	First, Second           unit.Length
	StiffFirst, StiffSecond Stress
	// Apart is how much more the second layer wants to grow than the first.
	Apart Strain
}

// Bow returns the free curvature of the pair: 6 e (1+m)2 / (h [3 (1+m)2 + (1+mn)
// (m2 + 1/(mn))]), m = t1/t2, n = E1/E2, h = t1+t2 (Timoshenko 1925; formula from
// memory). Positive is hollow on the first layer, which stays the shorter. It is
// the upper limit: no creep of the glue, nothing that holds the piece flat.
//
// Errors: "figure.length-range" and "figure.number-range" for thicknesses and
// moduli of nought or less.
func (t TwoLayer) Bow() (Curvature, error) {
	for _, size := range []unit.Length{t.First, t.Second} {
		if err := figure.LengthRange(SourceBow.Key, "quantity.thickness", size, unit.Micrometre, unit.MaxLength); err != nil {
			return 0, err
		}
	}
	for _, e := range []Stress{t.StiffFirst, t.StiffSecond} {
		if err := figure.NumberRange(SourceBow.Key, "quantity.stiffness", e, 0.001, 1e6); err != nil {
			return 0, err
		}
	}
	m := t.First.Millimetres() / t.Second.Millimetres()
	n := float64(t.StiffFirst) / float64(t.StiffSecond)
	h := (t.First + t.Second).Millimetres()
	square := float64((1 + m) * (1 + m))
	mn := float64(m * n)
	below := float64(3*square) + float64((1+mn)*(float64(m*m)+1/mn))
	return Curvature(float64(6*float64(t.Apart)*square) / (h * below)), nil
}

// EvenBow returns the curvature of a board whose free strain changes evenly from
// face to face by the strain given: e/h, by beam theory.
func EvenBow(apart Strain, thickness unit.Length) Curvature {
	if thickness <= 0 {
		return 0
	}
	return Curvature(float64(apart) / thickness.Millimetres())
}

// Rise returns how far a strip of a width stands off a straight edge when it is
// bent: k w2/8, for bends that are small against the radius.
func (k Curvature) Rise(width unit.Length) unit.Length {
	w := width.Millimetres()
	return length(float64(k) * w * w / 8)
}

// WeightToFlatten returns the load, spread evenly, that presses a strip that is
// bent as an arc flat in its middle while its edges lie on a bench: what bends a
// supported strip by as much, 384 E I rise / (5 w3) (beam theory; [Beam.Sag]). It
// is across the grain, so the modulus is that across the grain.
func WeightToFlatten(k Curvature, width, length, thickness unit.Length, across Stress) Force {
	if width <= 0 {
		return 0
	}
	w, h := width.Millimetres(), thickness.Millimetres()
	inertia := length.Millimetres() * h * h * h / 12
	rise := k.Rise(width).Abs().Millimetres()
	return Force(384 * float64(across) * inertia * rise / (5 * w * w * w))
}
