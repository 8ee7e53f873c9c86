package solid

import (
	"math"

	"scantling/internal/geom/vec"
)

type surfaceKind int8

const (
	cylinder surfaceKind = iota
	cone
	sphere
	torus
)

// surface is the true round surface behind a run of facets.
type surface struct {
	kind   surfaceKind
	origin vec.V3 // on the axis; the apex of a cone; the centre of a sphere or torus
	axis   vec.V3 // unit
	radius float64
	// cone: radius is the tangent of the half angle, negative where the cone
	// narrows along the axis. torus: radius is that of the section, ring that
	// of the ring.
	ring float64
}

// moved returns the surface placed in a frame.
func (s surface) moved(f vec.Frame) surface {
	s.origin, s.axis = f.ToWorld(s.origin), f.DirToWorld(s.axis)
	return s
}

// side returns a signed distance-like value, zero on the surface, and its
// gradient. It is the true distance for cylinder, sphere and torus.
func (s surface) side(p vec.V3) (float64, vec.V3) {
	r := p.Sub(s.origin)
	h := r.Dot(s.axis)
	radial := r.Sub(s.axis.Mul(h))
	n := radial.Norm()
	var dir vec.V3
	if n > 0 {
		dir = radial.Mul(1 / n)
	}
	switch s.kind {
	case cylinder:
		return n - s.radius, dir
	case sphere:
		m := r.Norm()
		if m == 0 {
			return -s.radius, s.axis
		}
		return m - s.radius, r.Mul(1 / m)
	case cone:
		return n - float64(s.radius*h), dir.Sub(s.axis.Mul(s.radius))
	default:
		x := n - s.ring
		m := math.Sqrt(float64(x*x) + float64(h*h))
		if m == 0 {
			return -s.radius, dir
		}
		return m - s.radius, dir.Mul(x / m).Add(s.axis.Mul(h / m))
	}
}

// swell returns, for a point p of a facet with normal n, what a unit of facet
// area stands for between it and the true surface: volume, true area, and the
// point of the surface. Facet and surface are joined by the rays that leave the
// axis of a cylinder or cone squarely, the centre of a sphere, or the ring of a
// torus: one field for all facets, so that nothing is lost at their edges. With
// J(r) the spread of the field at distance r, volume is ∫J dr / J(ρ).
func (s surface) swell(p, n vec.V3) (volume, area float64, on vec.V3) {
	r := p.Sub(s.origin)
	h := r.Dot(s.axis)
	radial := r.Sub(s.axis.Mul(h))
	rho := radial.Norm()
	if s.kind == sphere {
		rho = r.Norm()
		radial = r
	}
	if rho == 0 {
		return 0, 0, p
	}
	e := radial.Mul(1 / rho)
	R, k := s.radius, 0.0
	switch s.kind {
	case cylinder, cone:
		k = 1
		if s.kind == cone {
			R = abs(s.radius * h)
			k = sqrt(1 + float64(s.radius*s.radius))
		}
		volume = (float64(R*R) - float64(rho*rho)) / (2 * rho)
		area = R * k / rho
	case sphere:
		q := rho * rho
		volume = (float64(R*R*R) - float64(q*rho)) / (3 * q)
		area = R * R / q
	default:
		x := rho - s.ring
		m := sqrt(float64(x*x) + float64(h*h))
		if m == 0 {
			return 0, 0, p
		}
		c := x / m
		e = e.Mul(c).Add(s.axis.Mul(h / m))
		j := m * (s.ring + float64(m*c))
		if abs(j) < 1e-12 {
			return 0, 0, p
		}
		volume = (float64(s.ring*(float64(R*R)-float64(m*m))/2) + float64(c*(float64(R*R*R)-float64(m*m*m)))/3) / j
		area = R * (s.ring + float64(R*c)) / j
		rho = m
	}
	slope := e.Dot(n)
	return volume * slope, abs(area * slope), p.Add(e.Mul(R - rho))
}

// gap returns how far the true surface lies from point p of a facet along its
// normal n, positive outwards. Newton's iteration from the facet: three steps
// reach float64 for facets of a sixteenth of a half circle and finer.
func (s surface) gap(p, n vec.V3) float64 {
	var t float64
	for range 6 {
		f, g := s.side(p.Add(n.Mul(t)))
		slope := g.Dot(n)
		if math.Abs(slope) < 0.05 {
			return 0
		}
		step := f / slope
		t -= step
		if math.Abs(step) < 1e-12 {
			break
		}
	}
	return t
}

// normal returns the unit normal of the surface at p, up to sign.
func (s surface) normal(p vec.V3) vec.V3 {
	_, g := s.side(p)
	return g.Unit()
}
