package solid

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// onAxis is how near the axis a vertex of a turned profile counts as on it.
const onAxis = 1e-6

func (t Turned) check() error {
	if err := t.Profile.Check(); err != nil {
		return err
	}
	if lo, _ := t.Profile.Bounds(); lo.X < -onAxis {
		return fmt.Errorf("the turned profile reaches %g mm across the axis", -lo.X)
	}
	return checkFrame(t.Frame)
}

func (t Turned) polyhedron(perHalf int) (*poly, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	q := &poly{}
	surfOf := t.surfaces(q)
	_, most := t.Profile.Bounds()
	around := polygon.Facets(most.X, perHalf)
	for _, f := range t.Profile.Flatten(perHalf) {
		rings := make([][]int32, len(f.Points))
		for i, p := range f.Points {
			rings[i] = t.ring(q, p, around)
		}
		for i, a := range f.Points {
			j := (i + 1) % len(f.Points)
			b := f.Points[j]
			seg := int(f.Segment[i])
			t.band(q, a, b, rings[i], rings[j], surfOf[seg], tagAt(t.Sides, seg))
		}
	}
	q.bound()
	if err := checkSize(q.lo); err != nil {
		return nil, err
	}
	return q, checkSize(q.hi)
}

// surfaces lists the true surface of every segment: cylinder, cone, sphere or
// torus, none for those square to the axis.
func (t Turned) surfaces(q *poly) []int32 {
	var of []int32
	for _, l := range t.Profile.Loops() {
		for i := range l {
			s, ok := t.surface(l, i)
			if !ok {
				of = append(of, -1)
				continue
			}
			of = append(of, int32(len(q.surfs)))
			q.surfs = append(q.surfs, s)
		}
	}
	return of
}

func (t Turned) surface(l polygon.Loop, i int) (surface, bool) {
	a, b := l[i].P2, l[(i+1)%len(l)].P2
	up := func(y float64) vec.V3 { return t.Frame.ToWorld(vec.V3{Z: y}) }
	s := surface{axis: t.Frame.W}
	if arc, ok := l.Arc(i); ok {
		s.origin, s.radius, s.ring = up(arc.Centre.Y), arc.Radius, arc.Centre.X
		s.kind = torus
		if abs(arc.Centre.X) < onAxis {
			s.kind = sphere
		}
		return s, true
	}
	switch {
	case abs(a.X-b.X) < 1e-9:
		s.kind, s.origin, s.radius = cylinder, up(a.Y), a.X
	case abs(a.Y-b.Y) < 1e-9:
		return s, false
	default:
		s.kind, s.radius = cone, (b.X-a.X)/(b.Y-a.Y)
		s.origin = up(a.Y - a.X/s.radius)
	}
	return s, true
}

// ring adds the vertices of one point of the profile: one on the axis, else a
// full circle.
func (t Turned) ring(q *poly, p polygon.P2, perHalf int) []int32 {
	base := int32(len(q.verts))
	if p.X < onAxis {
		q.verts = append(q.verts, t.Frame.ToWorld(vec.V3{Z: p.Y}))
		return []int32{base}
	}
	out := make([]int32, 2*perHalf)
	for k := range out {
		a := float64(k) * math.Pi / float64(perHalf)
		q.verts = append(q.verts, t.Frame.ToWorld(vec.V3{X: p.X * math.Cos(a), Y: p.X * math.Sin(a), Z: p.Y}))
		out[k] = base + int32(k)
	}
	return out
}

// band adds the facets between the rings of two profile points, the profile
// running anticlockwise from a to b with X outward and Y along W.
func (t Turned) band(q *poly, a, b polygon.P2, ra, rb []int32, surf int32, tag Tag) {
	if len(ra) == 1 && len(rb) == 1 {
		return
	}
	n := max(len(ra), len(rb))
	if abs(a.Y-b.Y) < 1e-9 {
		t.disc(q, a, b, ra, rb, tag)
		return
	}
	half := math.Pi / float64(n)
	e := polygon.P2{X: (b.X - a.X) * math.Cos(half), Y: b.Y - a.Y}
	l := e.Norm()
	at := func(r []int32, k int) int32 { return r[k%len(r)] }
	for k := range n {
		mid := (float64(k) + 0.5) * 2 * half
		normal := t.Frame.DirToWorld(vec.V3{X: e.Y / l * math.Cos(mid), Y: e.Y / l * math.Sin(mid), Z: -e.X / l})
		loop := []int32{at(ra, k), at(ra, k+1), at(rb, k+1), at(rb, k)}
		if len(ra) == 1 {
			loop = loop[1:]
		} else if len(rb) == 1 {
			loop = loop[:3]
		}
		q.facets = append(q.facets, facet{loops: [][]int32{loop}, n: normal, d: normal.Dot(q.verts[loop[0]]), surf: surf, tag: tag})
	}
}

// disc adds the flat ring between two profile points at one height.
func (t Turned) disc(q *poly, a, b polygon.P2, ra, rb []int32, tag Tag) {
	outer, inner, n := ra, rb, t.Frame.W
	if b.X > a.X {
		outer, inner, n = rb, ra, n.Mul(-1)
	}
	outer, inner = slices.Clone(outer), slices.Clone(inner)
	if b.X > a.X {
		slices.Reverse(outer)
	} else {
		slices.Reverse(inner)
	}
	f := facet{loops: [][]int32{outer}, n: n, d: n.Dot(q.verts[outer[0]]), surf: -1, tag: tag}
	if len(inner) > 1 {
		f.loops = append(f.loops, inner)
	}
	q.facets = append(q.facets, f)
}

func (t Turned) mirrored() Primitive {
	t.Frame = mirrorFrame(t.Frame)
	return t
}

// crossings gathers where the line meets the surface of every segment and asks
// of each stretch between whether its middle lies inside.
func (t Turned) crossings(o, d vec.V3, out []crossing) []crossing {
	lo, ld := t.Frame.ToLocal(o), dirToLocal(t.Frame, d)
	var hits []crossing
	seg := 0
	for _, l := range t.Profile.Loops() {
		for i := range l {
			tag := tagAt(t.Sides, seg)
			seg++
			t.meet(l, i, lo, ld, func(at float64) { hits = append(hits, crossing{at, tag}) })
		}
	}
	slices.SortStableFunc(hits, func(a, b crossing) int { return cmp.Compare(a.t, b.t) })
	in := false
	for i := 0; i+1 < len(hits); i++ {
		if hits[i+1].t-hits[i].t < 1e-9 {
			continue
		}
		mid := lo.Add(ld.Mul((hits[i].t + hits[i+1].t) / 2))
		now := t.Profile.Contains(polygon.P2{X: sqrt(float64(mid.X*mid.X) + float64(mid.Y*mid.Y)), Y: mid.Z})
		if now != in {
			out = append(out, hits[i])
			in = now
		}
	}
	if in {
		out = append(out, hits[len(hits)-1])
	}
	return out
}

// meet calls visit with the parameters at which the line meets the surface of
// one segment.
func (t Turned) meet(l polygon.Loop, i int, o, d vec.V3, visit func(at float64)) {
	a, b := l[i].P2, l[(i+1)%len(l)].P2
	radius := func(at float64) (float64, float64) {
		p := o.Add(d.Mul(at))
		return sqrt(float64(p.X*p.X) + float64(p.Y*p.Y)), p.Z
	}
	dd, od, oo := float64(d.X*d.X)+float64(d.Y*d.Y), float64(o.X*d.X)+float64(o.Y*d.Y), float64(o.X*o.X)+float64(o.Y*o.Y)
	const slack = 1e-9
	if arc, ok := l.Arc(i); ok {
		for _, at := range arcHits(arc, o, d) {
			if r, z := radius(at); arc.Holds(polygon.P2{X: r, Y: z}) {
				visit(at)
			}
		}
		return
	}
	if abs(a.Y-b.Y) < 1e-9 {
		if d.Z != 0 {
			at := (a.Y - o.Z) / d.Z
			if r, _ := radius(at); r >= min(a.X, b.X)-slack && r <= max(a.X, b.X)+slack {
				visit(at)
			}
		}
		return
	}
	// r = m·z + c along the segment: (m z + c)² = x² + y².
	m := (b.X - a.X) / (b.Y - a.Y)
	w, c := float64(m*d.Z), float64(m*(o.Z-a.Y))+a.X
	for _, at := range quadratic(dd-float64(w*w), od-float64(w*c), oo-float64(c*c)) {
		if _, z := radius(at); z >= min(a.Y, b.Y)-slack && z <= max(a.Y, b.Y)+slack && c+float64(w*at) >= -slack {
			visit(at)
		}
	}
}

// quadratic solves a t² + 2 b t + c = 0.
func quadratic(a, b, c float64) []float64 {
	if abs(a) < 1e-14 {
		if abs(b) < 1e-14 {
			return nil
		}
		return []float64{-c / (2 * b)}
	}
	disc := float64(b*b) - float64(a*c)
	if disc < 0 {
		return nil
	}
	r := sqrt(disc)
	return []float64{(-b - r) / a, (-b + r) / a}
}

// arcHits returns where a line meets the sphere or torus of a turned arc. For
// the torus the signed distance is sampled and bisected; a line that only
// grazes it counts as missing it.
func arcHits(arc polygon.Arc, o, d vec.V3) []float64 {
	c := o.Sub(vec.V3{Z: arc.Centre.Y})
	if abs(arc.Centre.X) < onAxis {
		return quadratic(d.Dot(d), c.Dot(d), c.Dot(c)-float64(arc.Radius*arc.Radius))
	}
	s := surface{kind: torus, axis: vec.V3{Z: 1}, radius: arc.Radius, ring: arc.Centre.X}
	f := func(t float64) float64 {
		v, _ := s.side(c.Add(d.Mul(t)))
		return v
	}
	reach := abs(arc.Centre.X) + arc.Radius
	span := quadratic(d.Dot(d), c.Dot(d), c.Dot(c)-float64(reach*reach)-1e-6)
	if len(span) < 2 {
		return nil
	}
	const steps = 256
	var out []float64
	step := float64((span[1] - span[0]) / steps)
	prev := f(span[0])
	for k := 1; k <= steps; k++ {
		t := span[0] + float64(float64(k)*step)
		now := f(t)
		if (prev > 0) != (now > 0) {
			lo, hi := t-step, t
			for range 60 {
				mid := (lo + hi) / 2
				if (f(mid) > 0) == (prev > 0) {
					lo = mid
				} else {
					hi = mid
				}
			}
			out = append(out, (lo+hi)/2)
		}
		prev = now
	}
	return out
}
