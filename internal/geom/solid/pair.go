package solid

import (
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Overlap is wood that two placed solids claim at once.
type Overlap struct {
	Status Status
	Reason string  // where unverified
	Volume float64 // mm³, as faceted
	// Depth is how far the deepest part of the overlap is from clear: the
	// least width of a connected part of it, over the directions of its faces,
	// greatest over the parts. Exact where that part is convex, else an upper
	// bound.
	Depth float64
	// Where is the middle of that part and Along the direction of its least
	// width, in the world.
	Where, Along vec.V3
	// Tags are those of a face of A and a face of B that bound it.
	Tags [2]Tag
	// Facets is the volume left out of Volume because it is no deeper than the
	// facets of the round faces that bound it stand off the true surfaces: a
	// round part in a round hollow of its own size, turned a little.
	Facets float64
}

// pairRun is a run of two solids in the frame of the first.
type pairRun struct {
	*rig
	tol    tolerance
	polys  []*poly
	lo, hi vec.V3
	ok     bool
}

// newPair lays both solids in a's frame and files the planes of their faces
// near the space that both boxes share.
func newPair(a, b Placed, reach float64, tol tolerance) pairRun {
	pa := a.Solid.body
	pa.facets = slices.Clone(pa.facets)
	return pairOf(&pa, b.Solid.body.moved(within(b.Frame, a.Frame)), reach, tol)
}

// pairOf files the planes of two polyhedra, which it may renumber.
func pairOf(pa, pb *poly, reach float64, tol tolerance) pairRun {
	r := pairRun{tol: tol, rig: rigs.Get().(*rig)}
	r.table.reset(tol)
	r.polys = []*poly{pa, pb}
	g := vec.V3{X: reach, Y: reach, Z: reach}
	r.lo = larger(pa.lo, r.polys[1].lo).Sub(g)
	r.hi = smaller(pa.hi, r.polys[1].hi).Add(g)
	if r.lo.X > r.hi.X || r.lo.Y > r.hi.Y || r.lo.Z > r.hi.Z {
		return r
	}
	r.ok = true
	for k, p := range r.polys {
		r.table.add(r.polys, int32(k), func(f *facet) bool {
			lo, hi := p.facetBounds(f)
			return !apart(lo, hi, r.lo, r.hi)
		})
	}
	return r
}

func (p *poly) facetBounds(f *facet) (lo, hi vec.V3) {
	lo = p.verts[f.loops[0][0]]
	hi = lo
	for _, loop := range f.loops {
		for _, v := range loop {
			lo, hi = smaller(lo, p.verts[v]), larger(hi, p.verts[v])
		}
	}
	return lo, hi
}

// each works every plane of the run and hands the sheet to visit.
func (r *pairRun) each(m mode, visit func(s *sheet)) string {
	sh := &r.sheet
	sh.tol, sh.mode, sh.polys, sh.seams = r.tol, m, r.polys, 0
	sh.roles = []role{bodyA, bodyB}
	for id := range r.table.planes {
		if !sh.work(int32(id), &r.table.planes[id], r.lo, r.hi) {
			return "the outlines in one plane could not be put in order"
		}
		if len(sh.out) > 0 {
			visit(sh)
		}
	}
	sh.polys = nil
	return ""
}

// bad says why a pair cannot be judged.
func bad(a, b Placed) string {
	for _, p := range [2]Placed{a, b} {
		if p.Solid.status != Verified {
			return "a solid is unverified: " + p.Solid.reason
		}
		if err := checkFrame(p.Frame); err != nil {
			return err.Error()
		}
	}
	return ""
}

// Interference returns the overlap of two placed solids. Solids that only
// touch (to within half a micrometre) have none.
func Interference(a, b Placed) Overlap {
	if why := bad(a, b); why != "" {
		return Overlap{Reason: why}
	}
	var out Overlap
	for _, k := range attempts {
		r := newPair(a, b, 0, loose.scaled(k))
		if out = r.overlap([2]int{a.Solid.options.facets(), b.Solid.options.facets()}); out.Status == Verified {
			break
		}
	}
	out.Where, out.Along = a.Frame.ToWorld(out.Where), a.Frame.DirToWorld(out.Along)
	return out
}

// overlap works the run out, in the frame of its first solid, and gives the
// working memory back.
func (r *pairRun) overlap(perHalf [2]int) Overlap {
	defer rigs.Put(r.rig)
	if !r.ok {
		return Overlap{Status: Verified}
	}
	r.closer.reset(r.table.planes, r.tol.weld)
	if why := r.each(intersect, func(s *sheet) { r.closer.take(s) }); why != "" {
		return Overlap{Reason: why}
	}
	out := r.closer.overlap(r.polys, perHalf)
	out.Status = Verified
	return out
}

// Patch is the area over which two placed solids touch.
type Patch struct {
	Status Status
	Reason string
	Area   float64 // mm²
	// Places are the parts of it: one for each plane and pair of tags, one for
	// each round body in a hollow of its own radius.
	Places []Touch
}

// Touch is one stretch of contact.
type Touch struct {
	Area   float64
	Normal vec.V3 // out of A, in the world; zero where the stretch is round
	Middle vec.V3 // its centre of area; on the axis where it is round
	Round  bool
	TagA   Tag
	TagB   Tag
}

// Contact returns where the faces of two placed solids lie against each other,
// to within half a micrometre, wood on both sides. Flat contact is as faceted;
// a round body in a hollow of its own radius is worked out on the true round
// surfaces, however the two are turned.
func Contact(a, b Placed) Patch {
	if why := bad(a, b); why != "" {
		return Patch{Reason: why}
	}
	var out Patch
	for _, k := range attempts {
		r := newPair(a, b, loose.flush, loose.scaled(k))
		defer rigs.Put(r.rig)
		if out = (Patch{Status: Verified}); !r.ok {
			break
		}
		if out.Reason = r.each(contact, func(s *sheet) { out.gather(s, a.Frame) }); out.Reason == "" {
			out.Reason = r.roundFits(&out, a.Frame)
		}
		if out.Reason == "" {
			break
		}
		out.Status = Unverified
	}
	return out
}

// gather adds the contact in one plane.
func (p *Patch) gather(s *sheet, f vec.Frame) {
	for k := 1; k < len(s.keys); k++ {
		area, mid := s.areaOf(int32(k))
		if area <= 0 {
			continue
		}
		n := s.plane.n.Mul(float64(s.keys[k].sign))
		p.Area += area
		p.Places = append(p.Places, Touch{
			Area: area, Normal: f.DirToWorld(n), Middle: f.ToWorld(mid), TagA: s.keys[k].tag, TagB: s.keys[k].other,
		})
	}
}

// areaOf returns the area of the regions of one key and their centre.
func (s *sheet) areaOf(k int32) (float64, vec.V3) {
	var area float64
	var first, o polygon.P2
	set := false
	for _, b := range s.out {
		if b.below != k && b.above != k {
			continue
		}
		p, q := s.arr.points.at[b.u], s.arr.points.at[b.v]
		if !set {
			o, set = p, true
		}
		p, q = p.Sub(o), q.Sub(o)
		t := p.Cross(q) / 2
		if b.below == k {
			t = -t
		}
		area += t
		first = first.Add(p.Add(q).Mul(t / 3))
	}
	if area <= 0 {
		return 0, vec.V3{}
	}
	return area * s.plane.stretch(), s.plane.lift(first.Mul(1 / area).Add(o))
}
