package vec

import (
	"math"

	"scantling/internal/unit"
)

// V3 is a point or a direction, in millimetres where it is a point.
type V3 struct{ X, Y, Z float64 }

// Of crosses from exact lengths to millimetres.
func Of(x, y, z unit.Length) V3 { return V3{x.Millimetres(), y.Millimetres(), z.Millimetres()} }

// Lengths crosses back, each to the nearest nanometre.
func (a V3) Lengths() [3]unit.Length {
	return [3]unit.Length{unit.FromMillimetres(a.X), unit.FromMillimetres(a.Y), unit.FromMillimetres(a.Z)}
}

// Add returns a + b.
func (a V3) Add(b V3) V3 { return V3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a - b.
func (a V3) Sub(b V3) V3 { return V3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by k.
func (a V3) Mul(k float64) V3 { return V3{float64(a.X * k), float64(a.Y * k), float64(a.Z * k)} }

// Dot returns the scalar product.
func (a V3) Dot(b V3) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z) }

// Cross returns the vector product, right-handed.
func (a V3) Cross(b V3) V3 {
	return V3{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Norm returns the length of a.
func (a V3) Norm() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a scaled to length one, or the zero vector if a is zero.
func (a V3) Unit() V3 {
	n := a.Norm()
	if n == 0 {
		return V3{}
	}
	return a.Mul(1 / n)
}

// At returns the coordinate along axis 0, 1 or 2.
func (a V3) At(axis int) float64 {
	switch axis {
	case 0:
		return a.X
	case 1:
		return a.Y
	default:
		return a.Z
	}
}

// Frame is a right-handed rigid frame: an origin and three unit directions.
type Frame struct{ Origin, U, V, W V3 }

// World is the frame of the piece itself.
var World = Frame{U: V3{X: 1}, V: V3{Y: 1}, W: V3{Z: 1}}

// ToWorld returns the world point of local coordinates p.
func (f Frame) ToWorld(p V3) V3 {
	return f.Origin.Add(f.U.Mul(p.X)).Add(f.V.Mul(p.Y)).Add(f.W.Mul(p.Z))
}

// DirToWorld turns a local direction into the world.
func (f Frame) DirToWorld(d V3) V3 { return f.U.Mul(d.X).Add(f.V.Mul(d.Y)).Add(f.W.Mul(d.Z)) }

// ToLocal returns the local coordinates of a world point.
func (f Frame) ToLocal(p V3) V3 {
	d := p.Sub(f.Origin)
	return V3{d.Dot(f.U), d.Dot(f.V), d.Dot(f.W)}
}

// Then returns the frame that places f's content inside g: g after f.
func (f Frame) Then(g Frame) Frame {
	return Frame{g.ToWorld(f.Origin), g.DirToWorld(f.U), g.DirToWorld(f.V), g.DirToWorld(f.W)}
}
