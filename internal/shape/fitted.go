package shape

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// Fitted returns what a piece of hardware takes up as a solid in the piece, with
// so many facets to a half circle.
func Fitted(b piece.Body, facets int) solid.Placed {
	lo := vec.Of(b.Extent[0].Low.Nm, b.Extent[1].Low.Nm, b.Extent[2].Low.Nm)
	axis := piece.Up
	if b.Round {
		axis = b.Axis
	}
	// The frame's third axis lies along the body's, the others follow in turn.
	units := [3]vec.V3{{X: 1}, {Y: 1}, {Z: 1}}
	u, v := (axis+1)%3, (axis+2)%3
	wide, deep, long := b.Extent[u].Size().Millimetres(), b.Extent[v].Size().Millimetres(), b.Extent[axis].Size().Millimetres()
	profile := polygon.Rect(polygon.P2{}, polygon.P2{X: wide, Y: deep})
	if b.Round {
		profile = polygon.Circle(polygon.P2{X: float64(wide / 2), Y: float64(deep / 2)}, float64(wide/2))
	}
	s := solid.Build([]solid.Primitive{solid.Prism{Frame: vec.World, Profile: profile, To: long}}, nil, solid.Options{Facets: facets})
	return solid.Placed{Solid: s, Frame: vec.Frame{Origin: lo, U: units[u], V: units[v], W: units[axis]}}
}
