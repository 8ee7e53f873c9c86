package timber

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Density is a mass for a volume, in kg/m3.
type Density float64

// SourceDensity is the source of [Species.Density]. The rule that takes specific
// gravity from one basis to another is quoted without its equation's number.
var SourceDensity = figure.Source{Key: "timber.density", Title: movementTitle, Edition: movementEdition, Clause: "chapter 4", Status: figure.Memory}

// Density returns the density of the wood at a moisture content: 1000 G (1+M/100)
// with G, the specific gravity, taken to the volume at that moisture content by
// Gm = Gb/(1 - 0.265 a Gb), a = (30 - M)/30, Gb on green volume (Wood Handbook
// FPL-GTR-190, 2010, chapter 4).
//
// Errors: "timber.unknown-figure" where the catalogue has no specific gravity,
// "figure.number-range" for the moisture content.
func (s Species) Density(m Moisture) (figure.Of[Density], error) {
	if err := checkMoisture(m); err != nil {
		return figure.Of[Density]{}, err
	}
	if !s.Gravity.Known() {
		return figure.Of[Density]{}, figure.Refuse("timber.unknown-figure", textArg("name", s.Name)).Or("timber.weigh-a-piece")
	}
	at := func(g Gravity) Density { return DensityAt(s.gravityAt(g, m), m) }
	source := SourceDensity
	source.Status = figure.Weaker(source.Status, s.Gravity.Source.Status)
	return figure.Between(at(s.Gravity.Value), at(s.Gravity.Low), at(s.Gravity.High), source), nil
}

// DensityAt returns 1000 G (1+M/100) for a specific gravity on the volume at the
// same moisture content (Wood Handbook FPL-GTR-190, 2010, chapter 4), in kg/m3.
func DensityAt(g Gravity, m Moisture) Density {
	return Density(float64(1000*float64(g)) * (1 + float64(m)/100))
}

func (s Species) gravityAt(g Gravity, m Moisture) Gravity {
	green := float64(g)
	if s.GravityBasis != GravityGreen {
		green = float64(g) / (1 + float64(0.265*dryness(12)*float64(g)))
	}
	return Gravity(green / (1 - float64(0.265*dryness(m)*green)))
}

// dryness is a of [Species.Density]: 0 at and above 30 %, 1 at 0 %.
func dryness(m Moisture) float64 { return max(0, (30-float64(m))/30) }

// SourceSize is the source of [SizeAt].
var SourceSize = figure.Source{Key: "timber.sawn-size", Title: "EN 1313-1", Edition: "2010", Clause: "clause 5", Status: figure.Read}

// SizeAt returns what a sawn size stated at 20 % moisture content measures at
// another, by the sawmill's rule of 0.25 % of the size per 1 % of moisture up to
// 30 % (EN 1313-1:2010, clause 5; the same in EN 336). It is a rule for buying,
// not for fits. Nearest nanometre. Errors: "figure.number-range" outside 5-30 %.
func SizeAt(nominal unit.Length, m Moisture) (unit.Length, error) {
	if err := figure.NumberRange(SourceSize.Key, "quantity.moisture", m, 5, 30); err != nil {
		return 0, err
	}
	return nearest(float64(nominal) * (1 - float64(0.0025*float64(20-m)))), nil
}
