package polygon

import "math"

// Polygon returns the straight-sided outline through the points; the segment
// i runs from point i to the next.
func Polygon(points ...P2) Profile {
	l := make(Loop, len(points))
	for i, p := range points {
		l[i].P2 = p
	}
	return Profile{Outer: l}
}

// Rect returns the rectangle between two opposite corners. Its segments are,
// in order, the sides at least y, greatest x, greatest y and least x.
func Rect(a, b P2) Profile {
	x0, x1 := min(a.X, b.X), max(a.X, b.X)
	y0, y1 := min(a.Y, b.Y), max(a.Y, b.Y)
	if !(x1 > x0 && y1 > y0) {
		return Profile{}
	}
	return Polygon(P2{x0, y0}, P2{x1, y0}, P2{x1, y1}, P2{x0, y1})
}

// Circle returns the circle about c of the given radius, in two segments.
func Circle(c P2, radius float64) Profile {
	if !(radius > 0) {
		return Profile{}
	}
	return Profile{Outer: Loop{
		{P2{c.X + radius, c.Y}, 1},
		{P2{c.X - radius, c.Y}, 1},
	}}
}

// Stadium returns the slot that a round cutter of the given radius leaves when
// its centre runs from a to b: two straight sides (segments 0 and 2) and two
// half circles (1 round b, 3 round a). Where a is b it is the circle.
func Stadium(a, b P2, radius float64) Profile {
	d := b.Sub(a)
	n := d.Norm()
	if n < 1e-6 {
		return Circle(a, radius)
	}
	if !(radius > 0) {
		return Profile{}
	}
	r := d.Mul(radius / n).Left()
	return Profile{Outer: Loop{
		{a.Sub(r), 0}, {b.Sub(r), 1}, {b.Add(r), 0}, {a.Add(r), 1},
	}}
}

// RoundBottom returns the section of a slot: width across, depth below its
// mouth, bottom corners of the cutter's corner radius. The origin is the middle
// of the mouth and the slot lies at negative y. Where depth is less than the
// radius the walls are not reached and the mouth is the chord of the arcs:
// narrower than width. Segment 0 is the mouth, run towards negative x; the
// others follow anticlockwise. A radius over half the width leaves no outline.
func RoundBottom(width, depth, radius float64) Profile {
	h := float64(width / 2)
	if !(depth > 0 && h > 0 && radius >= 0) || radius > h+1e-9 {
		return Profile{}
	}
	radius = min(radius, h)
	if radius == 0 {
		return Polygon(P2{h, 0}, P2{-h, 0}, P2{-h, -depth}, P2{h, -depth})
	}
	flat := h - radius // half of the level bottom
	mouth, rise := h, radius
	if depth < radius {
		rise = depth
		mouth = flat + math.Sqrt(float64(depth*(2*radius-depth)))
	}
	// The arc sweeps from the wall (or the mouth) to straight down.
	sweep := math.Acos((radius - rise) / radius)
	bulge := math.Tan(sweep / 4)
	l := Loop{{P2{mouth, 0}, 0}}
	if depth > radius {
		l = append(l, Vertex{P2{-h, 0}, 0}, Vertex{P2{-h, radius - depth}, 0})
	} else {
		l = append(l, Vertex{P2{-mouth, 0}, 0})
	}
	last := len(l) - 1
	if flat > 1e-9 {
		l[last].Bulge = bulge
		l = append(l, Vertex{P2{-flat, -depth}, 0}, Vertex{P2{flat, -depth}, bulge})
	} else {
		l[last].Bulge = math.Tan(sweep / 2)
	}
	if depth > radius {
		l = append(l, Vertex{P2{h, radius - depth}, 0})
	}
	return Profile{Outer: l}
}
