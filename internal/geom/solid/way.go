package solid

import (
	"slices"

	"scantling/internal/geom/vec"
)

// InTheWay returns what of b stands in the way of a when a moves in a straight
// line by the given shift, in the world: the overlap of b with the space that
// the faces of a pass through. What a and b already share does not count, nor
// does b when a slides along its faces. Volume counts twice where two faces of
// a pass through one place.
func InTheWay(a, b Placed, shift vec.V3) Overlap {
	if why := bad(a, b); why != "" {
		return Overlap{Reason: why}
	}
	d := dirToLocal(a.Frame, shift)
	target := b.Solid.body.moved(within(b.Frame, a.Frame))
	perHalf := [2]int{a.Solid.options.facets(), b.Solid.options.facets()}
	out := Overlap{Status: Verified}
	for i := range a.Solid.body.facets {
		f := &a.Solid.body.facets[i]
		if f.n.Dot(d) < 1e-6*d.Norm() {
			continue
		}
		path := a.Solid.body.path(f, d)
		if apart(path.lo, path.hi, target.lo, target.hi) {
			continue
		}
		var o Overlap
		for _, k := range attempts {
			pb := *target
			pb.facets = slices.Clone(target.facets)
			r := pairOf(path, &pb, 0, loose.scaled(k))
			if o = r.overlap(perHalf); o.Status == Verified {
				break
			}
		}
		if o.Status != Verified {
			return o
		}
		out.Volume += o.Volume
		out.Facets += o.Facets
		if o.Depth > out.Depth {
			out.Depth, out.Where, out.Along, out.Tags = o.Depth, o.Where, o.Along, o.Tags
		}
	}
	out.Where, out.Along = a.Frame.ToWorld(out.Where), a.Frame.DirToWorld(out.Along)
	return out
}

// path is the slanting prism that a face passes through.
func (p *poly) path(f *facet, d vec.V3) *poly {
	q := &poly{surfs: p.surfs}
	back := facet{n: f.n.Mul(-1), surf: -1, tag: f.tag}
	front := facet{n: f.n, surf: -1, tag: f.tag}
	for _, loop := range f.loops {
		base, n := int32(len(q.verts)), int32(len(loop))
		for _, v := range loop {
			q.verts = append(q.verts, p.verts[v])
		}
		for _, v := range loop {
			q.verts = append(q.verts, p.verts[v].Add(d))
		}
		var top, bottom []int32
		for i := range n {
			j := (i + 1) % n
			edge := q.verts[base+j].Sub(q.verts[base+i])
			q.facets = append(q.facets, facet{
				loops: [][]int32{{base + i, base + j, base + n + j, base + n + i}},
				n:     edge.Cross(d).Unit(), surf: -1, tag: f.tag,
			})
			top, bottom = append(top, base+n+i), append(bottom, base+n-1-i)
		}
		front.loops, back.loops = append(front.loops, top), append(back.loops, bottom)
	}
	q.facets = append(q.facets, front, back)
	q.bound()
	return q
}

// Behind returns the part of the solid behind a plane, on the side that the W
// of the frame points away from, for views that show a section. The frame is in
// the solid's own axes; the cut face gets the tag.
func (s *Solid) Behind(plane vec.Frame, tag Tag) *Solid {
	if s.status != Verified || s.Empty() {
		return s
	}
	size := s.body.hi.Sub(s.body.lo).Norm() + plane.Origin.Sub(s.body.lo).Norm() + 1
	front := Block(plane, vec.V3{X: -size, Y: -size}, vec.V3{X: size, Y: size, Z: size}, tag)
	return Build(s.bodies, append(slices.Clone(s.cutters), front), s.options)
}
