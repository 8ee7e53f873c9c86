package mechanics

import (
	"math"

	"scantling/internal/unit"
)

// Quantities, each in its own unit.
type (
	Mass       float64 // kilograms
	Force      float64 // newtons
	Moment     float64 // newton millimetres
	MassMoment float64 // kilogram metres: a mass times its distance
	Stress     float64 // megapascals; also moduli of elasticity and of rigidity
	Pressure   float64 // kilopascals: a load spread over an area
	Strain     float64 // change of a length over the length
	Curvature  float64 // per millimetre: one over the radius
	Friction   float64 // coefficient of friction
	Ratio      float64 // one by another of a kind
	Degrees    float64 // an angle
)

// gravity is the standard acceleration of free fall, in m/s2.
const gravity = 9.80665

// Weight returns the force by which a mass is pulled down.
func (m Mass) Weight() Force { return Force(float64(m) * gravity) }

// Inch units in this package's own.
const (
	perPound = 4.4482216152605 // newtons in a pound of force
	perInch  = 25.4            // millimetres
	perPSI   = 0.00689475729316836
)

// Pounds returns the force of so many pounds of force.
func Pounds(lbf float64) Force { return Force(lbf * perPound) }

// Pounds returns a force in pounds of force.
func (f Force) Pounds() float64 { return float64(f) / perPound }

// PSI returns the stress of so many pounds to the square inch.
func PSI(psi float64) Stress { return Stress(psi * perPSI) }

// PSF returns the pressure of so many pounds to the square foot.
func PSF(psf float64) Pressure { return Pressure(psf * perPSI / 144 * 1000) }

// On returns the whole force of a pressure on a rectangle.
func (p Pressure) On(a, b unit.Length) Force {
	return Force(float64(p) / 1000 * a.Millimetres() * b.Millimetres())
}

// length rounds millimetres to the nearest nanometre; what is no number, or
// farther than a kilometre, comes out as the greatest length.
func length(mm float64) unit.Length {
	if math.IsNaN(mm) || mm >= unit.MaxLength.Millimetres() {
		return unit.MaxLength
	}
	if mm <= -unit.MaxLength.Millimetres() {
		return -unit.MaxLength
	}
	return unit.FromMillimetres(mm)
}
