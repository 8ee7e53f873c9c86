package solid

import (
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Outline is a closed loop of a section. Tags[i] is the tag of the face that
// gives the side from point i to the next.
type Outline struct {
	Points []polygon.P2
	Tags   []Tag
}

// Region is a connected piece of a section: wood within Outer and outside the
// holes. Outer runs anticlockwise in the section's frame, holes clockwise.
type Region struct {
	Outer Outline
	Holes []Outline
}

// Area returns the area of the region in mm², as faceted.
func (r Region) Area() float64 {
	a := ringArea(r.Outer.Points)
	for _, h := range r.Holes {
		a += ringArea(h.Points)
	}
	return a
}

func ringArea(ring []polygon.P2) float64 {
	return polygon.Flat{Points: ring}.Area()
}

// Section cuts the placed solid by the plane through the frame's origin across
// its W, and returns the wood just behind the plane (on the side W points away
// from) in the frame's U and V. The error says why there is no answer.
func Section(p Placed, plane vec.Frame) ([]Region, string) {
	if p.Solid.status != Verified {
		return nil, "the solid is unverified: " + p.Solid.reason
	}
	if err := checkFrame(plane); err != nil {
		return nil, err.Error()
	}
	if p.Solid.Empty() {
		return nil, ""
	}
	local := within(plane, p.Frame)
	b := p.Solid.body // a copy: the cut must not write to the solid
	pl := plane3(local)
	var s sectioner
	s.classify(&b, &pl, fine.on)
	ch := chain{edge: map[uint64][]int32{}}
	s.pieces(&b, &pl, func(h, g hit, facet int32) {
		ch.add(h, g, b.facets[facet].tag, local)
	})
	loops, ok := ch.close()
	if !ok {
		return nil, "the section does not close"
	}
	return nest(loops), ""
}

// plane3 is the plane of a frame with its normal kept as it is.
func plane3(f vec.Frame) plane { return plane{n: f.W, d: f.W.Dot(f.Origin)} }

// pieces calls emit with the two crossings of every piece of the section just
// below the plane, in the direction that has wood on its left seen from above:
// from where the facet's outline passes downwards to where it passes upwards.
func (s *sectioner) pieces(p *poly, pl *plane, emit func(a, b hit, facet int32)) {
	for i := range p.facets {
		s.crossed(p, pl, &p.facets[i], 0)
		// In order along the facet, starts and ends pair up one to one, also
		// where several fall on one point.
		starts, ends := s.starts[:0], s.ends[:0]
		for _, h := range s.hits {
			if h.up {
				ends = append(ends, h)
			} else {
				starts = append(starts, h)
			}
		}
		for k := range min(len(starts), len(ends)) {
			emit(starts[k], ends[k], int32(i))
		}
		s.starts, s.ends = starts, ends
	}
}

// chain joins pieces of a section by the edges that they cross. Where pieces
// of wood touch along an edge more than two meet; their directions tell them
// apart.
type chain struct {
	pieces []piece
	edge   map[uint64][]int32 // pieces by the edge that they start at
}

type piece struct {
	ends [2]uint64
	at   [2]polygon.P2
	tag  Tag
	used bool
}

func (c *chain) add(a, b hit, tag Tag, f vec.Frame) {
	flat := func(v vec.V3) polygon.P2 {
		l := f.ToLocal(v)
		return polygon.P2{X: l.X, Y: l.Y}
	}
	k := int32(len(c.pieces))
	p := piece{ends: [2]uint64{directedKey(a.a, a.b), directedKey(b.a, b.b)}, at: [2]polygon.P2{flat(a.at), flat(b.at)}, tag: tag}
	c.pieces = append(c.pieces, p)
	c.edge[p.ends[0]] = append(c.edge[p.ends[0]], k)
}

// close follows the pieces round.
func (c *chain) close() ([]Outline, bool) {
	var out []Outline
	for i := range c.pieces {
		if c.pieces[i].used {
			continue
		}
		var o Outline
		for at := int32(i); ; {
			p := &c.pieces[at]
			p.used = true
			o.Points = append(o.Points, p.at[0])
			o.Tags = append(o.Tags, p.tag)
			if p.ends[1] == c.pieces[i].ends[0] {
				break
			}
			next := slices.IndexFunc(c.edge[p.ends[1]], func(k int32) bool { return !c.pieces[k].used })
			if next < 0 {
				return nil, false
			}
			at = c.edge[p.ends[1]][next]
		}
		if o = o.tidy(); len(o.Points) >= 3 && abs(ringArea(o.Points)) > 1e-9 {
			out = append(out, o)
		}
	}
	return out, true
}

// tidy drops repeated points and points in line between sides of one tag.
func (o Outline) tidy() Outline {
	for again := true; again && len(o.Points) > 2; {
		again = false
		for i := 0; i < len(o.Points) && len(o.Points) > 2; i++ {
			n := len(o.Points)
			prev, next := o.Points[(i+n-1)%n], o.Points[(i+1)%n]
			d, e := o.Points[i].Sub(prev), next.Sub(o.Points[i])
			short := e.Norm() < fine.weld
			straight := o.Tags[(i+n-1)%n] == o.Tags[i] && d.Dot(e) > 0 && abs(d.Cross(e)) < fine.weld*d.Norm()
			if short {
				// The side i vanishes; the point after it stands for both.
				o.Points = slices.Delete(o.Points, i, i+1)
				o.Tags = slices.Delete(o.Tags, i, i+1)
				again = true
			} else if straight {
				o.Points = slices.Delete(o.Points, i, i+1)
				o.Tags = slices.Delete(o.Tags, i, i+1)
				again = true
			}
		}
	}
	return o
}

// nest gives every hole (a loop that runs clockwise) to the least outer loop
// that it lies in.
func nest(loops []Outline) []Region {
	var out []Region
	for _, l := range loops {
		if ringArea(l.Points) > 0 {
			out = append(out, Region{Outer: l})
		}
	}
	for _, l := range loops {
		if ringArea(l.Points) > 0 {
			continue
		}
		q, best := beside(l.Points), -1
		for k := range out {
			ring := out[k].Outer.Points
			if ringContains(ring, q) && (best < 0 || ringArea(ring) < ringArea(out[best].Outer.Points)) {
				best = k
			}
		}
		if best >= 0 {
			out[best].Holes = append(out[best].Holes, l)
		}
	}
	return out
}

// beside returns a point of wood just beside the ring's longest side, which is
// on the left of it.
func beside(ring []polygon.P2) polygon.P2 {
	best := 0
	for i := range ring {
		if ring[(i+1)%len(ring)].Sub(ring[i]).Norm() > ring[(best+1)%len(ring)].Sub(ring[best]).Norm() {
			best = i
		}
	}
	a, b := ring[best], ring[(best+1)%len(ring)]
	side := b.Sub(a).Left()
	side = side.Mul(1e-3 / side.Norm())
	return a.Add(b).Mul(0.5).Add(side)
}

func ringContains(ring []polygon.P2, q polygon.P2) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > q.Y) != (b.Y > q.Y) {
			if x := a.X + float64((q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X)); x > q.X {
				in = !in
			}
		}
	}
	return in
}
