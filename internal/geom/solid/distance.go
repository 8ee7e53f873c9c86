package solid

import (
	"cmp"
	"slices"

	"scantling/internal/geom/vec"
)

// Gap is the least distance between two placed solids, as faceted: 0 where
// they touch or overlap. A and B are points of either at that distance.
type Gap struct {
	Status   Status
	Reason   string
	Distance float64
	A, B     vec.V3
}

// Distance returns the least distance between two placed solids.
func Distance(a, b Placed) Gap {
	if why := bad(a, b); why != "" {
		return Gap{Reason: why}
	}
	if a.Solid.Empty() || b.Solid.Empty() {
		return Gap{Reason: "a solid is empty"}
	}
	ta, tb := newBoxTree(a), newBoxTree(b)
	g := Gap{Status: Verified, Distance: inf}
	ta.nearest(tb, 0, 0, &g)
	if g.Distance < loose.flush || enclosed(a, b) || enclosed(b, a) {
		g.Distance = 0
	}
	return g
}

// enclosed says whether some vertex of a lies inside b.
func enclosed(a, b Placed) bool {
	v := a.Frame.ToWorld(a.Solid.body.verts[0])
	for _, r := range b.Intervals(v, vec.V3{X: 0.36, Y: 0.48, Z: 0.8}) {
		if r.Enter < 0 && r.Leave > 0 {
			return true
		}
	}
	return false
}

// boxTree is a tree of boxes over the triangles of a placed mesh. Node i has
// children 2i+1 and 2i+2 in spans of the order.
type boxTree struct {
	tris  [][3]vec.V3
	nodes []boxNode
}

type boxNode struct {
	lo, hi      vec.V3
	from, to    int
	left, right int // 0 for a leaf
}

func newBoxTree(p Placed) *boxTree {
	m := p.Solid.Mesh()
	t := &boxTree{tris: make([][3]vec.V3, len(m.Tris))}
	for i, tri := range m.Tris {
		for k, v := range tri.V {
			t.tris[i][k] = p.Frame.ToWorld(m.Verts[v])
		}
	}
	t.grow(0, len(t.tris))
	return t
}

func (t *boxTree) grow(from, to int) int {
	n := len(t.nodes)
	node := boxNode{from: from, to: to, lo: t.tris[from][0], hi: t.tris[from][0]}
	for _, tri := range t.tris[from:to] {
		for _, v := range tri {
			node.lo, node.hi = smaller(node.lo, v), larger(node.hi, v)
		}
	}
	t.nodes = append(t.nodes, node)
	if to-from > 4 {
		axis := int(longest(node.hi.Sub(node.lo)))
		slices.SortStableFunc(t.tris[from:to], func(a, b [3]vec.V3) int {
			return cmp.Compare(a[0].At(axis)+a[1].At(axis)+a[2].At(axis), b[0].At(axis)+b[1].At(axis)+b[2].At(axis))
		})
		mid := (from + to) / 2
		l := t.grow(from, mid)
		r := t.grow(mid, to)
		t.nodes[n].left, t.nodes[n].right = l, r
	}
	return n
}

// boxGap returns the distance between two boxes.
func boxGap(a, b *boxNode) float64 {
	var s float64
	for k := range 3 {
		d := max(a.lo.At(k)-b.hi.At(k), b.lo.At(k)-a.hi.At(k), 0)
		s += float64(d * d)
	}
	return sqrt(s)
}

func (t *boxTree) nearest(u *boxTree, i, j int, g *Gap) {
	a, b := &t.nodes[i], &u.nodes[j]
	if boxGap(a, b) >= g.Distance {
		return
	}
	switch {
	case a.left == 0 && b.left == 0:
		for x := a.from; x < a.to; x++ {
			for y := b.from; y < b.to; y++ {
				triangleGap(&t.tris[x], &u.tris[y], g)
			}
		}
	case b.left == 0 || (a.left != 0 && a.to-a.from >= b.to-b.from):
		l, r := a.left, a.right
		if boxGap(&t.nodes[r], b) < boxGap(&t.nodes[l], b) {
			l, r = r, l
		}
		t.nearest(u, l, j, g)
		t.nearest(u, r, j, g)
	default:
		l, r := b.left, b.right
		if boxGap(a, &u.nodes[r]) < boxGap(a, &u.nodes[l]) {
			l, r = r, l
		}
		t.nearest(u, i, l, g)
		t.nearest(u, i, r, g)
	}
}

// triangleGap lowers g to the distance between two triangles.
func triangleGap(a, b *[3]vec.V3, g *Gap) {
	note := func(p, q vec.V3) {
		if d := p.Sub(q).Norm(); d < g.Distance {
			g.Distance, g.A, g.B = d, p, q
		}
	}
	for i := range 3 {
		for j := range 3 {
			note(segmentPoints(a[i], a[(i+1)%3], b[j], b[(j+1)%3]))
		}
	}
	for i := range 3 {
		if q, ok := footOn(a[i], b); ok {
			note(a[i], q)
		}
		if q, ok := footOn(b[i], a); ok {
			note(q, b[i])
		}
		if q, ok := pierces(a[i], a[(i+1)%3], b); ok {
			note(q, q)
		}
		if q, ok := pierces(b[i], b[(i+1)%3], a); ok {
			note(q, q)
		}
	}
}

// segmentPoints returns the nearest points of two segments: the free minimum
// clamped to either segment in turn (Ericson, Real-Time Collision Detection,
// 2005, 5.1.9).
func segmentPoints(p, q, r, s vec.V3) (vec.V3, vec.V3) {
	d, e, w := q.Sub(p), s.Sub(r), p.Sub(r)
	a, b, f := d.Dot(d), e.Dot(e), e.Dot(w)
	c, k := d.Dot(w), d.Dot(e)
	clamp := func(x float64) float64 { return min(max(x, 0), 1) }
	var u, v float64
	if den := float64(a*b) - float64(k*k); den > 1e-12*a*b {
		u = clamp((float64(k*f) - float64(c*b)) / den)
	}
	if b > 0 {
		v = (float64(k*u) + f) / b
	}
	if v < 0 || v > 1 {
		v = clamp(v)
		if a > 0 {
			u = clamp((float64(k*v) - c) / a)
		}
	}
	return p.Add(d.Mul(u)), r.Add(e.Mul(v))
}

// footOn returns the foot of the perpendicular from p if it lies on the
// triangle.
func footOn(p vec.V3, t *[3]vec.V3) (vec.V3, bool) {
	n := t[1].Sub(t[0]).Cross(t[2].Sub(t[0]))
	nn := n.Dot(n)
	if nn == 0 {
		return p, false
	}
	q := p.Sub(n.Mul(n.Dot(p.Sub(t[0])) / nn))
	return q, insideTriangle(q, t, n)
}

func insideTriangle(q vec.V3, t *[3]vec.V3, n vec.V3) bool {
	for k := range 3 {
		if n.Dot(t[(k+1)%3].Sub(t[k]).Cross(q.Sub(t[k]))) < 0 {
			return false
		}
	}
	return true
}

// pierces returns where the segment passes through the triangle.
func pierces(p, q vec.V3, t *[3]vec.V3) (vec.V3, bool) {
	n := t[1].Sub(t[0]).Cross(t[2].Sub(t[0]))
	a, b := n.Dot(p.Sub(t[0])), n.Dot(q.Sub(t[0]))
	if (a > 0) == (b > 0) {
		return p, false
	}
	x := p.Add(q.Sub(p).Mul(a / (a - b)))
	return x, insideTriangle(x, t, n)
}
