package hidden

import (
	"math"
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

// View says from where to look. Sight points from the eye into the scene; Up
// is the direction that is upward on paper, as nearly as it can be.
type View struct {
	Sight, Up vec.V3
	// Hidden asks for hidden strokes as well.
	Hidden bool
}

// Kind tells strokes apart.
type Kind int8

// A stroke is a straight line, an arc of an ellipse, or a chain of chords: a curve
// that has no name here, such as that in which two round faces meet.
const (
	Line Kind = iota
	Arc
	Chain
)

// Stroke is one line or arc on paper, in millimetres, x to the right and y up
// from the projection of the world's origin.
type Stroke struct {
	Kind     Kind
	From, To polygon.P2
	// Arc: the points Centre + Major cos t + Minor sin t for t from Start
	// through Sweep. Major and Minor are square to one another; of equal
	// length for a circle.
	Centre, Major, Minor polygon.P2
	Start, Sweep         float64
	// Chain: the points from From to To; in a closed chain they are the same.
	Chords []polygon.P2
	Hidden bool
	// Outline says that the stroke is where a round face turns away, not an
	// edge between faces.
	Outline bool
	Solid   int // index into the solids drawn
	Tags    [2]solid.Tag
	surfs   [2]int32 // what the chord of a curve lies between
}

// At returns the point of an arc at parameter t.
func (s Stroke) At(t float64) polygon.P2 {
	return s.Centre.Add(s.Major.Mul(math.Cos(t))).Add(s.Minor.Mul(math.Sin(t)))
}

// Points flattens the stroke, arcs with perHalf chords to a half turn.
func (s Stroke) Points(perHalf int) []polygon.P2 {
	switch s.Kind {
	case Line:
		return []polygon.P2{s.From, s.To}
	case Chain:
		return slices.Clone(s.Chords)
	}
	n := int(math.Ceil(math.Abs(s.Sweep) / math.Pi * float64(max(1, perHalf))))
	n = max(1, n)
	out := make([]polygon.P2, 0, n+1)
	for i := range n + 1 {
		out = append(out, s.At(s.Start+float64(s.Sweep*float64(i)/float64(n))))
	}
	return out
}

// Drawing is the answer: strokes in an order that depends on the input only,
// and the indices of solids left out because they are unverified.
type Drawing struct {
	Strokes    []Stroke
	Unverified []int
}

// frame returns the axes of the paper: x right, y up, z towards the eye.
func (v View) frame() vec.Frame {
	z := v.Sight.Unit().Mul(-1)
	if z == (vec.V3{}) {
		z = vec.V3{Z: 1}
	}
	up := v.Up.Sub(z.Mul(v.Up.Dot(z)))
	if up.Norm() < 1e-6 {
		for _, u := range [2]vec.V3{{Z: 1}, {Y: 1}} {
			if up = u.Sub(z.Mul(u.Dot(z))); up.Norm() > 0.5 {
				break
			}
		}
	}
	y := up.Unit()
	return vec.Frame{U: y.Cross(z), V: y, W: z}
}

// Draw returns the strokes of the solids seen in the view.
func Draw(all []solid.Placed, v View) Drawing {
	var out Drawing
	sc := &scene{paper: v.frame()}
	for i, p := range all {
		if st, _ := p.Solid.Status(); st != solid.Verified {
			out.Unverified = append(out.Unverified, i)
			continue
		}
		sc.add(i, p)
	}
	sc.grid()
	m := newMerger()
	for i := range sc.edges {
		e := &sc.edges[i]
		if e.back && !v.Hidden {
			continue
		}
		sc.judge(e, func(a, b float64, hid bool) {
			if !hid || v.Hidden {
				m.add(sc, e, a, b, hid)
			}
		})
	}
	out.Strokes = m.strokes()
	return out
}
