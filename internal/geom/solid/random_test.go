package solid

import (
	"math"
	"math/rand/v2"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// randomBoard makes a board with cuts on a 5 mm grid, so that flush, touching
// and tangent cuts are common, and with oblique ones among them.
func randomBoard(seed uint64) (bodies, cutters []Primitive) {
	r := rand.New(rand.NewPCG(seed, 77))
	grid := func(lo, hi int) float64 { return float64(5 * (lo + r.IntN(hi-lo+1))) }
	l, w, t := grid(12, 40), grid(6, 16), grid(2, 5)
	bodies = append(bodies, Block(vec.World, vec.V3{}, at(l, w, t), 1))
	if r.IntN(3) == 0 {
		x := grid(0, int(l)/5)
		bodies = append(bodies, Block(vec.World, at(x, 0, -10), at(x+grid(1, 4), grid(1, 6), grid(1, 8)), 2))
	}
	for n := 3 + r.IntN(9); len(bodies)+len(cutters) < n; {
		cutters = append(cutters, randomCutter(r, l, w, t, grid, Tag(10+len(cutters))))
	}
	return bodies, cutters
}

func randomCutter(r *rand.Rand, l, w, t float64, grid func(lo, hi int) float64, tag Tag) Primitive {
	x, y := grid(-1, int(l)/5), grid(-1, int(w)/5)
	f := vec.World
	f.Origin = at(x, y, t)
	if r.IntN(2) == 0 {
		f = randomFrame(r, f.Origin)
	} else if r.IntN(2) == 0 {
		f = vec.Frame{Origin: f.Origin, U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
	}
	sides, caps := Whole(tag)
	p := Prism{Frame: f, From: grid(-8, 0), To: grid(1, 8), Sides: sides, Caps: caps}
	switch r.IntN(6) {
	case 0, 1:
		p.Profile = polygon.Rect(polygon.P2{}, polygon.P2{X: grid(1, 8), Y: grid(1, 8)})
	case 2:
		p.Profile = polygon.Circle(polygon.P2{}, grid(1, 3))
	case 3:
		d := grid(1, 3)
		p.Profile = polygon.RoundBottom(d, d/2+grid(0, 2), d/2)
	case 4:
		p.Profile = polygon.Stadium(polygon.P2{}, polygon.P2{X: grid(1, 6)}, grid(1, 2))
	default: // what a round-over takes away from a corner
		q := grid(1, 3)
		p.Profile = polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: q}}, {P2: polygon.P2{X: q, Y: q}}, {P2: polygon.P2{Y: q}, Bulge: math.Tan(math.Pi / 8)},
		}}
		p.Profile.Outer[2].Bulge *= -1
	}
	return p
}

func randomFrame(r *rand.Rand, o vec.V3) vec.Frame {
	u := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64()).Unit()
	v := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64())
	v = v.Sub(u.Mul(u.Dot(v))).Unit()
	return vec.Frame{Origin: o, U: u, V: v, W: u.Cross(v)}
}
