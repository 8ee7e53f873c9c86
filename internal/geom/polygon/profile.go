package polygon

import (
	"errors"
	"fmt"
	"math"
)

// P2 is a point or direction of the plane, in millimetres where it is a point.
type P2 struct{ X, Y float64 }

// Add returns a + b.
func (a P2) Add(b P2) P2 { return P2{a.X + b.X, a.Y + b.Y} }

// Sub returns a - b.
func (a P2) Sub(b P2) P2 { return P2{a.X - b.X, a.Y - b.Y} }

// Mul returns a scaled by k.
func (a P2) Mul(k float64) P2 { return P2{float64(a.X * k), float64(a.Y * k)} }

// Dot returns the scalar product.
func (a P2) Dot(b P2) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) }

// Cross returns the signed area of the parallelogram of a and b.
func (a P2) Cross(b P2) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }

// Norm returns the length of a.
func (a P2) Norm() float64 { return math.Sqrt(a.Dot(a)) }

// Left returns a turned a quarter anticlockwise.
func (a P2) Left() P2 { return P2{-a.Y, a.X} }

// Vertex is a corner of a loop and the shape of the segment that leaves it.
// Bulge is tan(sweep/4): 0 is a straight segment, positive turns anticlockwise.
type Vertex struct {
	P2
	Bulge float64
}

// Loop is a closed outline; its last segment returns to the first vertex.
type Loop []Vertex

// Profile is a flat region: an outer loop less its holes.
type Profile struct {
	Outer Loop
	Holes []Loop
}

// MaxVertices bounds the vertices of one profile: outlines come from strangers,
// and [Profile.Check] compares segments in pairs.
const MaxVertices = 1000

// Arc is a round segment: from angle Start through Sweep (radians, positive
// anticlockwise) about Centre.
type Arc struct {
	Centre        P2
	Radius        float64
	Start, Sweep  float64
	from, to, mid P2
}

// Arc returns the circle of segment i, and false if the segment is straight.
func (l Loop) Arc(i int) (Arc, bool) {
	v, w := l[i], l[(i+1)%len(l)]
	if v.Bulge == 0 {
		return Arc{}, false
	}
	b := v.Bulge
	chord := w.P2.Sub(v.P2)
	half := v.P2.Add(w.P2).Mul(0.5)
	bb := float64(b * b)
	a := Arc{Sweep: 4 * math.Atan(b), from: v.P2, to: w.P2}
	a.Centre = half.Add(chord.Left().Mul((1 - bb) / (4 * b)))
	a.Radius = chord.Norm() * (1 + bb) / (4 * math.Abs(b))
	r := v.P2.Sub(a.Centre)
	a.Start = math.Atan2(r.Y, r.X)
	a.mid = half.Sub(chord.Left().Mul(b / 2))
	return a, true
}

// At returns the point of the arc's circle at an angle.
func (a Arc) At(angle float64) P2 {
	return P2{a.Centre.X + float64(a.Radius*math.Cos(angle)), a.Centre.Y + float64(a.Radius*math.Sin(angle))}
}

// Area returns the signed area of the loop, arcs included, anticlockwise
// positive. Circular segment: r²(θ - sin θ)/2.
func (l Loop) Area() float64 {
	a, _ := l.moments()
	return a
}

// moments returns the signed area and the first moments about the origin.
func (l Loop) moments() (area float64, first P2) {
	if len(l) == 0 {
		return 0, P2{}
	}
	o := l[0].P2
	for i := range l {
		p, q := l[i].P2.Sub(o), l[(i+1)%len(l)].P2.Sub(o)
		t := float64(p.Cross(q) / 2)
		area += t
		first = first.Add(p.Add(q).Mul(t / 3))
		if arc, ok := l.Arc(i); ok {
			s, m := arc.segment()
			area += s
			first = first.Add(m.Sub(o.Mul(s)))
		}
	}
	return area, first.Add(o.Mul(area))
}

// segment returns the signed area between the arc and its chord and its first
// moment; the centroid lies 4r sin³(θ/2) / 3(θ - sin θ) from the centre.
func (a Arc) segment() (area float64, first P2) {
	th := a.Sweep
	d := th - math.Sin(th)
	area = a.Radius * a.Radius * d / 2
	s := math.Sin(th / 2)
	mid := a.mid.Sub(a.Centre)
	n := mid.Norm()
	if n == 0 || d == 0 {
		return 0, P2{}
	}
	dist := 4 * a.Radius * s * s * s / (3 * d)
	return area, a.Centre.Add(mid.Mul(dist / n)).Mul(area)
}

// Loops returns the outer loop and the holes, in that order. Segments are
// numbered through them in this order.
func (p Profile) Loops() []Loop { return append([]Loop{p.Outer}, p.Holes...) }

// Segments returns the number of segments of the profile.
func (p Profile) Segments() int {
	n := len(p.Outer)
	for _, h := range p.Holes {
		n += len(h)
	}
	return n
}

// Area returns the area of the profile in square millimetres, arcs included,
// whichever way its loops run.
func (p Profile) Area() float64 {
	a := math.Abs(p.Outer.Area())
	for _, h := range p.Holes {
		a -= math.Abs(h.Area())
	}
	return a
}

// Centroid returns the centre of area, arcs included.
func (p Profile) Centroid() P2 {
	var area float64
	var first P2
	for i, l := range p.Loops() {
		a, f := l.moments()
		if (a < 0) != (i > 0) {
			a, f = -a, f.Mul(-1)
		}
		area += a
		first = first.Add(f)
	}
	if area == 0 {
		return P2{}
	}
	return first.Mul(1 / area)
}

// Reversed returns the loop run the other way. Segment i of the result is
// segment len-1-i of the loop.
func (l Loop) Reversed() Loop {
	n := len(l)
	out := make(Loop, n)
	for i := range out {
		// Vertex i of the result is vertex n-i, so that segment i is n-1-i.
		out[i] = Vertex{l[(n-i)%n].P2, -l[n-1-i].Bulge}
	}
	return out
}

// Mirrored returns the profile with x turned to -x. Segments keep their
// numbers; the loops run the other way round.
func (p Profile) Mirrored() Profile {
	flip := func(l Loop) Loop {
		out := make(Loop, len(l))
		for i, v := range l {
			out[i] = Vertex{P2{-v.X, v.Y}, -v.Bulge}
		}
		return out
	}
	out := Profile{Outer: flip(p.Outer)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, flip(h))
	}
	return out
}

// Moved returns the profile shifted by d.
func (p Profile) Moved(d P2) Profile {
	shift := func(l Loop) Loop {
		out := make(Loop, len(l))
		for i, v := range l {
			out[i] = Vertex{v.P2.Add(d), v.Bulge}
		}
		return out
	}
	out := Profile{Outer: shift(p.Outer)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, shift(h))
	}
	return out
}

// errEmpty is what an impossible constructor leaves behind.
var errEmpty = errors.New("the outline is empty: its sizes leave no area")

// finite bounds coordinates: beyond 10 km nothing is furniture.
func finite(v Vertex) bool {
	const far = 1e7
	return math.Abs(v.X) < far && math.Abs(v.Y) < far && math.Abs(v.Bulge) < 1e3
}

// checkVertices finds what no orientation or crossing test can work with.
func (p Profile) checkVertices() error {
	if len(p.Outer) == 0 {
		return errEmpty
	}
	if n := p.Segments(); n > MaxVertices {
		return fmt.Errorf("the outline has %d segments; the limit is %d", n, MaxVertices)
	}
	for k, l := range p.Loops() {
		if len(l) < 2 || (len(l) == 2 && l[0].Bulge == 0 && l[1].Bulge == 0) {
			return fmt.Errorf("loop %d has %d segments and encloses nothing", k, len(l))
		}
		for i, v := range l {
			if !finite(v) {
				return fmt.Errorf("loop %d: vertex %d is not a usable number (%g, %g, bulge %g)", k, i, v.X, v.Y, v.Bulge)
			}
			if w := l[(i+1)%len(l)]; w.P2.Sub(v.P2).Norm() < 1e-6 {
				return fmt.Errorf("loop %d: segment %d is shorter than 1 nm", k, i)
			}
		}
	}
	return nil
}
