package shape

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// quarter is the bulge of a quarter of a circle.
var quarter = math.Tan(math.Pi / 8)

// trench is a slot in millimetres, in the frame of its mouth: u across, v out of
// the side, w along the run.
type trench struct {
	slot        *piece.Slot
	frame       vec.Frame
	sense       float64 // of u against the axis across
	near, far   float64
	depth       float64
	corner      float64
	leanNear    float64
	leanFar     float64
	from, to    float64
	radius      float64 // of the round ends, 0 where they are flat
	round       [2]bool // the start, the end
	top         float64 // how far the cutter reaches out of the side
	openNear    bool
	openFar     bool
	openThrough bool
}

func trenchOf(p *piece.Part, s *piece.Slot) trench {
	f, across, sense := mouth(p, s.Open, s.Run)
	open, _ := s.Open.Axis()
	t := trench{
		slot: s, frame: f, sense: sense, depth: s.Depth.Nm.Millimetres(),
		near: s.Near.Nm.Millimetres(), far: s.Far.Nm.Millimetres(), corner: s.Corner.Nm.Millimetres(),
		leanNear: s.LeanNear.Nm.Millimetres(), leanFar: s.LeanFar.Nm.Millimetres(),
		from: s.From.Nm.Millimetres(), to: s.To.Nm.Millimetres(), top: beyond,
		openNear: s.Near.Nm <= 0, openFar: s.Far.Nm >= p.Sizes()[across].Nm,
		openThrough: s.Depth.Nm >= p.Sizes()[open].Nm,
	}
	t.round = roundEnds(p, s)
	if t.round[0] || t.round[1] {
		t.radius = s.EndRadius.Nm.Millimetres()
	}
	if s.From.Nm <= 0 {
		t.from -= beyond
	}
	if s.To.Nm >= p.Sizes()[s.Run].Nm {
		t.to += beyond
	}
	// Walls that close upwards meet above the mouth: stay well below that.
	if lean := t.leanNear + t.leanFar; lean < 0 {
		t.top = min(beyond, float64((t.far-t.near)*t.depth/(-2*lean)))
	}
	return t
}

// roundEnds says at which of its ends a slot keeps the round of its cutter: those
// that stop in the wood.
func roundEnds(p *piece.Part, s *piece.Slot) [2]bool {
	if s.EndRadius.Nm <= 0 {
		return [2]bool{}
	}
	return [2]bool{
		s.From.Nm > 0 && !s.StartOpen,
		s.To.Nm < p.Sizes()[s.Run].Nm && !s.EndOpen,
	}
}

// leans reports whether a wall of the slot leans.
func leans(s *piece.Slot) bool { return s.LeanNear.Nm != 0 || s.LeanFar.Nm != 0 }

// slot is a trench. With square corners and upright walls it is its plan sunk to
// its depth; else its section drawn out along its run and, at round ends, what the
// cutter leaves where it stands.
func slot(p *piece.Part, s *piece.Slot, i int) []solid.Primitive {
	if !straight(s) || (s.Corner.Nm > 0 && leans(s)) {
		return impossible()
	}
	t := trenchOf(p, s)
	if t.radius > 0 && s.Corner.Nm <= 0 && !leans(s) {
		return []solid.Primitive{t.sunk(p, i)}
	}
	if t.radius > 0 && !t.plungeable() {
		return impossible()
	}
	main := solid.Prism{
		Frame: t.frame, From: t.from, To: t.to,
		Caps: [2]solid.Tag{wallTag(i, Start), wallTag(i, End)},
	}
	low, high := Near, Far // walls at the lesser and the greater u
	if t.sense < 0 {
		low, high = Far, Near
	}
	main.Profile, main.Sides = t.section(i, low, high)
	out := []solid.Primitive{main}
	for k, wall := range [2]Wall{Start, End} {
		if t.round[k] {
			out = t.plunge(out, k == 1, i, wall)
		}
	}
	if t.round[0] {
		main.From += t.reach()
	}
	if t.round[1] {
		main.To -= t.reach()
	}
	if main.To-main.From < 1e-6 {
		return out[1:] // the cutter is plunged and not moved
	}
	out[0] = main
	return out
}

// section is the slot's section with the tags of its segments.
func (t *trench) section(i int, low, high Wall) (polygon.Profile, []solid.Tag) {
	if t.corner > 0 {
		mid := float64(t.sense * (t.near + t.far) / 2)
		out := polygon.RoundBottom(t.far-t.near, t.depth+beyond, t.corner).Moved(polygon.P2{X: mid, Y: beyond})
		return out, roundTags(out.Outer, i, low, high)
	}
	near, far, depth := t.near, t.far, t.depth
	tags := []solid.Tag{wallTag(i, Bottom), wallTag(i, high), wallTag(i, Bottom), wallTag(i, low)}
	if t.leanNear == 0 && t.openNear {
		near -= beyond
	}
	if t.leanFar == 0 && t.openFar {
		far += beyond
	}
	foot := 0.0
	if t.openThrough {
		foot = beyond
	}
	if t.leanNear == 0 && t.leanFar == 0 {
		return polygon.Rect(polygon.P2{X: float64(t.sense * near), Y: -depth - foot}, polygon.P2{X: float64(t.sense * far), Y: beyond}), tags
	}
	// The wall at a height y over the mouth, drawn on beyond the mouth.
	left := func(y float64) polygon.P2 {
		return polygon.P2{X: float64(t.sense * (near - float64(t.leanNear*y/depth))), Y: y}
	}
	right := func(y float64) polygon.P2 {
		return polygon.P2{X: float64(t.sense * (far + float64(t.leanFar*y/depth))), Y: y}
	}
	if t.sense < 0 {
		left, right = right, left
	}
	width := right(-depth).X - left(-depth).X
	switch {
	case !(depth > 0) || width < -1e-9:
		return polygon.Profile{}, nil
	case width < 1e-9: // a V
		return polygon.Polygon(left(-depth), right(t.top), left(t.top)), []solid.Tag{wallTag(i, high), wallTag(i, Bottom), wallTag(i, low)}
	}
	if foot > 0 && width > 0 {
		// Right through: walls that close downwards must not meet.
		if slope := (t.leanNear + t.leanFar) / depth; slope > 0 {
			foot = min(foot, float64(width/(2*slope)))
		}
	}
	return polygon.Polygon(left(-depth-foot), right(-depth-foot), right(t.top), left(t.top)), tags
}

// roundTags names the segments of a round-bottomed section: upright ones are
// walls, all others belong to the bottom.
func roundTags(l polygon.Loop, i int, low, high Wall) []solid.Tag {
	tags := make([]solid.Tag, len(l))
	for k, v := range l {
		next := l[(k+1)%len(l)]
		tags[k] = wallTag(i, Bottom)
		if v.Bulge == 0 && v.X == next.X {
			if tags[k] = wallTag(i, high); v.Y > next.Y { // anticlockwise: downwards on the low side
				tags[k] = wallTag(i, low)
			}
		}
	}
	return tags
}
