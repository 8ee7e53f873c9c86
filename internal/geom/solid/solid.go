package solid

import (
	"fmt"
	"math"
	"sync"

	"scantling/internal/geom/vec"
)

// Status says how far a solid may be trusted.
type Status int8

// The two states of a solid. Measures of an unverified one mean nothing.
const (
	Unverified Status = iota
	Verified
)

// String returns "verified" or "unverified".
func (s Status) String() string {
	if s == Verified {
		return "verified"
	}
	return "unverified"
}

// Options steer how round shapes are faceted.
type Options struct {
	// Facets is the number of facets to a half circle of a small radius, even;
	// 0 means [DefaultFacets]; [polygon.Facets] says how many larger ones get. Use one number for a whole piece, so that round parts
	// and the hollows they lie in get the same facets.
	Facets int
}

// DefaultFacets is the number of facets to a half circle where none is asked.
const DefaultFacets = 16

func (o Options) facets() int {
	if o.Facets == 0 {
		return DefaultFacets
	}
	return max(2, min(o.Facets+o.Facets%2, 128))
}

// MaxPrimitives bounds the bodies and cutters of one solid, MaxFacets their
// facets together.
const (
	MaxPrimitives = 2000
	MaxFacets     = 200_000
)

// Solid is a closed body: bodies united, less cutters. It does not change
// after Build and may be used from several goroutines.
type Solid struct {
	status  Status
	reason  string
	options Options
	bodies  []Primitive
	cutters []Primitive
	body    poly // the faces of the result, loops with every needed vertex

	mesh       Mesh
	creaseOnce sync.Once
	edgeOnce   sync.Once
	edgeList   []Edge
	measOnce   sync.Once
	meas       measures
}

// Status returns Verified, or Unverified and why.
func (s *Solid) Status() (Status, string) { return s.status, s.reason }

// Bodies returns the primitives that the solid was built from.
func (s *Solid) Bodies() []Primitive { return s.bodies }

// Cutters returns the primitives that were taken away.
func (s *Solid) Cutters() []Primitive { return s.cutters }

// Empty says whether nothing is left of a verified solid.
func (s *Solid) Empty() bool { return len(s.body.facets) == 0 }

// Bounds returns the least and greatest coordinates of the faceted solid.
func (s *Solid) Bounds() (lo, hi vec.V3) { return s.body.lo, s.body.hi }

// Build unites the bodies, takes the cutters away and returns the solid. It
// always returns one: where a primitive cannot be made, or the faces do not
// close, the solid is unverified and says why.
func Build(bodies, cutters []Primitive, opt Options) *Solid {
	s := &Solid{options: opt, bodies: bodies, cutters: cutters}
	if n := len(bodies) + len(cutters); n > MaxPrimitives {
		s.reason = fmt.Sprintf("%d primitives; the limit is %d", n, MaxPrimitives)
		return s
	}
	var polys []*poly
	var parts []role
	facets := 0
	take := func(list []Primitive, r role, what string) bool {
		for i, p := range list {
			q, err := p.polyhedron(opt.facets())
			if err != nil {
				s.reason = fmt.Sprintf("%s %d: %v", what, i+1, err)
				return false
			}
			if facets += len(q.facets); facets > MaxFacets {
				s.reason = fmt.Sprintf("more than %d facets; ask for fewer to a half circle", MaxFacets)
				return false
			}
			polys, parts = append(polys, q), append(parts, r)
		}
		return true
	}
	if !take(bodies, bodyA, "body") || !take(cutters, cutA, "cutter") {
		return s
	}
	s.shareSurfaces(polys)
	s.settle(polys, parts)
	return s
}

// settle tries sets of tolerances until one gives a closed solid. Where faces
// lie nearly flush a second set must agree with it.
func (s *Solid) settle(polys []*poly, parts []role) {
	first := math.NaN()
	for _, k := range attempts {
		body, mesh, delicate, why := assemble(polys, parts, fine.scaled(k))
		if why == tooIntricate {
			s.reason = why
			return
		}
		if why != "" {
			if s.reason == "" {
				s.reason = why
			}
			continue
		}
		volume := mesh.volume()
		if delicate && !(abs(volume-first) <= agree) {
			if !math.IsNaN(first) {
				s.reason = fmt.Sprintf("faces lie so nearly flush that the volume is uncertain: %.3f or %.3f mm³", first, volume)
			} else {
				s.reason = "faces lie so nearly flush that only one reading of them closes"
			}
			first = volume
			continue
		}
		body.surfs = s.body.surfs
		s.body, s.mesh, s.status, s.reason = body, mesh, Verified, ""
		return
	}
}

const tooIntricate = "too many cuts cross in one plane for the kernel to work out"

// agree is the difference in volume, in mm³, up to which two readings of a
// delicate solid are one.
const agree = 0.02

// shareSurfaces numbers the surfaces of all primitives through the solid.
func (s *Solid) shareSurfaces(polys []*poly) {
	for _, p := range polys {
		base := int32(len(s.body.surfs))
		s.body.surfs = append(s.body.surfs, p.surfs...)
		for i := range p.facets {
			f := &p.facets[i]
			if f.surf < 0 {
				continue
			}
			sf := &p.surfs[f.surf]
			at := p.verts[f.loops[0][0]]
			f.reach = sf.radius
			if sf.kind == cone {
				f.reach = abs(sf.radius * at.Sub(sf.origin).Dot(sf.axis))
			}
			if _, out := sf.side(at); out.Dot(f.n) < 0 {
				f.reach = -f.reach
			}
			f.surf += base
		}
	}
}

// rig is the working memory of a run, used again from run to run.
type rig struct {
	sheet  sheet
	closer closer
	table  planeTable
	edges  keyTable
	tri    triangulator
	flat   flattener
}

var rigs = sync.Pool{New: func() any { return new(rig) }}

// attempts scale the tolerances. Of twenty thousand random boards three fail
// with the first and pass with the second; the smaller ones tell faces apart
// that lie a fraction of a micrometre from flush.
var attempts = [...]float64{1, 0.03, 0.003, 0.25, 4}

// assemble runs every plane, closes the faces and cuts them into triangles. It
// says what failed: then another set of tolerances may yet succeed, as a failure
// is an unlucky coincidence of distances near one of them. It also says whether
// some faces lie nearly flush.
func assemble(polys []*poly, parts []role, tol tolerance) (body poly, m Mesh, delicate bool, why string) {
	r := rigs.Get().(*rig)
	defer rigs.Put(r)
	r.table.reset(tol)
	for k := range polys {
		r.table.add(polys, int32(k), nil)
	}
	sh := &r.sheet
	sh.tol, sh.mode, sh.polys, sh.roles, sh.seams = tol, build, polys, parts, 0
	far := vec.V3{X: 10 * MaxSize, Y: 10 * MaxSize, Z: 10 * MaxSize}
	r.closer.reset(r.table.planes, tol.weld)
	for id := range r.table.planes {
		if !sh.work(int32(id), &r.table.planes[id], far.Mul(-1), far) {
			if sh.arr.over() {
				return body, m, false, tooIntricate
			}
			return body, m, false, "the outlines in one plane could not be put in order"
		}
		r.closer.take(sh)
	}
	sh.polys = nil
	if why := r.closer.close(&body); why != "" {
		return body, m, false, why
	}
	body.bound()
	m.Verts = body.verts
	if !m.fill(&body, &r.tri, &r.flat) {
		return body, m, false, "a face could not be cut into triangles"
	}
	if open, v := openEdge(m.Tris, &r.edges); open > 0 {
		return body, m, false, fmt.Sprintf("%d edges do not close, one of them near %v", open, m.Verts[v])
	}
	return body, m, r.table.delicate, ""
}
