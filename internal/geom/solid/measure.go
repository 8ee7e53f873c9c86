package solid

import (
	"scantling/internal/geom/vec"
)

// measures are the integrals over a solid, worked out together.
type measures struct {
	volume, area float64
	centroid     vec.V3
	inertia      Inertia
}

// Inertia holds the second moments of volume about the centroid, in mm⁵: XX is
// ∫x² dV, XY is ∫xy dV and so on. Times density they give the tensor.
type Inertia struct{ XX, YY, ZZ, XY, YZ, ZX float64 }

// Volume returns the volume in mm³ with round faces taken as round: the
// faceted volume and, over every facet, the space up to the true surface.
func (s *Solid) Volume() float64 { return s.measured().volume }

// Area returns the surface in mm², round faces as round.
func (s *Solid) Area() float64 { return s.measured().area }

// Centroid returns the centre of volume.
func (s *Solid) Centroid() vec.V3 { return s.measured().centroid }

// Inertia returns the second moments of volume about the centroid.
func (s *Solid) Inertia() Inertia { return s.measured().inertia }

func (s *Solid) measured() *measures {
	s.measOnce.Do(func() {
		if s.status == Verified && !s.Empty() {
			s.meas = s.integrate()
		}
	})
	return &s.meas
}

// dunavant8 is the sixteen-point rule of degree eight on a triangle (Dunavant,
// High degree efficient symmetrical Gaussian quadrature rules for the triangle,
// 1985): barycentric coordinates in every order, and the weight of each.
var dunavant8 = [...]struct{ a, b, c, w float64 }{
	{1. / 3, 1. / 3, 1. / 3, 0.144315607677787},
	{0.081414823414554, 0.459292588292723, 0.459292588292723, 0.095091634267285},
	{0.658861384496480, 0.170569307751760, 0.170569307751760, 0.103217370534718},
	{0.898905543365938, 0.050547228317031, 0.050547228317031, 0.032458497623198},
	{0.008394777409958, 0.263112829634638, 0.728492392955404, 0.027230314174435},
}

// integrate sums over the mesh, about the middle of the bounds.
func (s *Solid) integrate() measures {
	mesh := s.Mesh()
	mid := s.body.lo.Add(s.body.hi).Mul(0.5)
	var m moments
	var area float64
	for _, t := range mesh.Tris {
		a, b, c := mesh.Verts[t.V[0]].Sub(mid), mesh.Verts[t.V[1]].Sub(mid), mesh.Verts[t.V[2]].Sub(mid)
		m.tetra(a, b, c)
		flat := float64(b.Sub(a).Cross(c.Sub(a)).Norm() / 2)
		f := &s.body.facets[t.Face]
		if f.surf < 0 {
			area += flat
			continue
		}
		area += s.bulge(f, mid, a, b, c, flat, &m, 3)
	}
	area += s.rims(mid, &m)
	out := measures{volume: m.v, area: area}
	if m.v == 0 {
		return out
	}
	g := m.first.Mul(1 / m.v)
	out.centroid = g.Add(mid)
	out.inertia = Inertia{
		m.xx - float64(m.v*float64(g.X*g.X)), m.yy - float64(m.v*float64(g.Y*g.Y)), m.zz - float64(m.v*float64(g.Z*g.Z)),
		m.xy - float64(m.v*float64(g.X*g.Y)), m.yz - float64(m.v*float64(g.Y*g.Z)), m.zx - float64(m.v*float64(g.Z*g.X)),
	}
	return out
}

// bulge adds the space between a facet's triangle and the true surface, and
// returns the true area over the triangle.
func (s *Solid) bulge(f *facet, mid, a, b, c vec.V3, flat float64, m *moments, depth int) (area float64) {
	surf := &s.body.surfs[f.surf]
	if surf.kind == cone && depth > 0 {
		// Towards the tip of a cone the integrand is no polynomial.
		ab, bc, ca := a.Add(b).Mul(0.5), b.Add(c).Mul(0.5), c.Add(a).Mul(0.5)
		for _, t := range [4][3]vec.V3{{a, ab, ca}, {ab, b, bc}, {ca, bc, c}, {ab, bc, ca}} {
			area += s.bulge(f, mid, t[0], t[1], t[2], flat/4, m, depth-1)
		}
		return area
	}
	at := func(u, v, w, weight float64) {
		p := a.Mul(u).Add(b.Mul(v)).Add(c.Mul(w))
		v, k, on := surf.swell(p.Add(mid), f.n)
		m.lump(p.Add(on.Sub(mid)).Mul(0.5), v*flat*weight)
		area += float64(k * flat * weight)
	}
	for _, q := range dunavant8 {
		at(q.a, q.b, q.c, q.w)
		if q.a == q.b {
			continue
		}
		at(q.b, q.c, q.a, q.w)
		at(q.c, q.a, q.b, q.w)
		if q.b != q.c {
			at(q.a, q.c, q.b, q.w)
			at(q.c, q.b, q.a, q.w)
			at(q.b, q.a, q.c, q.w)
		}
	}
	return area
}

// moments are volume and its first and second moments about the origin.
type moments struct {
	v                      float64
	first                  vec.V3
	xx, yy, zz, xy, yz, zx float64
}

// tetra adds the tetrahedron from the origin to a triangle:
// ∫xy = V/20 (Σ xᵢyᵢ + Σxᵢ Σyᵢ).
func (m *moments) tetra(a, b, c vec.V3) {
	v := a.Dot(b.Cross(c)) / 6
	sum := a.Add(b).Add(c)
	m.v += v
	m.first = m.first.Add(sum.Mul(v / 4))
	second := func(x, y func(vec.V3) float64) float64 {
		s := float64(x(a)*y(a)) + float64(x(b)*y(b)) + float64(x(c)*y(c)) + float64(x(sum)*y(sum))
		return float64(v * s / 20)
	}
	x := func(p vec.V3) float64 { return p.X }
	y := func(p vec.V3) float64 { return p.Y }
	z := func(p vec.V3) float64 { return p.Z }
	m.xx += second(x, x)
	m.yy += second(y, y)
	m.zz += second(z, z)
	m.xy += second(x, y)
	m.yz += second(y, z)
	m.zx += second(z, x)
}

// lump adds a small volume at a point.
func (m *moments) lump(p vec.V3, v float64) {
	m.v += v
	m.first = m.first.Add(p.Mul(v))
	m.xx += float64(v * float64(p.X*p.X))
	m.yy += float64(v * float64(p.Y*p.Y))
	m.zz += float64(v * float64(p.Z*p.Z))
	m.xy += float64(v * float64(p.X*p.Y))
	m.yz += float64(v * float64(p.Y*p.Z))
	m.zx += float64(v * float64(p.Z*p.X))
}
