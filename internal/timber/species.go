package timber

import "scantling/internal/figure"

// Quantities of wood, each in its own unit.
type (
	// Coefficient is the change of a size across the grain, as a fraction of the
	// size, for one percent of moisture content.
	Coefficient float64
	// Shrinkage is the loss of a size from green to the basis stated, in percent
	// of the green size.
	Shrinkage float64
	// Gravity is the specific gravity: oven-dry mass over the volume at the basis
	// stated, relative to water.
	Gravity float64
	// Stiffness is a modulus of elasticity along the grain, in GPa.
	Stiffness float64
	// Strength is a stress, in MPa.
	Strength float64
	// Hardness is the side hardness (Janka), in newtons.
	Hardness float64
)

// Kind tells hardwoods from softwoods.
type Kind string

// The kinds of tree: which cutting depths, lead holes and tables apply.
const (
	Hardwood Kind = "hardwood"
	Softwood Kind = "softwood"
)

// GravityBasis says to which volume a specific gravity belongs.
type GravityBasis string

// The bases found in the sources.
const (
	GravityAt12      GravityBasis = "at_12pct"            // volume at 12 % moisture content
	GravityGreen     GravityBasis = "green_volume"        // green volume (Wood Handbook Table 5-5)
	GravityByDensity GravityBasis = "density12_over_1120" // density at 12 % in kg/m3, over 1120
)

// ShrinkBasis says down to which moisture content a shrinkage was measured.
type ShrinkBasis string

// The bases found in the sources.
const (
	ToOvenDry ShrinkBasis = "green_to_ovendry"
	To12      ShrinkBasis = "green_to_12pct" // the Australian way
)

// CoefficientBasis says what a movement coefficient rests on.
type CoefficientBasis string

// The bases found in the sources.
const (
	BySpecies      CoefficientBasis = "species"      // the species' own figure
	ByGroup        CoefficientBasis = "group"        // a commercial group's figure (the oaks)
	ByTwin         CoefficientBasis = "twin"         // the table repeats a related species' figure
	ByImported     CoefficientBasis = "imported"     // Table 13-5 beside another data set's shrinkage
	ByUnit         CoefficientBasis = "unit"         // Australian unit shrinkage
	ByDifferential CoefficientBasis = "differential" // DIN 68100 differential shrinkage
	ByShrinkage    CoefficientBasis = "missing"      // not tabulated: worked out from the shrinkage
)

// Species is one wood of the catalogue. A figure that no source gives is the
// zero figure (see [figure.Of.Known]).
type Species struct {
	// Name is the catalogue's name, the genus' common name first: "Ash, white".
	Name      string
	Botanical string
	Region    string
	Kind      Kind

	Gravity      figure.Of[Gravity]
	GravityBasis GravityBasis

	ShrinkRadial     figure.Of[Shrinkage]
	ShrinkTangential figure.Of[Shrinkage]
	ShrinkVolume     figure.Of[Shrinkage]
	ShrinkBasis      ShrinkBasis

	// Radial and Tangential are the movement coefficients across and along the
	// growth rings.
	Radial           figure.Of[Coefficient]
	Tangential       figure.Of[Coefficient]
	CoefficientBasis CoefficientBasis

	// FibreSaturation is the moisture content above which the size no longer
	// changes.
	FibreSaturation figure.Of[Moisture]

	MOE      figure.Of[Stiffness] // bending, at 12 % moisture content
	MOR      figure.Of[Strength]  // bending, at 12 % moisture content
	Shear    figure.Of[Strength]  // along the grain, at 12 % moisture content
	Hardness figure.Of[Hardness]  // side, at 12 % moisture content
}

// Check reports the first figure that cannot be: a species from a shop document
// must pass before it joins a catalogue.
//
// Keys: "timber.species-without-name", "timber.species-without-movement",
// "figure.number-range".
func (s Species) Check() error {
	if s.Name == "" {
		return figure.Refuse("timber.species-without-name")
	}
	if !s.Tangential.Known() || !s.Radial.Known() {
		return figure.Refuse("timber.species-without-movement", textArg("name", s.Name)).Or("timber.give-coefficients")
	}
	for _, c := range []figure.Of[Coefficient]{s.Radial, s.Tangential} {
		for _, x := range []Coefficient{c.Low, c.Value, c.High} {
			if err := figure.NumberRange(c.Source.Key, "quantity.coefficient", x, 0.0001, 0.01); err != nil {
				return err
			}
		}
	}
	return figure.NumberRange("timber.fibre-saturation", "quantity.moisture", s.FibreSaturation.Value, 15, 40)
}
