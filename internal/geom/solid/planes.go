package solid

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// tolerance is the set of distances, in millimetres, at which the kernel calls
// things equal. They are chosen together: a point counts as on a line at less
// than the distance at which points merge, so that one beside the end of an
// edge has merged with it; both lie below what is flush, that below what counts
// as on a plane, and that below the final weld.
type tolerance struct {
	line, merge, flush, on, weld float64
}

// fine is used for building one solid, loose for solids whose poses were
// worked out separately (0.5 µm between faces counts as touching).
var (
	fine  = tolerance{line: 2e-5, merge: 3e-5, flush: 5e-5, on: 6e-5, weld: 1e-4}
	loose = tolerance{line: 2e-4, merge: 3e-4, flush: 5e-4, on: 6e-4, weld: 1e-3}
)

func (t tolerance) scaled(k float64) tolerance {
	return tolerance{t.line * k, t.merge * k, t.flush * k, t.on * k, t.weld * k}
}

// facetRef names a facet of one of the polyhedra of a run.
type facetRef struct{ poly, facet int32 }

// plane is one entry of the plane table: every facet that lies flush in it.
// The normal's greatest component is positive; that axis is dropped to get
// the flat coordinates, which are right-handed seen from the normal's side.
type plane struct {
	n        vec.V3
	d        float64
	axis     int
	lo, hi   polygon.P2 // bounds of the facets in flat coordinates
	lo3, hi3 vec.V3
	facets   []facetRef
}

// flat drops the plane's axis.
func (p *plane) flat(v vec.V3) polygon.P2 {
	switch p.axis {
	case 0:
		return polygon.P2{X: v.Y, Y: v.Z}
	case 1:
		return polygon.P2{X: v.Z, Y: v.X}
	default:
		return polygon.P2{X: v.X, Y: v.Y}
	}
}

// lift returns the point of the plane above flat coordinates.
func (p *plane) lift(q polygon.P2) vec.V3 {
	switch p.axis {
	case 0:
		return vec.V3{X: (p.d - float64(p.n.Y*q.X) - float64(p.n.Z*q.Y)) / p.n.X, Y: q.X, Z: q.Y}
	case 1:
		return vec.V3{Z: q.X, X: q.Y, Y: (p.d - float64(p.n.Z*q.X) - float64(p.n.X*q.Y)) / p.n.Y}
	default:
		return vec.V3{X: q.X, Y: q.Y, Z: (p.d - float64(p.n.X*q.X) - float64(p.n.Y*q.Y)) / p.n.Z}
	}
}

// stretch is how much larger an area is in the plane than in flat coordinates.
func (p *plane) stretch() float64 { return 1 / p.n.At(p.axis) }

func newPlane(n vec.V3, d float64) plane {
	axis := 0
	for k := 1; k < 3; k++ {
		if abs(n.At(k)) > abs(n.At(axis)) {
			axis = k
		}
	}
	if n.At(axis) < 0 {
		n, d = n.Mul(-1), -d
	}
	return plane{n: n, d: d, axis: axis}
}

// planeTable gathers flush facets. Facets are flush when every vertex of one
// lies within the tolerance of the other's plane: a matter of position only,
// so that large faces are held to the same distance as small ones.
type planeTable struct {
	tol    tolerance
	planes []plane
	// bundles are planes of nearly one direction, to keep the search short.
	bundles []bundle
	exact   map[vec.V3]int32
	// delicate says that some facet is nearly, but not, flush with another:
	// what lies between them is of the size of the tolerances.
	delicate bool
}

// reset empties the table, keeping its room.
func (t *planeTable) reset(tol tolerance) {
	t.tol, t.delicate = tol, false
	t.planes, t.bundles = t.planes[:0], t.bundles[:0]
	if t.exact == nil {
		t.exact = map[vec.V3]int32{}
	}
	clear(t.exact)
}

type bundle struct {
	n      vec.V3
	planes []int32
}

// add files every facet of a polyhedron under its plane. Facets that keep
// false are not filed: they lie outside the region of interest.
func (t *planeTable) add(ps []*poly, k int32, keep func(f *facet) bool) {
	p := ps[k]
	for i := range p.facets {
		f := &p.facets[i]
		f.plane = -1
		if keep != nil && !keep(f) {
			continue
		}
		id := t.find(p, f)
		f.plane = id
		pl := &t.planes[id]
		for _, loop := range f.loops {
			for _, v := range loop {
				pl.grow(p.verts[v])
			}
		}
		pl.facets = append(pl.facets, facetRef{k, int32(i)})
	}
}

func (p *plane) grow(v vec.V3) {
	q := p.flat(v)
	p.lo = polygon.P2{X: min(p.lo.X, q.X), Y: min(p.lo.Y, q.Y)}
	p.hi = polygon.P2{X: max(p.hi.X, q.X), Y: max(p.hi.Y, q.Y)}
	p.lo3 = vec.V3{X: min(p.lo3.X, v.X), Y: min(p.lo3.Y, v.Y), Z: min(p.lo3.Z, v.Z)}
	p.hi3 = vec.V3{X: max(p.hi3.X, v.X), Y: max(p.hi3.Y, v.Y), Z: max(p.hi3.Z, v.Z)}
}

// find returns the plane of the facet, making it if there is none.
func (t *planeTable) find(p *poly, f *facet) int32 {
	b := t.bundle(f.n)
	d := f.n.Dot(p.verts[f.loops[0][0]])
	if f.n.Dot(t.bundles[b].n) < 0 {
		d = -d
	}
	for _, id := range t.bundles[b].planes {
		pl := &t.planes[id]
		if abs(abs(pl.d)-abs(d)) > 1 {
			continue
		}
		if t.flush(p, f, pl) {
			return id
		}
		t.delicate = t.delicate || grazes(p, f, pl)
	}
	id := int32(len(t.planes))
	pl := newPlane(f.n, f.n.Dot(p.verts[f.loops[0][0]]))
	pl.lo, pl.hi = polygon.P2{X: inf, Y: inf}, polygon.P2{X: -inf, Y: -inf}
	pl.lo3, pl.hi3 = vec.V3{X: inf, Y: inf, Z: inf}, vec.V3{X: -inf, Y: -inf, Z: -inf}
	if n := len(t.planes); n < cap(t.planes) {
		pl.facets = t.planes[:n+1][n].facets[:0]
	}
	t.planes = append(t.planes, pl)
	t.bundles[b].planes = append(t.bundles[b].planes, id)
	return id
}

// grazes says whether a facet that is not flush comes within a micrometre of a
// plane that it is nearly parallel to.
func grazes(p *poly, f *facet, pl *plane) bool {
	least, most := inf, -inf
	for _, loop := range f.loops {
		for _, v := range loop {
			d := pl.n.Dot(p.verts[v]) - pl.d
			least, most = min(least, d), max(most, d)
		}
	}
	return least < 1e-3 && most > -1e-3 && most-least > 1e-9
}

func (t *planeTable) flush(p *poly, f *facet, pl *plane) bool {
	for _, loop := range f.loops {
		for _, v := range loop {
			if abs(pl.n.Dot(p.verts[v])-pl.d) > t.tol.flush {
				return false
			}
		}
	}
	return true
}

// bundle returns the bundle of directions within 1e-4 of n, up to sign.
func (t *planeTable) bundle(n vec.V3) int32 {
	if b, ok := t.exact[n]; ok {
		return b
	}
	for i := range t.bundles {
		if c := t.bundles[i].n.Cross(n); c.Dot(c) < 1e-8 {
			t.exact[n] = int32(i)
			return int32(i)
		}
	}
	b := int32(len(t.bundles))
	fresh := bundle{n: n}
	if k := len(t.bundles); k < cap(t.bundles) {
		fresh.planes = t.bundles[:k+1][k].planes[:0]
	}
	t.bundles = append(t.bundles, fresh)
	t.exact[n] = b
	return b
}
