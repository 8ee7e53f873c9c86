package solid

import (
	"slices"

	"scantling/internal/geom/vec"
)

// overlap measures the faces that a closer has gathered of A ∩ B.
func (c *closer) overlap() Overlap {
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
		out.Volume += p.volume
		depth, along, mid := c.width(p.halves)
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
