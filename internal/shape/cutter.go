package shape

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// beyond is how far a cutter reaches out of the part where the cut is open, in
// millimetres.
const beyond = 1.0

// cutter returns what cut number i takes away, in local axes.
func cutter(p *piece.Part, c *piece.Cut, i int) solid.Primitive {
	switch {
	case c.Slot != nil:
		return slot(p, c.Slot, i)
	case c.Bore != nil:
		return bore(p, c.Bore, i)
	case c.Dip != nil:
		return dip(p, c.Dip, i)
	case c.Ease != nil:
		return ease(p, c.Ease, i)
	}
	return nil
}

// toward returns the direction of a local axis, or against it.
func toward(a piece.Local, positive bool) vec.V3 {
	s := 1.0
	if !positive {
		s = -1
	}
	switch a {
	case piece.AlongLength:
		return vec.V3{X: s}
	case piece.AlongWidth:
		return vec.V3{Y: s}
	}
	return vec.V3{Z: s}
}

// size returns the part's size along a local axis in millimetres.
func size(p *piece.Part, a piece.Local) float64 { return p.Sizes()[a].Nm.Millimetres() }

// mouth returns the frame in which a cut from a side is drawn: v out of the side,
// w along the given axis, u across, and the sense of u against its local axis.
// The origin lies in the side's plane where the other two coordinates are nought.
func mouth(p *piece.Part, open piece.Side, w piece.Local) (f vec.Frame, across piece.Local, sense float64) {
	axis, high := open.Axis()
	f.V = toward(axis, high)
	f.W = toward(w, true)
	f.U = f.V.Cross(f.W)
	if high {
		f.Origin = toward(axis, true).Mul(size(p, axis))
	}
	across = piece.Local(3 - int(axis) - int(w))
	return f, across, f.U.At(int(across))
}

// slot is a trench: its section drawn out along its run.
func slot(p *piece.Part, s *piece.Slot, i int) solid.Primitive {
	open, _ := s.Open.Axis()
	if !straight(s) {
		return solid.Prism{} // has no section: the solid comes out unverified
	}
	f, across, sense := mouth(p, s.Open, s.Run)
	near, far, depth := s.Near.Nm.Millimetres(), s.Far.Nm.Millimetres(), s.Depth.Nm.Millimetres()
	out := solid.Prism{
		Frame: f, From: s.From.Nm.Millimetres(), To: s.To.Nm.Millimetres(),
		Caps: [2]solid.Tag{wallTag(i, Start), wallTag(i, End)},
	}
	if s.From.Nm <= 0 {
		out.From -= beyond
	}
	if s.To.Nm >= p.Sizes()[s.Run].Nm {
		out.To += beyond
	}
	low, high := Near, Far // walls at the lesser and the greater u
	if sense < 0 {
		low, high = Far, Near
	}
	if r := s.Corner.Nm.Millimetres(); r > 0 {
		out.Profile = polygon.RoundBottom(far-near, depth+beyond, r).Moved(polygon.P2{X: float64(sense * (near + far) / 2), Y: beyond})
		out.Sides = roundTags(out.Profile.Outer, i, low, high)
		return out
	}
	if s.Near.Nm <= 0 {
		near -= beyond
	}
	if s.Far.Nm >= p.Sizes()[across].Nm {
		far += beyond
	}
	if s.Depth.Nm >= p.Sizes()[open].Nm {
		depth += beyond
	}
	out.Profile = polygon.Rect(polygon.P2{X: float64(sense * near), Y: -depth}, polygon.P2{X: float64(sense * far), Y: beyond})
	out.Sides = []solid.Tag{wallTag(i, Bottom), wallTag(i, high), wallTag(i, Bottom), wallTag(i, low)}
	return out
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

// bore is a hole.
func bore(p *piece.Part, b *piece.Bore, i int) solid.Primitive {
	axis, high := b.Open.Axis()
	var at [3]float64
	k := 0
	for a := range at {
		if piece.Local(a) != axis {
			at[a] = b.At[k].Nm.Millimetres()
			k++
		}
	}
	w := toward(axis, true)
	u := toward((axis+1)%3, true)
	f := vec.Frame{Origin: vec.V3{X: at[0], Y: at[1], Z: at[2]}, U: u, V: w.Cross(u), W: w}
	whole, depth := size(p, axis), b.Depth.Nm.Millimetres()
	out := solid.Prism{
		Frame: f, Profile: polygon.Circle(polygon.P2{}, float64(b.Diameter.Nm.Millimetres()/2)),
		From: -beyond, To: depth, Sides: []solid.Tag{wallTag(i, Round)},
		Caps: [2]solid.Tag{wallTag(i, Bottom), wallTag(i, Bottom)},
	}
	if high {
		out.From, out.To = whole-depth, whole+beyond
	}
	if b.Through {
		out.From, out.To = -beyond, whole+beyond
	}
	return out
}

// dip is an arc out of an edge or an end, through the thickness. Its bulge is
// tan(sweep/4) = 2 depth / chord.
func dip(p *piece.Part, d *piece.Dip, i int) solid.Primitive {
	if a, _ := d.Open.Axis(); a == piece.AlongThickness {
		return solid.Prism{} // out of a face: the solid comes out unverified
	}
	f, _, sense := mouth(p, d.Open, piece.AlongThickness)
	half, depth := float64(d.Chord.Nm.Millimetres()/2), d.Depth.Nm.Millimetres()
	mid := float64(sense * d.Centre.Nm.Millimetres())
	tag := wallTag(i, Round)
	return solid.Prism{
		Frame: f, From: -beyond, To: size(p, piece.AlongThickness) + beyond,
		Profile: polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: mid + half, Y: beyond}},
			{P2: polygon.P2{X: mid - half, Y: beyond}},
			{P2: polygon.P2{X: mid - half}, Bulge: depth / half},
			{P2: polygon.P2{X: mid + half}},
		}},
		Sides: []solid.Tag{tag}, Caps: [2]solid.Tag{tag, tag},
	}
}

// ease takes an edge off along its whole length. The corner lies at the origin of
// the section, the part where both coordinates are negative.
func ease(p *piece.Part, e *piece.Ease, i int) solid.Primitive {
	a, highA := e.Sides[0].Axis()
	b, highB := e.Sides[1].Axis()
	if a == b {
		return solid.Prism{} // no common edge: the solid comes out unverified
	}
	f := vec.Frame{U: toward(a, highA), V: toward(b, highB)}
	f.W = f.U.Cross(f.V)
	if highA {
		f.Origin = f.Origin.Add(toward(a, true).Mul(size(p, a)))
	}
	if highB {
		f.Origin = f.Origin.Add(toward(b, true).Mul(size(p, b)))
	}
	along := piece.Local(3 - int(a) - int(b))
	from, to := -beyond, size(p, along)+beyond
	if f.W.At(int(along)) < 0 {
		from, to = -to, -from
	}
	r := e.Radius.Nm.Millimetres()
	bulge := -math.Tan(math.Pi / 8) // a quarter turn, hollow
	if e.Chamfer {
		bulge = 0
	}
	tag := wallTag(i, Round)
	return solid.Prism{
		Frame: f, From: from, To: to,
		Profile: polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: beyond, Y: beyond}},
			{P2: polygon.P2{X: -r, Y: beyond}},
			{P2: polygon.P2{X: -r}, Bulge: bulge},
			{P2: polygon.P2{Y: -r}},
			{P2: polygon.P2{X: beyond, Y: -r}},
		}},
		Sides: []solid.Tag{tag}, Caps: [2]solid.Tag{tag, tag},
	}
}
