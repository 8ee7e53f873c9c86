package solid

import (
	"math"

	"scantling/internal/geom/vec"
)

// Edges returns every edge of the solid between two faces, those between
// facets of one round surface included. A and B index [Mesh.Verts], Left and
// Right index [Solid.Faces]; Crease says that a drawing shows it.
func (s *Solid) Edges() []Edge {
	if s.status != Verified {
		return nil
	}
	s.edgeOnce.Do(func() { s.edgeList = s.edges() })
	return s.edgeList
}

// FaceNormal returns the outward normal of a face as faceted, and its tag.
func (s *Solid) FaceNormal(face int32) (vec.V3, Tag) {
	f := &s.body.facets[face]
	return f.n, f.tag
}

// FaceSurface returns the number of the true surface of a face, as in
// [Face.Surface], and whether it is round.
func (s *Solid) FaceSurface(face int32) (int32, bool) {
	f := &s.body.facets[face]
	return s.surfaceID(f), f.surf >= 0
}

// Curve is an ellipse in space: Centre + P cos t + Q sin t. For a circle P and
// Q are square and equal in length.
type Curve struct{ Centre, P, Q vec.V3 }

// At returns the point of the curve at parameter t.
func (c Curve) At(t float64) vec.V3 {
	return c.Centre.Add(c.P.Mul(math.Cos(t))).Add(c.Q.Mul(math.Sin(t)))
}

// Angle returns the parameter, in (-π, π], of the curve's point nearest to p.
func (c Curve) Angle(p vec.V3) float64 {
	d := p.Sub(c.Centre)
	// Solve d = P x + Q y in the plane of the curve.
	pp, pq, qq := c.P.Dot(c.P), c.P.Dot(c.Q), c.Q.Dot(c.Q)
	dp, dq := d.Dot(c.P), d.Dot(c.Q)
	x := float64(dp*qq) - float64(dq*pq)
	y := float64(dq*pp) - float64(dp*pq)
	return math.Atan2(y, x)
}

// EdgeCurve returns the true curve in which a flat and a round face meet, and
// false where they are both flat or both round, or where the curve is none
// that the kernel names.
func (s *Solid) EdgeCurve(left, right int32) (Curve, bool) {
	f, g := &s.body.facets[left], &s.body.facets[right]
	if f.surf >= 0 {
		f, g = g, f
	}
	if f.surf >= 0 || g.surf < 0 {
		return Curve{}, false
	}
	u := &s.body.surfs[g.surf]
	slope := f.n.Dot(u.axis)
	if abs(slope) < 1e-3 && u.kind != sphere {
		return Curve{}, false
	}
	switch u.kind {
	case cylinder:
		return u.cut(f.n, f.d, slope, u.radius), true
	case sphere:
		h := f.d - f.n.Dot(u.origin)
		r2 := float64(u.radius*u.radius) - float64(h*h)
		if r2 <= 0 {
			return Curve{}, false
		}
		e1, e2 := across(f.n)
		r := sqrt(r2)
		return Curve{u.origin.Add(f.n.Mul(h)), e1.Mul(r), e2.Mul(r)}, true
	case cone, torus:
		if abs(slope) < 1-1e-9 {
			return Curve{}, false
		}
		h := (f.d - f.n.Dot(u.origin)) / slope
		if u.kind == cone {
			return u.cut(f.n, f.d, slope, abs(u.radius*h)), true
		}
	}
	return Curve{}, false
}

// cut returns the ellipse of a circular cylinder of radius r about the
// surface's axis in the plane n·x = d.
func (u *surface) cut(n vec.V3, d, slope, r float64) Curve {
	e1, e2 := across(u.axis)
	centre := u.origin.Add(u.axis.Mul((d - n.Dot(u.origin)) / slope))
	lean := func(e vec.V3) vec.V3 { return e.Sub(u.axis.Mul(n.Dot(e) / slope)).Mul(r) }
	return Curve{centre, lean(e1), lean(e2)}
}

// across returns two unit vectors square to a and to each other.
func across(a vec.V3) (e1, e2 vec.V3) {
	axis := vec.V3{X: 1}
	if abs(a.X) > 0.8 {
		axis = vec.V3{Y: 1}
	}
	e1 = axis.Sub(a.Mul(axis.Dot(a))).Unit()
	return e1, a.Cross(e1)
}
