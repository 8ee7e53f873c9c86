package proportion

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Loose is a loose tenon: a strip with rounded edges in mortises of both parts.
type Loose struct {
	// Thickness and Width are its own, Into how far it goes into each part, Margin
	// from the end of the joint to the middle of the first.
	Thickness, Width, Into, Margin figure.Of[unit.Length]
}

// LooseTenon returns the loose tenons of a joint between parts, the thinner of a
// thickness, that is so wide, into parts of which the shallower is so deep in the
// direction of the tenon: a third of the thickness; as wide as four times that, but
// no more than half the joint; two thirds of the depth in and never closer than 6
// to coming out, at most five times the thickness. Common practice, no source. Keys:
// "proportion.loose-thickness", "proportion.loose-width",
// "proportion.loose-into", "proportion.loose-margin". Errors: those of
// [TenonThickness] and [TenonLength].
func LooseTenon(thickness, width, into, step unit.Length) (Loose, error) {
	thick, err := TenonThickness(thickness, step)
	if err != nil {
		return Loose{}, err
	}
	if err := sized("loose-width", "width", width); err != nil {
		return Loose{}, err
	}
	long, err := TenonLength(into, step)
	if err != nil {
		return Loose{}, err
	}
	t := thick.Value
	w := max(min(4*t, part(width, 1, 2, step)), t)
	deep := min(long.Value, 5*t)
	return Loose{
		ruled("loose-thickness", t, thick.Low, thick.High),
		ruled("loose-width", w, min(w, 3*t), max(w, 6*t)),
		ruled("loose-into", deep, min(deep, 3*t), long.High),
		ruled("loose-margin", w/2+max(t, behindTenon), w/2+behindTenon, w/2+2*t),
	}, nil
}
