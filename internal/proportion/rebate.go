package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Rebate is a rebate at the edge or end of a part.
type Rebate struct {
	// Width is along the face, Depth into the thickness, Tongue what stays.
	Width, Depth, Tongue figure.Of[unit.Length]
}

// CornerRebate returns the rebate at the end of one part that takes the thickness
// of the other at a box's corner: as wide as the other is thick, and so deep that
// a tongue of a third of the thickness is left (others leave half). In solid wood
// it wants pins: glue alone holds end grain badly. Common practice, no source.
// Keys: "proportion.rebate-width", "proportion.rebate-depth",
// "proportion.rebate-tongue". Errors: "figure.length-range" outside 1 mm to 5 m;
// "proportion.tongue-too-thin" where the tongue would be under 3.
func CornerRebate(rebated, other, step unit.Length) (Rebate, error) {
	if err := sized("rebate-depth", "thickness", rebated); err != nil {
		return Rebate{}, err
	}
	if err := sized("rebate-width", "thickness", other); err != nil {
		return Rebate{}, err
	}
	tongue := part(rebated, 1, 3, step)
	if least := unit.MM(3); tongue < least {
		return Rebate{}, figure.Refuse("proportion.tongue-too-thin", message.Length("tongue", tongue), message.Length("least", least)).
			Or("proportion.thicker-part").Or("proportion.other-joint")
	}
	half := part(rebated, 1, 2, step)
	return Rebate{
		ruled("rebate-width", other, other, other),
		ruled("rebate-depth", rebated-tongue, rebated-half, rebated-tongue),
		ruled("rebate-tongue", tongue, tongue, half),
	}, nil
}

// BackRebate returns the rebate in a case's sides for its back: as deep (from the
// back edge) as the back is thick, and half the side wide so that half is left
// outside it. Width here is into the side's thickness. Common practice, no
// source. Keys: "proportion.back-rebate-width", "proportion.back-rebate-depth",
// "proportion.rebate-tongue". Errors as in [HousingDepth].
func BackRebate(side, back, step unit.Length) (Rebate, error) {
	if err := sized("back-rebate-width", "thickness", side); err != nil {
		return Rebate{}, err
	}
	if err := sized("back-rebate-depth", "thickness", back); err != nil {
		return Rebate{}, err
	}
	width := part(side, 1, 2, step)
	return Rebate{
		ruled("back-rebate-width", width, part(side, 1, 3, step), part(side, 2, 3, step)),
		ruled("back-rebate-depth", back, back, back+unit.Millimetre),
		ruled("rebate-tongue", side-width, part(side, 1, 3, step), part(side, 2, 3, step)),
	}, nil
}
