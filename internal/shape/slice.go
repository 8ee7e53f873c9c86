package shape

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// slice takes off what lies beyond a plane: a block with the plane as a face, just
// large enough for the part. Where nothing of the part lies beyond, nothing is taken.
func slice(p *piece.Part, s *piece.Slice, i int) []solid.Primitive {
	off, high := s.Off.Axis()
	first, second := others(off)
	at := func(x, y, z piece.Figure) vec.V3 {
		var v [3]float64
		v[first], v[second], v[off] = x.Nm.Millimetres(), y.Nm.Millimetres(), z.Nm.Millimetres()
		return vec.V3{X: v[0], Y: v[1], Z: v[2]}
	}
	o := at(s.From[0], s.From[1], s.At[0])
	a := at(s.To[0], s.From[1], s.At[1]).Sub(o)
	b := at(s.From[0], s.To[1], s.At[2]).Sub(o)
	if s.From[0].Nm == s.To[0].Nm || s.From[1].Nm == s.To[1].Nm {
		return impossible() // the stations do not fix a plane
	}
	f := vec.Frame{Origin: o, U: a.Unit()}
	f.W = a.Cross(b).Unit()
	if f.W.Dot(toward(off, high)) < 0 {
		f.W = f.W.Mul(-1)
	}
	f.V = f.W.Cross(f.U)
	low, far := bounds(p)
	lo, hi := vec.V3{X: far.Norm() + beyond}, vec.V3{X: -far.Norm() - beyond}
	seen := false
	for k := range 8 {
		c := low
		if k&1 != 0 {
			c.X = far.X
		}
		if k&2 != 0 {
			c.Y = far.Y
		}
		if k&4 != 0 {
			c.Z = far.Z
		}
		v := f.ToLocal(c)
		if !seen {
			lo, hi, seen = v, v, true
			continue
		}
		lo = vec.V3{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
		hi = vec.V3{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
	}
	if hi.Z <= 1e-6 {
		return nil
	}
	tag := wallTag(i, Slope)
	return []solid.Primitive{solid.Block(f, vec.V3{X: lo.X - beyond, Y: lo.Y - beyond}, vec.V3{X: hi.X + beyond, Y: hi.Y + beyond, Z: hi.Z + beyond}, tag)}
}

// others returns the two local axes that are not the given one, in their order.
func others(a piece.Local) (first, second piece.Local) {
	switch a {
	case piece.AlongLength:
		return piece.AlongWidth, piece.AlongThickness
	case piece.AlongWidth:
		return piece.AlongLength, piece.AlongThickness
	}
	return piece.AlongLength, piece.AlongWidth
}

// bounds is the box around a part's uncut body in its local axes.
func bounds(p *piece.Part) (lo, hi vec.V3) {
	hi = vec.V3{X: size(p, piece.AlongLength), Y: size(p, piece.AlongWidth), Z: size(p, piece.AlongThickness)}
	if p.Form == piece.Outline {
		l, h := polygon.Profile{Outer: loopOf(p.Outline)}.Bounds()
		lo.X, lo.Y, hi.X, hi.Y = min(lo.X, l.X), min(lo.Y, l.Y), max(hi.X, h.X), max(hi.Y, h.Y)
	}
	return lo, hi
}

// loopOf crosses a closed line into millimetres.
func loopOf(points []piece.OutlinePoint) polygon.Loop {
	loop := make(polygon.Loop, len(points))
	for i, v := range points {
		loop[i] = polygon.Vertex{P2: polygon.P2{X: v.Along.Nm.Millimetres(), Y: v.Across.Nm.Millimetres()}, Bulge: v.Bulge}
	}
	return loop
}

// pocket is an outline sunk into a side.
func pocket(p *piece.Part, k *piece.Pocket, i int) solid.Primitive {
	open, high := k.Open.Axis()
	first, second := others(open)
	f := vec.Frame{U: toward(first, true), V: toward(second, true)}
	f.W = f.U.Cross(f.V)
	whole := size(p, open)
	lo, hi := -beyond, k.Depth.Nm.Millimetres()
	if k.Through || k.Depth.Nm >= p.Sizes()[open].Nm {
		hi = whole + beyond
	}
	if high {
		lo, hi = whole-hi, whole-lo
	}
	if f.W.At(int(open)) < 0 {
		lo, hi = -hi, -lo
	}
	out := solid.Prism{
		Frame: f, Profile: polygon.Profile{Outer: loopOf(k.Outline)}, From: lo, To: hi,
		Caps: [2]solid.Tag{wallTag(i, Bottom), wallTag(i, Bottom)},
	}
	for _, v := range k.Outline {
		w := Flank
		if v.Bulge != 0 {
			w = Round
		}
		out.Sides = append(out.Sides, wallTag(i, w))
	}
	return out
}
