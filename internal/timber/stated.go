package timber

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Statement is what a maker states of a wood that the catalogue lacks or has other
// figures for. What is nought is taken from Like, if there is one.
type Statement struct {
	Name, Botanical string
	Kind            Kind
	// Like is the wood that stands in for all that is not said; the zero Species is
	// none.
	Like Species
	// Radial and Tangential are movement coefficients; or else ShrinkRadial and
	// ShrinkTangential are the shrinkages from green to oven-dry that they follow from.
	Radial, Tangential             Coefficient
	ShrinkRadial, ShrinkTangential Shrinkage
	Saturation                     Moisture
	Gravity                        Gravity // on the volume at 12 % moisture content
	MOE                            Stiffness
	MOR, Shear                     Strength
	Hardness                       Hardness
}

// Species returns the stated wood as one of a catalogue, its figures with status
// stated. Errors: those of [CoefficientOf] and [Species.Check].
func (s Statement) Species() (Species, error) {
	out := s.Like
	out.Name, out.Region = s.Name, ""
	if s.Botanical != "" {
		out.Botanical = s.Botanical
	}
	if s.Kind != "" || out.Kind == "" {
		out.Kind = s.Kind
	}
	if out.Kind == "" {
		out.Kind = Hardwood
	}
	if s.Saturation > 0 {
		out.FibreSaturation = stated(s.Saturation, "fsp_pct")
	} else if !out.FibreSaturation.Known() {
		out.FibreSaturation = figure.Exactly(Moisture(30), figure.PracticeSource("timber.species.fsp_pct"))
	}
	for _, side := range []struct {
		to     *figure.Of[Coefficient]
		given  Coefficient
		shrink Shrinkage
		field  string
	}{{&out.Radial, s.Radial, s.ShrinkRadial, "cr"}, {&out.Tangential, s.Tangential, s.ShrinkTangential, "ct"}} {
		if side.given == 0 && side.shrink != 0 {
			c, err := CoefficientOf(side.shrink, out.FibreSaturation.Value)
			if err != nil {
				return Species{}, err
			}
			side.given = c
		}
		if side.given != 0 {
			*side.to = stated(millionths(side.given), side.field)
		}
	}
	if s.Gravity > 0 {
		out.Gravity, out.GravityBasis = stated(s.Gravity, "sg"), GravityAt12
	}
	set(&out.MOE, s.MOE, "moe_gpa")
	set(&out.MOR, s.MOR, "mor_mpa")
	set(&out.Shear, s.Shear, "shear_mpa")
	set(&out.Hardness, s.Hardness, "hardness_n")
	return out, out.Check()
}

func set[N ~float64](to *figure.Of[N], x N, field string) {
	if x > 0 {
		*to = stated(x, field)
	}
}

func stated[N ~float64](x N, field string) figure.Of[N] {
	return figure.Exactly(x, figure.Source{Key: "timber.species." + field, Status: figure.Stated})
}

// millionths rounds a coefficient to what a ledger holds of it.
func millionths(c Coefficient) Coefficient {
	return Coefficient(math.Round(float64(c)*1e6) / 1e6)
}

// Value returns the wood as pure functions of the ledger take it: its name, or, where
// a shop states how it moves or the catalogue has it under another name, a list of its
// name, its coefficients in millionths and its fibre saturation point in hundredths of
// a percent.
func (s Species) Value() unit.Value {
	if known, err := Default().Find(s.Name); err == nil && known.Name == s.Name && known.Radial == s.Radial && known.Tangential == s.Tangential {
		return unit.OfText(s.Name)
	}
	n := func(x, per float64) unit.Value {
		return unit.OfInt(unit.DimUntyped, int64(math.Round(float64(x*per))))
	}
	return unit.OfList(unit.OfText(s.Name), n(float64(s.Radial.Value), 1e6), n(float64(s.Tangential.Value), 1e6), n(float64(s.FibreSaturation.Value), 100))
}

// FromValue returns the wood of [Species.Value], with what says how it moves. Errors:
// those of [Catalogue.Find]; "timber.unknown-name" for any other value.
func FromValue(v unit.Value) (Species, error) {
	if v.Dim() == unit.DimText {
		return Default().Find(v.Text())
	}
	list := v.List()
	if v.Dim() != unit.DimList || len(list) != 4 {
		return Species{}, figure.Refuse("timber.unknown-name", message.Text("name", clip(v.String())), message.List("near"))
	}
	out := Species{Name: list[0].Text()}
	out.Radial = stated(Coefficient(list[1].Float()/1e6), "cr")
	out.Tangential = stated(Coefficient(list[2].Float()/1e6), "ct")
	out.FibreSaturation = stated(Moisture(list[3].Float()/100), "fsp_pct")
	return out, out.Check()
}
