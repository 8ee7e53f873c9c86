package timber

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Sawn says how the growth rings lie in a board.
type Sawn string

// The ways of sawing. SawnUnknown counts with the greater coefficient and shows
// the lesser as the low end.
const (
	SawnUnknown Sawn = ""
	FlatSawn    Sawn = "flat-sawn"    // rings along the width
	QuarterSawn Sawn = "quarter-sawn" // rings through the thickness
)

// Across says which size of a part across the grain is meant.
type Across int

// The two sizes across the grain.
const (
	Width Across = iota
	Thickness
)

const movementTitle, movementEdition = "Wood Handbook FPL-GTR-190", "2010"

// Sources of the two movement equations.
var (
	SourceNarrow = figure.Source{Key: "timber.movement-narrow", Title: movementTitle, Edition: movementEdition, Clause: "Equation 13-1", Status: figure.Memory}
	SourceWide   = figure.Source{Key: "timber.movement-wide", Title: movementTitle, Edition: movementEdition, Clause: "Equation 13-2", Status: figure.Memory}
)

// The moisture contents for which Equation 13-1 holds, in percent.
const narrowLow, narrowHigh = 6, 14

// NarrowChange returns the change of a size by D C (Mf - Mi): Wood Handbook
// FPL-GTR-190 (2010), Equation 13-1, for moisture contents from 6 to 14 %. It is
// used here as the definition of the coefficient and does not check that range;
// [Material.Change] chooses the equation. Positive is growth. Nearest nanometre.
func NarrowChange(size unit.Length, c Coefficient, from, to Moisture) unit.Length {
	return nearest(float64(size) * narrowFactor(c, from, to))
}

// WideChange returns the change of a size by D (Mf - Mi)/(100 F/S - F + Mi):
// Wood Handbook FPL-GTR-190 (2010), Equation 13-2, for shrinkage s from green to
// oven-dry and fibre saturation point f. Moisture contents above f count as f.
// Errors: "figure.number-range" for a shrinkage outside 0.5-20 %.
func WideChange(size unit.Length, s Shrinkage, f, from, to Moisture) (unit.Length, error) {
	c, err := CoefficientOf(s, f)
	if err != nil {
		return 0, err
	}
	return nearest(float64(size) * wideFactor(c, min(from, f), min(to, f))), nil
}

// CoefficientOf returns the movement coefficient that belongs to a shrinkage
// from green to oven-dry: 1/(100 F/S - F + 10), which is how Table 13-5 of the
// Wood Handbook follows from its Tables 4-3 and 4-4.
//
// Errors: "figure.number-range" outside S 0.5-20 % and F 15-40 %.
func CoefficientOf(s Shrinkage, f Moisture) (Coefficient, error) {
	if err := figure.NumberRange("timber.coefficient", "quantity.shrinkage", s, 0.5, 20); err != nil {
		return 0, err
	}
	if err := figure.NumberRange("timber.coefficient", "quantity.moisture", f, 15, 40); err != nil {
		return 0, err
	}
	return Coefficient(1 / (float64(100*float64(f))/float64(s) - float64(f) + 10)), nil
}

func narrowFactor(c Coefficient, from, to Moisture) float64 {
	return float64(float64(c) * float64(to-from))
}

// wideFactor is Equation 13-2 written with the coefficient: 100 F/S - F equals
// 1/C - 10. It is exact in the moisture content, so that there and back closes.
func wideFactor(c Coefficient, from, to Moisture) float64 {
	return float64(to-from) / (1/float64(c) - 10 + float64(from))
}

func nearest(nm float64) unit.Length { return unit.Length(math.Round(nm)) }

// Material is what a size across the grain is made of.
type Material struct {
	Species Species
	Sawn    Sawn
	Across  Across
}

// Coefficient returns the coefficient that the size moves by. Where the sawing
// is unknown the value is the tangential one and the range reaches down to the
// radial; where it is known the range is the source's.
func (m Material) Coefficient() figure.Of[Coefficient] {
	r, t := m.Species.Radial, m.Species.Tangential
	switch {
	case m.Sawn == SawnUnknown:
		return figure.Between(max(t.Value, r.Value), min(r.Low, t.Low), max(r.High, t.High), t.Source)
	case (m.Sawn == FlatSawn) == (m.Across == Width):
		return t
	default:
		return r
	}
}

// law is the equation in use with the coefficients of one size.
type law struct {
	c          figure.Of[Coefficient]
	saturation Moisture
	narrow     bool
}

// law chooses the equation for a set of moisture contents: 13-1 where all lie
// within its range, otherwise 13-2, so that figures of one season agree.
func (m Material) law(at ...Moisture) (law, error) {
	if err := m.Species.Check(); err != nil {
		return law{}, err
	}
	l := law{m.Coefficient(), m.Species.FibreSaturation.Value, true}
	for _, x := range at {
		if err := checkMoisture(x); err != nil {
			return law{}, err
		}
		l.narrow = l.narrow && x >= narrowLow && x <= narrowHigh
	}
	return l, nil
}

func (l law) factor(c Coefficient, from, to Moisture) float64 {
	from, to = min(from, l.saturation), min(to, l.saturation)
	if l.narrow {
		return narrowFactor(c, from, to)
	}
	return wideFactor(c, from, to)
}

// source cites the equation, as strong as its coefficient's own source.
func (l law) source() figure.Source {
	s := SourceWide
	if l.narrow {
		s = SourceNarrow
	}
	s.Status = figure.Weaker(s.Status, l.c.Source.Status)
	return s
}

// Change returns how much a size changes between two moisture contents; positive
// is growth. Low and High bound it by the range of the coefficient (Low is the
// lesser number). The source names the equation: 13-1 within 6-14 % moisture
// content, otherwise 13-2 with the shrinkage that belongs to the coefficient.
// That is the species' own shrinkage within the rounding of Table 13-5, except
// for woods that the table gives a group's or another data set's figure, where
// the table goes before the shrinkage.
//
// Errors: "figure.number-range" for moisture contents outside 0-200 %,
// "figure.length-range" for a size below zero or above a kilometre.
func (m Material) Change(size unit.Length, from, to Moisture) (figure.Of[unit.Length], error) {
	if err := checkSize(size); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	l, err := m.law(from, to)
	if err != nil {
		return figure.Of[unit.Length]{}, err
	}
	by := func(c Coefficient) unit.Length { return nearest(float64(float64(size) * l.factor(c, from, to))) }
	a, b := by(l.c.Low), by(l.c.High)
	return figure.Between(by(l.c.Value), min(a, b), max(a, b), l.source()), nil
}

func checkSize(size unit.Length) error {
	return figure.LengthRange("timber.movement", "quantity.size", size, 0, unit.MaxLength)
}
