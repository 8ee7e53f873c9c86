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
		profile := polygon.Profile{Outer: loopOf(p.Outline)}
		for _, h := range p.Holes {
			profile.Holes = append(profile.Holes, loopOf(h))
		}
		tags := make([]solid.Tag, profile.Segments())
		for i := range tags {
			tags[i] = solid.Tag(-i - 1)
		}
		return solid.Prism{Frame: vec.World, Profile: profile, To: t, Sides: tags, Caps: caps}
	case piece.Round:
		if len(p.Profile) > 0 {
			return turned(p)
		}
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

// turned is a round part with a profile, turned about the middle of its width and
// thickness.
func turned(p *piece.Part) solid.Turned {
	mid := vec.V3{Y: float64(size(p, piece.AlongWidth) / 2), Z: float64(size(p, piece.AlongThickness) / 2)}
	first, last := p.Profile[0], p.Profile[len(p.Profile)-1]
	var loop polygon.Loop
	var tags []solid.Tag
	put := func(radius, along piece.Figure, bulge float64, t solid.Tag) {
		v := polygon.P2{X: radius.Nm.Millimetres(), Y: along.Nm.Millimetres()}
		loop, tags = append(loop, polygon.Vertex{P2: v, Bulge: bulge}), append(tags, t)
	}
	if first.Radius.Nm > 0 {
		put(piece.Figure{}, first.Along, 0, sideTag(piece.EndLow))
	}
	for i, v := range p.Profile[:len(p.Profile)-1] {
		put(v.Radius, v.Along, v.Bulge, solid.Tag(-i-1))
	}
	put(last.Radius, last.Along, 0, sideTag(piece.EndHigh))
	if last.Radius.Nm > 0 {
		put(piece.Figure{}, last.Along, 0, 0)
	}
	return solid.Turned{
		Frame:   vec.Frame{Origin: mid, U: vec.V3{Y: 1}, V: vec.V3{Z: 1}, W: vec.V3{X: 1}},
		Profile: polygon.Profile{Outer: loop}, Sides: tags,
	}
}
