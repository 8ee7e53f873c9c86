package shape

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// sunk is a slot with upright walls and square bottom corners, its stopped ends
// round in plan as a turning cutter leaves them: the plan, sunk to the depth. At a
// side on which the slot is open the cutter runs out, and the corner is square.
func (t *trench) sunk(p *piece.Part, i int) solid.Prism {
	f, lo, hi := t.plan(p)
	y0, y1 := t.near, t.far
	if t.openNear {
		y0 -= beyond
	}
	if t.openFar {
		y1 += beyond
	}
	if !(y1 > y0 && t.to > t.from) {
		return solid.Prism{}
	}
	corners := [4]struct {
		at, in, out polygon.P2 // ways in and out, anticlockwise
		round       bool
		wall        Wall // that the corner's round belongs to
		next        Wall // of the side that follows
	}{
		{polygon.P2{X: t.from, Y: y0}, polygon.P2{Y: -1}, polygon.P2{X: 1}, t.round[0] && !t.openNear, Start, Near},
		{polygon.P2{X: t.to, Y: y0}, polygon.P2{X: 1}, polygon.P2{Y: 1}, t.round[1] && !t.openNear, End, End},
		{polygon.P2{X: t.to, Y: y1}, polygon.P2{Y: 1}, polygon.P2{X: -1}, t.round[1] && !t.openFar, End, Far},
		{polygon.P2{X: t.from, Y: y1}, polygon.P2{X: -1}, polygon.P2{Y: -1}, t.round[0] && !t.openFar, Start, Start},
	}
	var loop polygon.Loop
	var tags []solid.Tag
	put := func(v polygon.Vertex, w Wall) {
		if n := len(loop); n > 0 && loop[n-1].P2.Sub(v.P2).Norm() < 1e-6 {
			loop, tags = loop[:n-1], tags[:n-1]
		}
		loop, tags = append(loop, v), append(tags, wallTag(i, w))
	}
	for _, c := range corners {
		if c.round {
			put(polygon.Vertex{P2: c.at.Sub(c.in.Mul(t.radius)), Bulge: quarter}, c.wall)
			put(polygon.Vertex{P2: c.at.Add(c.out.Mul(t.radius))}, c.next)
			continue
		}
		put(polygon.Vertex{P2: c.at}, c.next)
	}
	if n := len(loop) - 1; loop[n].P2.Sub(loop[0].P2).Norm() < 1e-6 {
		loop, tags = loop[:n], tags[:n]
	}
	return solid.Prism{
		Frame: f, Profile: polygon.Profile{Outer: loop}, From: lo, To: hi, Sides: tags,
		Caps: [2]solid.Tag{wallTag(i, Bottom), wallTag(i, Bottom)},
	}
}

// plan is the frame in which the slot is seen from its mouth, u along the run and v
// across, and the stretch of w that it is sunk through.
func (t *trench) plan(p *piece.Part) (f vec.Frame, lo, hi float64) {
	axis, high := t.slot.Open.Axis()
	f = vec.Frame{U: toward(t.slot.Run, true), V: toward(t.slot.Across(), true)}
	f.W = f.U.Cross(f.V)
	lo, hi = -beyond, t.depth
	if t.openThrough {
		hi += beyond
	}
	if high {
		whole := size(p, axis)
		lo, hi = whole-hi, whole-lo
	}
	if f.W.At(int(axis)) < 0 {
		lo, hi = -hi, -lo
	}
	return f, lo, hi
}

// plungeable says whether one cutter of the end's radius leaves the section.
func (t *trench) plungeable() bool {
	const slack = 1e-9
	return t.leanNear == t.leanFar && t.radius >= t.corner-slack &&
		t.radius-t.leanNear >= -slack && 2*t.radius <= t.far-t.near+slack
}

// reach is how far from its centre the cutter cuts at all: at the surface, or
// below it where it is undercut.
func (t *trench) reach() float64 {
	if t.corner > t.depth {
		return t.radius - t.corner + math.Sqrt(float64(t.depth*(2*t.corner-t.depth)))
	}
	return max(t.radius, t.radius-t.leanNear)
}

// plunge adds what the cutter leaves at a stopped end: its turned shape where it
// stands and, where the slot is wider than the cutter, its section drawn across
// from corner to corner.
func (t *trench) plunge(out []solid.Primitive, end bool, i int, wall Wall) []solid.Primitive {
	w := t.from + t.reach()
	if end {
		w = t.to - t.reach()
	}
	half, tags := t.half(i, wall)
	a, b := t.near+t.radius, t.far-t.radius
	stand := func(u float64) {
		o := t.frame.ToWorld(vec.V3{X: float64(t.sense * u), Z: w})
		out = append(out, solid.Turned{
			Frame:   vec.Frame{Origin: o, U: t.frame.W, V: t.frame.U, W: t.frame.V},
			Profile: polygon.Profile{Outer: half}, Sides: tags,
		})
	}
	stand(a)
	if b-a < 1e-6 {
		return out
	}
	stand(b)
	whole, sides := mirrored(half, tags)
	f := vec.Frame{Origin: t.frame.ToWorld(vec.V3{Z: w}), U: t.frame.W, V: t.frame.V}
	f.W = f.U.Cross(f.V)
	from, to := float64(t.sense*a), float64(t.sense*b)
	if f.W.Dot(t.frame.U) < 0 {
		from, to = -from, -to
	}
	return append(out, solid.Prism{Frame: f, Profile: polygon.Profile{Outer: whole}, From: from, To: to, Sides: sides,
		Caps: [2]solid.Tag{wallTag(i, Near), wallTag(i, Far)}})
}

// half is the cutter's outline on one side of its axis, with tags: from the axis
// at the bottom, anticlockwise, to the axis above the mouth.
func (t *trench) half(i int, wall Wall) (polygon.Loop, []solid.Tag) {
	r, c, d := t.radius, t.corner, t.depth
	bottom, side := wallTag(i, Bottom), wallTag(i, wall)
	axis := polygon.Vertex{P2: polygon.P2{Y: -d}}
	if c <= 0 {
		foot := r - t.leanNear
		loop := polygon.Loop{axis}
		tags := []solid.Tag{bottom}
		if foot > 1e-9 {
			loop, tags = append(loop, polygon.Vertex{P2: polygon.P2{X: foot, Y: -d}}), append(tags, side)
		} else {
			tags[0] = side
		}
		loop = append(loop, polygon.Vertex{P2: polygon.P2{X: r + float64(t.leanNear*t.top/d), Y: t.top}}, polygon.Vertex{P2: polygon.P2{Y: t.top}})
		return loop, append(tags, side, side)
	}
	height := d + beyond
	flat := max(r-c, 0)
	var loop polygon.Loop
	var tags []solid.Tag
	if flat > 1e-9 {
		loop, tags = append(loop, axis), append(tags, bottom)
	}
	if height <= c {
		sweep := math.Acos((c - height) / c)
		loop = append(loop,
			polygon.Vertex{P2: polygon.P2{X: flat, Y: -d}, Bulge: math.Tan(sweep / 4)},
			polygon.Vertex{P2: polygon.P2{X: flat + math.Sqrt(float64(height*(2*c-height))), Y: beyond}})
		tags = append(tags, bottom, side)
	} else {
		loop = append(loop,
			polygon.Vertex{P2: polygon.P2{X: flat, Y: -d}, Bulge: quarter},
			polygon.Vertex{P2: polygon.P2{X: r, Y: c - d}},
			polygon.Vertex{P2: polygon.P2{X: r, Y: beyond}})
		tags = append(tags, bottom, side, side)
	}
	return append(loop, polygon.Vertex{P2: polygon.P2{Y: beyond}}), append(tags, side)
}

// mirrored makes a whole section of the half beside the axis.
func mirrored(half polygon.Loop, tags []solid.Tag) (whole polygon.Loop, sides []solid.Tag) {
	right, level := half[:len(half)-1], tags[0]
	if right[0].Bulge == 0 && right[0].Y == right[1].Y {
		right, tags = right[1:], tags[1:] // the middle of a level bottom
	}
	for k, v := range right {
		whole, sides = append(whole, v), append(sides, tags[k])
	}
	for k := len(right) - 1; k >= 0; k-- {
		if right[k].X == 0 {
			break // on the axis: met already
		}
		v, tag := polygon.Vertex{P2: polygon.P2{X: -right[k].X, Y: right[k].Y}}, level
		if k > 0 {
			v.Bulge, tag = right[k-1].Bulge, tags[k-1]
		}
		whole, sides = append(whole, v), append(sides, tag)
	}
	return whole, sides
}
