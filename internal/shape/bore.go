package shape

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// bore is a hole, its mouth widened where it has a sink.
func bore(p *piece.Part, b *piece.Bore, i int) solid.Primitive {
	axis, high := b.Open.Axis()
	var at [3]float64
	k := 0
	for a := range at {
		if piece.Local(a) != axis {
			at[a] = b.At[k].Nm.Millimetres()
			k++
		}
	}
	w := toward(axis, true)
	u := toward((axis+1)%3, true)
	f := vec.Frame{Origin: vec.V3{X: at[0], Y: at[1], Z: at[2]}, U: u, V: w.Cross(u), W: w}
	whole, depth := size(p, axis), b.Depth.Nm.Millimetres()
	if sinks(b) {
		if high { // W runs into the wood
			f.Origin = f.Origin.Add(w.Mul(whole))
			f.W = w.Mul(-1)
			f.V = f.W.Cross(u)
		}
		return sunkBore(f, b, whole, i)
	}
	out := solid.Prism{
		Frame: f, Profile: polygon.Circle(polygon.P2{}, float64(b.Diameter.Nm.Millimetres()/2)),
		From: -beyond, To: depth, Sides: []solid.Tag{wallTag(i, Round)},
		Caps: [2]solid.Tag{wallTag(i, Bottom), wallTag(i, Bottom)},
	}
	if high {
		out.From, out.To = whole-depth, whole+beyond
	}
	if b.Through {
		out.From, out.To = -beyond, whole+beyond
	}
	return out
}

// sinks reports whether a hole's mouth is wider than the hole.
func sinks(b *piece.Bore) bool {
	return b.Sink != nil && b.Sink.Depth.Nm > 0 && b.Sink.Diameter.Nm > b.Diameter.Nm
}

// sunkBore is a hole with a wider mouth, turned about its axis; W runs into the wood
// from the surface.
func sunkBore(f vec.Frame, b *piece.Bore, whole float64, i int) solid.Turned {
	r, wide := float64(b.Diameter.Nm.Millimetres()/2), float64(b.Sink.Diameter.Nm.Millimetres()/2)
	sink, depth := b.Sink.Depth.Nm.Millimetres(), b.Depth.Nm.Millimetres()
	if b.Through {
		depth = whole + beyond
	}
	round, bottom, mouth := wallTag(i, Round), wallTag(i, Bottom), wallTag(i, Sunk)
	at := func(r, y float64) polygon.Vertex { return polygon.Vertex{P2: polygon.P2{X: r, Y: y}} }
	// Anticlockwise: outwards above the surface, then down into the wood.
	loop, tags := polygon.Loop{at(0, -beyond)}, []solid.Tag{mouth}
	put := func(r, y float64, t solid.Tag) { loop, tags = append(loop, at(r, y)), append(tags, t) }
	if b.Sink.Flat {
		put(wide, -beyond, mouth)
		put(wide, sink, mouth)
	} else {
		put(wide+float64((wide-r)*beyond/sink), -beyond, mouth)
	}
	if depth > sink+1e-6 {
		put(r, sink, round)
		put(r, depth, bottom)
		put(0, depth, bottom)
	} else {
		if !b.Sink.Flat {
			put(r, sink, bottom)
		}
		put(0, sink, bottom)
	}
	return solid.Turned{Frame: f, Profile: polygon.Profile{Outer: loop}, Sides: tags}
}
