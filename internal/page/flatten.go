package page

import "math"

// maxFlat bounds the chords of one curve.
const maxFlat = 256

// Flatten returns the path as polylines whose chords leave it by at most
// tolerance millimetres (at least a micrometre). A closed line ends at its first
// point.
func (s Path) Flatten(tolerance float64) (lines [][]Point) {
	tolerance = max(tolerance, 1e-3)
	var cur []Point
	flush := func() {
		if len(cur) > 1 {
			lines = append(lines, cur)
		}
		cur = nil
	}
	for _, g := range s {
		switch {
		case g.Verb == MoveTo:
			flush()
			cur = []Point{g.To}
			continue
		case len(cur) == 0:
			cur = []Point{{}}
		}
		from := cur[len(cur)-1]
		switch g.Verb {
		case LineTo:
			cur = append(cur, g.To)
		case ArcTo:
			cur = append(cur, g.chords(from, tolerance)...)
		case CurveTo:
			cur = append(cur, g.cubicChords(from, tolerance)...)
		case Close:
			first := cur[0]
			cur = append(cur, first)
			flush()
			cur = []Point{first}
		}
	}
	flush()
	return lines
}

func (g Segment) chords(from Point, tolerance float64) (out []Point) {
	start, sweep := g.Sweep(from)
	r := from.Sub(g.Centre).Norm()
	n := 1
	if r > tolerance {
		// A chord over angle a leaves the circle by r(1-cos(a/2)).
		n = int(math.Ceil(sweep / (2 * math.Acos(1-tolerance/r))))
	}
	n = min(max(n, 2), maxFlat)
	if g.Left {
		sweep = -sweep
	}
	for i := 1; i < n; i++ {
		a := start + float64(sweep*float64(i)/float64(n))
		out = append(out, g.Centre.Add(Point{float64(r * math.Cos(a)), float64(r * math.Sin(a))}))
	}
	return append(out, g.To)
}

func (g Segment) cubicChords(from Point, tolerance float64) (out []Point) {
	// A curve leaves the chord of a step of h by at most h²/8 times its greatest
	// second derivative, which for a cubic is 6 times its second differences.
	d1 := from.Sub(g.C1.Mul(2)).Add(g.C2).Norm()
	d2 := g.C1.Sub(g.C2.Mul(2)).Add(g.To).Norm()
	n := int(math.Ceil(math.Sqrt(0.75 * max(d1, d2) / tolerance)))
	n = min(max(n, 1), maxFlat)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		p := from.Mul(u * u * u).Add(g.C1.Mul(3 * u * u * t)).Add(g.C2.Mul(3 * u * t * t)).Add(g.To.Mul(t * t * t))
		out = append(out, p)
	}
	return append(out, g.To)
}

// Box returns the least box around the path, without the width of its line;
// round parts are taken to a hundredth of a millimetre.
func (s Path) Box() Box {
	var b Box
	for _, line := range s.Flatten(0.01) {
		b = b.Union(boxOf(line...))
	}
	return b
}
