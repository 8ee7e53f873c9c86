package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// Placed is a solid in a rigid pose: the frame says where the solid's own axes
// lie.
type Placed struct {
	Solid *Solid
	Frame vec.Frame
}

// Bounds returns a box in the world that holds the placed solid.
func (p Placed) Bounds() (lo, hi vec.V3) {
	if len(p.Solid.body.verts) == 0 {
		return p.Frame.Origin, p.Frame.Origin
	}
	lo, hi = vec.V3{X: inf, Y: inf, Z: inf}, vec.V3{X: -inf, Y: -inf, Z: -inf}
	for _, v := range p.Solid.body.verts {
		w := p.Frame.ToWorld(v)
		lo, hi = smaller(lo, w), larger(hi, w)
	}
	return lo, hi
}

// Intervals returns where the line through o in direction d, in the world,
// runs in the placed solid.
func (p Placed) Intervals(o, d vec.V3) []Interval {
	return p.Solid.Intervals(p.Frame.ToLocal(o), dirToLocal(p.Frame, d))
}

// Centroid returns the centre of volume in the world.
func (p Placed) Centroid() vec.V3 { return p.Frame.ToWorld(p.Solid.Centroid()) }

func dirToLocal(f vec.Frame, d vec.V3) vec.V3 {
	return vec.V3{X: d.Dot(f.U), Y: d.Dot(f.V), Z: d.Dot(f.W)}
}

// within returns the frame of f expressed in g: g after the result is f.
func within(f, g vec.Frame) vec.Frame {
	return vec.Frame{Origin: g.ToLocal(f.Origin), U: dirToLocal(g, f.U), V: dirToLocal(g, f.V), W: dirToLocal(g, f.W)}
}

// moved returns the polyhedron in a frame. Loops are shared, not copied.
func (p *poly) moved(f vec.Frame) *poly {
	q := &poly{verts: make([]vec.V3, len(p.verts)), facets: slices.Clone(p.facets), surfs: make([]surface, len(p.surfs))}
	for i, v := range p.verts {
		q.verts[i] = f.ToWorld(v)
	}
	for i := range q.facets {
		fc := &q.facets[i]
		fc.n = f.DirToWorld(fc.n)
		fc.d = fc.n.Dot(q.verts[fc.loops[0][0]])
	}
	for i, s := range p.surfs {
		q.surfs[i] = s.moved(f)
	}
	q.bound()
	return q
}

// Pairs returns the pairs of placed solids whose boxes come within gap of one
// another, as indices, the lesser first, in order. Sort and sweep along the
// longest axis of the whole.
func Pairs(all []Placed, gap float64) [][2]int {
	type box struct {
		lo, hi vec.V3
		index  int
	}
	boxes := make([]box, len(all))
	lo, hi := vec.V3{X: inf, Y: inf, Z: inf}, vec.V3{X: -inf, Y: -inf, Z: -inf}
	for i, p := range all {
		l, h := p.Bounds()
		boxes[i] = box{l, h, i}
		lo, hi = smaller(lo, l), larger(hi, h)
	}
	axis := int(longest(hi.Sub(lo)))
	slices.SortStableFunc(boxes, func(a, b box) int { return cmp.Compare(a.lo.At(axis), b.lo.At(axis)) })
	var out [][2]int
	g := vec.V3{X: gap, Y: gap, Z: gap}
	for i, a := range boxes {
		for _, b := range boxes[i+1:] {
			if b.lo.At(axis) > a.hi.At(axis)+gap {
				break
			}
			if !apart(a.lo.Sub(g), a.hi.Add(g), b.lo, b.hi) {
				out = append(out, [2]int{min(a.index, b.index), max(a.index, b.index)})
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]int) int {
		if c := cmp.Compare(a[0], b[0]); c != 0 {
			return c
		}
		return cmp.Compare(a[1], b[1])
	})
	return out
}
