package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Ends says how a beam is held.
type Ends string

// The ways of holding a beam. A shelf in housings or on pins is simply supported:
// joints of furniture give too much to count as clamped.
const (
	Supported  Ends = "supported"
	Clamped    Ends = "clamped"
	Cantilever Ends = "cantilever" // clamped at one end, free at the other
)

// Loading says where a beam's load lies.
type Loading string

// The loadings. At quarters is half the load at each of the outer quarter points.
const (
	Spread     Loading = "spread"
	Centre     Loading = "centre"
	AtQuarters Loading = "at quarters"
	AtEnd      Loading = "at end" // of a cantilever
)

// SourceBeam is the source of [Beam.Sag].
var SourceBeam = figure.Source{Key: "mechanics.beam", Title: "Wood Handbook FPL-GTR-190", Edition: "2010", Clause: "Equation 9-2, Table 9-1", Status: figure.Read}

// BeamConstants returns kb and ks of the Wood Handbook's deflection formula
// (FPL-GTR-190, 2010, Equation 9-2 and Table 9-1), at midspan or at a
// cantilever's end. Error: "mechanics.no-beam" for a pair that the table lacks.
func BeamConstants(l Loading, e Ends) (kb, ks Ratio, err error) {
	switch {
	case l == Spread && e == Supported:
		return 5.0 / 384, 1.0 / 8, nil
	case l == Spread && e == Clamped:
		return 1.0 / 384, 1.0 / 8, nil
	case l == Spread && e == Cantilever:
		return 1.0 / 8, 1.0 / 2, nil
	case l == Centre && e == Supported:
		return 1.0 / 48, 1.0 / 4, nil
	case l == Centre && e == Clamped:
		return 1.0 / 192, 1.0 / 4, nil
	case l == AtQuarters && e == Supported:
		return 11.0 / 768, 1.0 / 8, nil
	case l == AtEnd && e == Cantilever:
		return 1.0 / 3, 1, nil
	}
	return 0, 0, figure.Refuse("mechanics.no-beam", message.Text("loading", string(l)), message.Text("ends", string(e)))
}

// Beam is a straight beam of rectangular section, bent flatwise.
type Beam struct {
	Span, Width, Thickness unit.Length
	// Stiff is the modulus of elasticity along the span, Rigid the modulus of
	// rigidity in the plane of bending; 0 leaves shear out.
	Stiff, Rigid Stress
	Loading      Loading
	Ends         Ends
}

// Sag is how far a beam bends at once under its load.
type Sag struct{ Bending, Shear unit.Length }

// Whole returns the sag by bending and shear together.
func (s Sag) Whole() unit.Length { return s.Bending + s.Shear }

// Sag returns the deflection under a whole load W: kb W L3/(E I) + ks W L/(G A'),
// I = b h3/12, A' = 5 b h/6 (Wood Handbook FPL-GTR-190, 2010, Equation 9-2).
//
// Errors: "figure.length-range" for sizes of nought or less, "figure.number-range"
// for moduli of nought or less, "mechanics.no-beam".
func (b Beam) Sag(w Force) (Sag, error) {
	kb, ks, err := BeamConstants(b.Loading, b.Ends)
	if err != nil {
		return Sag{}, err
	}
	for _, size := range []unit.Length{b.Span, b.Width, b.Thickness} {
		if err := figure.LengthRange(SourceBeam.Key, "quantity.size", size, unit.Micrometre, unit.MaxLength); err != nil {
			return Sag{}, err
		}
	}
	if err := figure.NumberRange(SourceBeam.Key, "quantity.stiffness", b.Stiff, 0.001, 1e6); err != nil {
		return Sag{}, err
	}
	span, width, h := b.Span.Millimetres(), b.Width.Millimetres(), b.Thickness.Millimetres()
	inertia := width * h * h * h / 12
	out := Sag{Bending: length(float64(kb) * float64(w) * span * span * span / (float64(b.Stiff) * inertia))}
	if b.Rigid > 0 {
		out.Shear = length(float64(ks) * float64(w) * span / (float64(b.Rigid) * (5 * width * h / 6)))
	}
	return out, nil
}

// ShearShare returns the sag by shear over that by bending of a simply supported
// beam under a spread load: 0.96 (E/G)(h/L)2, which follows from Equation 9-2.
func ShearShare(eOverG, lOverH Ratio) Ratio { return 0.96 * eOverG / (lOverH * lOverH) }

// SpanFor returns the longest span of a simply supported shelf under a spread
// pressure that bends no more than one part in so many: the cube root of
// 384 E I / (5 n w), without shear (Architectural Woodwork Standards, 1st edition,
// 2009, 4.4.14.10, whose table it reproduces with n = 144).
//
// Errors: "figure.number-range" for a modulus, a pressure or an n of nought or less.
func SpanFor(stiff Stress, thickness unit.Length, load Pressure, n Ratio) (unit.Length, error) {
	for _, x := range []float64{float64(stiff), float64(load), float64(n), thickness.Millimetres()} {
		if err := figure.NumberRange("mechanics.span", "quantity.size", Ratio(x), 1e-6, 1e9); err != nil {
			return 0, err
		}
	}
	h := thickness.Millimetres()
	inertia := h * h * h / 12 // of a strip 1 mm wide
	return length(root3(384 * float64(stiff) * inertia / (5 * float64(n) * float64(load) / 1000))), nil
}

// StiffnessOf returns the modulus of elasticity from a load at the middle of a
// supported bar and how far it bends: E = P L3/(4 D b h3). Nought where the bar
// does not bend or has no section. Source: Record, Mechanical Properties of Wood.
func StiffnessOf(load Force, sag, span, width, thickness unit.Length) Stress {
	if sag <= 0 || width <= 0 || thickness <= 0 {
		return 0
	}
	l, h := span.Millimetres(), thickness.Millimetres()
	return Stress(float64(load) * l * l * l / (4 * sag.Millimetres() * width.Millimetres() * h * h * h))
}
