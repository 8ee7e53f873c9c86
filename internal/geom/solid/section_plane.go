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
// below the plane.
func (s *sectioner) pieces(p *poly, pl *plane, emit func(a, b hit, facet int32)) {
	for i := range p.facets {
		s.crossed(p, pl, &p.facets[i], 0)
		for k := 0; k+1 < len(s.hits); k += 2 {
			emit(s.hits[k], s.hits[k+1], int32(i))
		}
	}
}

// chain joins pieces of a section by the edges that they cross.
type chain struct {
	pieces []piece
	edge   map[uint64][]int32
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
	for _, e := range p.ends {
		c.edge[e] = append(c.edge[e], k)
	}
}

// close follows the pieces round.
func (c *chain) close() ([]Outline, bool) {
	var out []Outline
	for i := range c.pieces {
		if c.pieces[i].used {
			continue
		}
		var o Outline
		at, end := int32(i), 0
		for {
			p := &c.pieces[at]
			p.used = true
			o.Points = append(o.Points, p.at[end])
			o.Tags = append(o.Tags, p.tag)
			leave := p.ends[1-end]
			if leave == c.pieces[i].ends[0] {
				break
			}
			next := int32(-1)
			for _, k := range c.edge[leave] {
				if !c.pieces[k].used {
					next = k
					break
				}
			}
			if next < 0 {
				return nil, false
			}
			at, end = next, 0
			if c.pieces[next].ends[1] == leave {
				end = 1
			}
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

// nest sorts loops into outer ones and their holes by how deep they lie.
func nest(loops []Outline) []Region {
	depth := make([]int, len(loops))
	inside := func(i, k int) bool {
		return i != k && ringContains(loops[k].Points, beside(loops[i].Points)) &&
			abs(ringArea(loops[k].Points)) > abs(ringArea(loops[i].Points))
	}
	for i := range loops {
		for k := range loops {
			if inside(i, k) {
				depth[i]++
			}
		}
	}
	var out []Region
	at := make([]int, len(loops))
	for i, l := range loops {
		if depth[i]%2 == 0 {
			at[i] = len(out)
			out = append(out, Region{Outer: l.turned(true)})
		}
	}
	for i, l := range loops {
		if depth[i]%2 == 0 {
			continue
		}
		for k := range loops {
			if depth[k] == depth[i]-1 && inside(i, k) {
				out[at[k]].Holes = append(out[at[k]].Holes, l.turned(false))
				break
			}
		}
	}
	return out
}

// turned runs the outline anticlockwise, or clockwise.
func (o Outline) turned(anti bool) Outline {
	if (ringArea(o.Points) > 0) == anti {
		return o
	}
	n := len(o.Points)
	r := Outline{make([]polygon.P2, n), make([]Tag, n)}
	for i := range n {
		r.Points[i] = o.Points[(n-i)%n]
		r.Tags[i] = o.Tags[n-1-i]
	}
	return r
}

// beside returns a point just inside the ring, by its longest side.
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
	if ringArea(ring) < 0 {
		side = side.Mul(-1)
	}
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
