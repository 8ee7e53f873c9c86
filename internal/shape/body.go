package shape

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// body returns the uncut body of a part in its local axes.
func body(p *piece.Part) solid.Primitive {
	l, w, t := p.Length.Nm.Millimetres(), p.Width.Nm.Millimetres(), p.Thickness.Nm.Millimetres()
	caps := [2]solid.Tag{sideTag(piece.FaceLow), sideTag(piece.FaceHigh)}
	switch p.Form {
	case piece.Outline:
		loop := make(polygon.Loop, len(p.Outline))
		tags := make([]solid.Tag, len(p.Outline))
		for i, v := range p.Outline {
			loop[i] = polygon.Vertex{P2: polygon.P2{X: v.Along.Nm.Millimetres(), Y: v.Across.Nm.Millimetres()}, Bulge: v.Bulge}
			tags[i] = solid.Tag(-i - 1)
		}
		return solid.Prism{Frame: vec.World, Profile: polygon.Profile{Outer: loop}, To: t, Sides: tags, Caps: caps}
	case piece.Round:
		// Along the length, about the middle; a part that is not as thick as wide has
		// no profile here and comes out unverified.
		var circle polygon.Profile
		if p.Width.Nm == p.Thickness.Nm {
			circle = polygon.Circle(polygon.P2{X: float64(w / 2), Y: float64(t / 2)}, float64(w/2))
		}
		return solid.Prism{
			Frame:   vec.Frame{U: vec.V3{Y: 1}, V: vec.V3{Z: 1}, W: vec.V3{X: 1}},
			Profile: circle, To: l, Sides: []solid.Tag{-1},
			Caps: [2]solid.Tag{sideTag(piece.EndLow), sideTag(piece.EndHigh)},
		}
	}
	return solid.Prism{
		Frame: vec.World, Profile: polygon.Rect(polygon.P2{}, polygon.P2{X: l, Y: w}), To: t,
		// The segments of a rectangle: least y, greatest x, greatest y, least x.
		Sides: []solid.Tag{sideTag(piece.EdgeLow), sideTag(piece.EndHigh), sideTag(piece.EdgeHigh), sideTag(piece.EndLow)},
		Caps:  caps,
	}
}
