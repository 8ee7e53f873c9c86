package solid

import (
	"math"
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// overlap measures the faces that a closer has gathered of A ∩ B.
// perHalf are the facets to a half circle of either solid.
func (c *closer) overlap(polys []*poly, perHalf [2]int) Overlap {
	group := c.components()
	type part struct {
		volume float64
		halves []int32
	}
	var parts []part
	number := map[int32]int{}
	var o vec.V3
	if len(c.halves) > 0 {
		o = c.weld.at[c.halves[0].from]
	}
	for i, h := range c.halves {
		k, ok := number[group[h.from]]
		if !ok {
			k = len(parts)
			number[group[h.from]] = k
			parts = append(parts, part{})
		}
		n := c.normal(h.face)
		a, b := c.weld.at[h.from].Sub(o), c.weld.at[h.to].Sub(o)
		pl := &c.planes[c.faces[h.face].plane]
		d := n.Dot(pl.n.Mul(pl.d).Sub(o))
		parts[k].volume += float64(d*a.Cross(b).Dot(n)) / 6
		parts[k].halves = append(parts[k].halves, int32(i))
	}
	var out Overlap
	for _, p := range parts {
		depth, along, mid := c.width(p.halves)
		if depth <= c.slack(p.halves, polys, perHalf, mid) {
			out.Facets += p.volume
			continue
		}
		out.Volume += p.volume
		if depth > out.Depth {
			out.Depth, out.Along, out.Where = depth, along, mid
			out.Tags = c.twoTags(p.halves)
		}
	}
	return out
}

func (c *closer) normal(f int32) vec.V3 {
	n := c.planes[c.faces[f].plane].n
	if c.faces[f].key.sign < 0 {
		return n.Mul(-1)
	}
	return n
}

// components numbers the connected parts of the boundary by vertex.
func (c *closer) components() []int32 {
	g := make([]int32, len(c.weld.at))
	for i := range g {
		g[i] = int32(i)
	}
	root := func(v int32) int32 {
		for g[v] != v {
			g[v] = g[g[v]]
			v = g[v]
		}
		return v
	}
	for _, h := range c.halves {
		a, b := root(h.from), root(h.to)
		g[max(a, b)] = min(a, b)
	}
	for v := range g {
		g[v] = root(int32(v))
	}
	return g
}

// width returns the least extent of a part over the normals of its faces.
func (c *closer) width(halves []int32) (depth float64, along, mid vec.V3) {
	var verts, faces []int32
	for _, i := range halves {
		verts = append(verts, c.halves[i].from)
		faces = append(faces, c.halves[i].face)
	}
	slices.Sort(verts)
	slices.Sort(faces)
	verts, faces = slices.Compact(verts), slices.Compact(faces)
	lo, hi := vec.V3{X: inf, Y: inf, Z: inf}, vec.V3{X: -inf, Y: -inf, Z: -inf}
	for _, v := range verts {
		lo, hi = smaller(lo, c.weld.at[v]), larger(hi, c.weld.at[v])
	}
	depth = inf
	for _, f := range faces {
		n := c.normal(f)
		a, b := inf, -inf
		for _, v := range verts {
			x := n.Dot(c.weld.at[v])
			a, b = min(a, x), max(b, x)
		}
		if b-a < depth {
			depth, along = b-a, n
		}
	}
	return depth, along, lo.Add(hi).Mul(0.5)
}

// slack returns how deep a part may be for its facets alone to account for it:
// the sum of the greatest gaps of the round faces of A and of B that bound it.
// A round body in a round hollow on the same axis is judged by its radii: where
// the body is larger, by more than a micrometre, nothing is excused.
func (c *closer) slack(halves []int32, polys []*poly, perHalf [2]int, mid vec.V3) float64 {
	var gap [2]float64
	var round [2]*surface
	for _, i := range halves {
		k := c.faces[c.halves[i].face].key
		if k.surf < 0 {
			continue
		}
		s := &polys[k.other].surfs[k.surf]
		if g := s.facetGap(perHalf[k.other], mid); g > gap[k.other] {
			gap[k.other], round[k.other] = g, s
		}
	}
	if a, b := round[0], round[1]; a != nil && b != nil && a.kind == cylinder && b.kind == cylinder {
		d := b.origin.Sub(a.origin)
		off := d.Sub(a.axis.Mul(d.Dot(a.axis))).Norm()
		if abs(a.axis.Dot(b.axis)) > 1-1e-9 && off < 1e-3 && c.tighter(halves, a, b) {
			return 0
		}
	}
	sum := gap[0] + gap[1]
	if sum == 0 {
		return 0
	}
	return float64(1.001*sum) + loose.flush
}

// tighter says whether of two coaxial cylinders that bound a part the body is
// larger than the hollow. The body's faces look away from the axis.
func (c *closer) tighter(halves []int32, a, b *surface) bool {
	for _, i := range halves {
		h := c.halves[i]
		k := c.faces[h.face].key
		if k.surf < 0 {
			continue
		}
		s := a
		if k.other == 1 {
			s = b
		}
		p := c.weld.at[h.from]
		r := p.Sub(s.origin)
		radial := r.Sub(s.axis.Mul(r.Dot(s.axis)))
		if radial.Dot(c.normal(h.face)) > 0 { // of a body
			return s.radius > a.radius+b.radius-s.radius+1e-3
		}
	}
	return true
}

// facetGap is how far the facets of the surface stand off it at most, perHalf
// to a half circle, near p.
func (s *surface) facetGap(perHalf int, p vec.V3) float64 {
	r := s.radius
	switch s.kind {
	case cone:
		r = abs(s.radius * p.Sub(s.origin).Dot(s.axis))
	case torus:
		r += abs(s.ring)
	}
	return r * (1 - math.Cos(math.Pi/float64(2*polygon.Facets(r, perHalf))))
}

// twoTags names a face of A and one of B that bound the part.
func (c *closer) twoTags(halves []int32) (tags [2]Tag) {
	var have [2]bool
	for _, i := range halves {
		k := c.faces[c.halves[i].face].key
		if w := int(k.other); !have[w] {
			have[w], tags[w] = true, k.tag
		}
	}
	return tags
}
