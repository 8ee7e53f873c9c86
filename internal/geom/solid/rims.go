package solid

import "scantling/internal/geom/vec"

// gauss3 is the three-point Gauss-Legendre rule on (0, 1).
var gauss3 = [3]struct{ x, w float64 }{
	{0.1127016653792583, 5. / 18}, {0.5, 8. / 18}, {0.8872983346207417, 5. / 18},
}

// tangent is the sine of the angle between true surfaces, at an edge, below which
// they run into one another.
const tangent = 0.05

// rims corrects the edges at which a round face ends. The rays of swell carry
// either face from the chord of such an edge out to its true surface, but the
// surfaces meet in a curve of their own. In the plane of both rays (the ray of a
// flat face is its normal) the four points chord, end of one ray, curve, end of the
// other bound what is still to be added to the volume, bent as the surfaces are;
// the stretches from the ends of the rays to the curve are to be added to the
// areas, and rims returns those.
func (s *Solid) rims(mid vec.V3, m *moments) (area float64) {
	if len(s.body.surfs) == 0 {
		return 0
	}
	for _, e := range s.Edges() {
		f, g := &s.body.facets[e.Left], &s.body.facets[e.Right]
		if (f.surf < 0 && g.surf < 0) || s.surfaceID(f) == s.surfaceID(g) {
			continue
		}
		area += s.rim(f, g, s.body.verts[e.A], s.body.verts[e.B], mid, m)
	}
	return area
}

// rim corrects the edge from a to b with the face f on its left and g on its right.
// What a flat patch sweeps is its area times the way of its centre square to it
// (Pappus), and a strip likewise.
func (s *Solid) rim(f, g *facet, a, b, mid vec.V3, m *moments) (area float64) {
	d := b.Sub(a)
	var patches [3]patch
	for k, q := range gauss3 {
		patches[k] = s.patchAt(f, g, a.Add(d.Mul(q.x)), d)
	}
	for k, q := range gauss3 {
		p := &patches[k]
		at := func(pick func(*patch) vec.V3) float64 {
			return p.square.Dot(d.Add(slope(pick(&patches[0]), pick(&patches[1]), pick(&patches[2]), k)))
		}
		for n := range 2 {
			area += float64(p.strip[n] * at(func(p *patch) vec.V3 { return p.middle[n] }) * q.w)
		}
		m.lump(a.Add(d.Mul(q.x)).Sub(mid), float64(p.area*at(func(p *patch) vec.V3 { return p.centre })*q.w))
	}
	return area
}

// slope is the derivative at station k of the quadratic through three stations of
// gauss3, to a unit of the whole length.
func slope(a, b, c vec.V3, k int) vec.V3 {
	const h = 0.3872983346207417 // from station to station
	bend := c.Sub(b).Add(a.Sub(b)).Mul(1 / h)
	return c.Sub(a).Mul(1 / (2 * h)).Add(bend.Mul(float64(k - 1)))
}

// patch is what an edge lacks in the plane of its rays: signed area, its centre as
// seen from the chord, and the unit vector square to it; and the strips that the
// faces gain, left and right, with their middles.
type patch struct {
	area           float64
	centre, square vec.V3
	strip          [2]float64
	middle         [2]vec.V3
}

func (s *Solid) patchAt(f, g *facet, p, d vec.V3) (out patch) {
	rf, rg := s.ray(f, p), s.ray(g, p)
	v := rf.Cross(rg)
	if v.Norm() < tangent {
		return out
	}
	v = v.Unit()
	if v.Dot(d) < 0 {
		v = v.Mul(-1)
	}
	onF, onG := s.lifted(f, p), s.lifted(g, p)
	c, ok := s.meeting(f, g, p, v, onF.Sub(p).Norm()+onG.Sub(p).Norm())
	if !ok {
		return out
	}
	n, k := s.trueNormal(f, c), s.trueNormal(g, c)
	if n.Cross(k).Norm() < tangent {
		return out
	}
	out.square = v
	out.strip = [2]float64{c.Sub(onF).Dot(v.Cross(n)), c.Sub(onG).Dot(k.Cross(v))}
	// Two triangles and the bends of the surfaces, anticlockwise against v.
	add := func(double, centre vec.V3) {
		t := float64(-double.Dot(v) / 2)
		out.area += t
		out.centre = out.centre.Add(centre.Mul(t))
	}
	x, y, z := c.Sub(p), onF.Sub(p), onG.Sub(p)
	out.middle = [2]vec.V3{x.Add(y).Mul(0.5), x.Add(z).Mul(0.5)}
	add(z.Cross(x), x.Add(z).Mul(1./3))
	add(x.Cross(y), x.Add(y).Mul(1./3))
	add(s.swelling(f, c, onF, v), out.middle[0])
	add(s.swelling(g, onG, c, v), out.middle[1])
	if out.area != 0 {
		out.centre = out.centre.Mul(1 / out.area)
	}
	if out.centre.Norm() > x.Norm()+y.Norm()+z.Norm() {
		out.centre = vec.V3{} // what is added and taken cancels: no centre
	}
	return out
}

// ray is the direction in which swell carries a point of a face.
func (s *Solid) ray(f *facet, p vec.V3) vec.V3 {
	if f.surf < 0 {
		return f.n
	}
	u := &s.body.surfs[f.surf]
	r := p.Sub(u.origin)
	if u.kind == sphere {
		return r.Unit()
	}
	h := r.Dot(u.axis)
	radial := r.Sub(u.axis.Mul(h))
	e := radial.Unit()
	if u.kind == torus {
		return e.Mul(radial.Norm() - u.ring).Add(u.axis.Mul(h)).Unit()
	}
	return e
}

// swelling returns twice the area, as a vector, between the chord from a to b and
// the true surface of a face across d: two thirds of the box around a parabola.
func (s *Solid) swelling(f *facet, a, b, d vec.V3) vec.V3 {
	if f.surf < 0 {
		return vec.V3{}
	}
	m := a.Add(b).Mul(0.5)
	u, g := s.level(f, m)
	g = g.Sub(d.Mul(g.Dot(d)))
	gg := g.Dot(g)
	if gg < 1e-6 {
		return vec.V3{}
	}
	return g.Mul(-u / gg).Cross(b.Sub(a)).Mul(4. / 3)
}

// lifted returns the end of the ray of swell from a point of a facet.
func (s *Solid) lifted(f *facet, p vec.V3) vec.V3 {
	if f.surf < 0 {
		return p
	}
	_, _, on := s.body.surfs[f.surf].swell(p, f.n)
	return on
}

// meeting returns where the true surfaces of two faces meet in the plane through p
// square to d, near p: Newton's iteration. It reports false where they do not
// within a few times reach.
func (s *Solid) meeting(f, g *facet, p, d vec.V3, reach float64) (vec.V3, bool) {
	x := p
	for range 8 {
		u, gu := s.level(f, x)
		v, gv := s.level(g, x)
		gu, gv = gu.Sub(d.Mul(gu.Dot(d))), gv.Sub(d.Mul(gv.Dot(d)))
		// The step is a gu + b gv with gu·step = -u and gv·step = -v.
		uu, uv, vv := gu.Dot(gu), gu.Dot(gv), gv.Dot(gv)
		det := float64(uu*vv) - float64(uv*uv)
		if det < 1e-6*uu*vv || det == 0 {
			return p, false
		}
		step := gu.Mul((float64(v*uv) - float64(u*vv)) / det).Add(gv.Mul((float64(u*uv) - float64(v*uu)) / det))
		x = x.Add(step)
		if step.Norm() < 1e-12 {
			break
		}
	}
	return x, x.Sub(p).Norm() <= float64(10*reach)+1e-9
}

// level is nought on the true surface of a face, with its gradient.
func (s *Solid) level(f *facet, x vec.V3) (float64, vec.V3) {
	if f.surf < 0 {
		return f.n.Dot(x) - f.d, f.n
	}
	return s.body.surfs[f.surf].side(x)
}
