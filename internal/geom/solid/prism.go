package solid

import (
	"fmt"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

func (p Prism) check() error {
	if err := p.Profile.Check(); err != nil {
		return err
	}
	if err := checkFrame(p.Frame); err != nil {
		return err
	}
	if !(p.From-p.To > 1e-6 || p.To-p.From > 1e-6) {
		return fmt.Errorf("the prism runs from %g to %g and has no length", p.From, p.To)
	}
	return nil
}

// segmentOf is one segment of a profile with its number.
type segmentOf struct {
	arc   polygon.Arc
	round bool
}

func segmentsOf(p polygon.Profile) []segmentOf {
	out := make([]segmentOf, 0, p.Segments())
	for _, l := range p.Loops() {
		for i := range l {
			a, ok := l.Arc(i)
			out = append(out, segmentOf{a, ok})
		}
	}
	return out
}

func (p Prism) polyhedron(perHalf int) (*poly, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	z0, z1 := min(p.From, p.To), max(p.From, p.To)
	flats := p.Profile.Flatten(perHalf)
	segs := segmentsOf(p.Profile)
	surfOf := make([]int32, len(segs))
	q := &poly{}
	for i, s := range segs {
		surfOf[i] = -1
		if s.round {
			surfOf[i] = p.cylinder(q, segs[:i], surfOf, i, s.arc)
		}
	}
	var bottom, top [][]int32
	points := 0
	for _, f := range flats {
		points += len(f.Points)
	}
	q.verts = make([]vec.V3, 0, 2*points)
	q.facets = make([]facet, 0, points+2)
	for _, f := range flats {
		b, t := p.sides(q, f, surfOf, int32(points), [2]float64{z0, z1})
		bottom, top = append(bottom, b), append(top, t)
	}
	w := p.Frame.W
	q.facets = append(q.facets,
		facet{loops: bottom, n: w.Mul(-1), d: -w.Dot(q.verts[bottom[0][0]]), surf: -1, tag: p.Caps[0]},
		facet{loops: top, n: w, d: w.Dot(q.verts[top[0][0]]), surf: -1, tag: p.Caps[1]})
	q.convex = len(flats) == 1 && flats[0].Convex()
	q.bound()
	if err := checkSize(q.lo); err != nil {
		return nil, err
	}
	return q, checkSize(q.hi)
}

// cylinder returns the surface of a round segment: that of an earlier segment
// on the same circle with the same tag, or a new one.
func (p Prism) cylinder(q *poly, before []segmentOf, surfOf []int32, i int, arc polygon.Arc) int32 {
	for k, o := range before {
		if o.round && o.arc.Centre.Sub(arc.Centre).Norm() < 1e-9 && abs(o.arc.Radius-arc.Radius) < 1e-9 && tagAt(p.Sides, k) == tagAt(p.Sides, i) {
			return surfOf[k]
		}
	}
	centre := p.Frame.ToWorld(vec.V3{X: arc.Centre.X, Y: arc.Centre.Y})
	q.surfs = append(q.surfs, surface{kind: cylinder, origin: centre, axis: p.Frame.W, radius: arc.Radius})
	return int32(len(q.surfs) - 1)
}

// sides appends the side facets over one flattened loop and returns the loops
// that it gives to the two caps, which are to be facets caps and caps+1.
func (p Prism) sides(q *poly, f polygon.Flat, surfOf []int32, caps int32, zs [2]float64) (bottom, top []int32) {
	n := int32(len(f.Points))
	base := int32(len(q.verts))
	for _, z := range zs {
		for _, pt := range f.Points {
			q.verts = append(q.verts, p.Frame.ToWorld(vec.V3{X: pt.X, Y: pt.Y, Z: z}))
		}
	}
	corners, loops := make([]int32, 0, 6*n), make([][]int32, n)
	first := int32(len(q.facets))
	beyond := make([]int32, 0, 4*n)
	for i := range n {
		j := (i + 1) % n
		a, b := f.Points[i], f.Points[j]
		e := b.Sub(a)
		l := e.Norm()
		out := p.Frame.DirToWorld(vec.V3{X: e.Y / l, Y: -e.X / l})
		seg := int(f.Segment[i])
		corners = append(corners, base+i, base+j, base+n+j, base+n+i)
		loops[i] = corners[4*i : 4*i+4 : 4*i+4]
		beyond = append(beyond, caps, first+j, caps+1, first+(i+n-1)%n)
		q.facets = append(q.facets, facet{
			loops: loops[i : i+1 : i+1],
			n:     out, d: out.Dot(q.verts[base+i]),
			surf: surfOf[seg], tag: tagAt(p.Sides, seg), edges: beyond[4*i : 4*i+4],
		})
	}
	for i := range n {
		corners = append(corners, base+n-1-i)
	}
	for i := range n {
		corners = append(corners, base+n+i)
	}
	return corners[4*n : 5*n : 5*n], corners[5*n : 6*n : 6*n]
}

func (p Prism) mirrored() Primitive {
	p.Frame = mirrorFrame(p.Frame)
	p.Profile = p.Profile.Mirrored()
	return p
}

func (p Prism) crossings(o, d vec.V3, out []crossing) []crossing {
	z0, z1 := min(p.From, p.To), max(p.From, p.To)
	lo := p.Frame.ToLocal(o)
	ld := vec.V3{X: d.Dot(p.Frame.U), Y: d.Dot(p.Frame.V), Z: d.Dot(p.Frame.W)}
	span := interval{-inf, inf, 0, 0}
	if abs(ld.Z) < parallel {
		if lo.Z < z0 || lo.Z >= z1 {
			return out
		}
	} else {
		a, b := (z0-lo.Z)/ld.Z, (z1-lo.Z)/ld.Z
		span = interval{a, b, p.Caps[0], p.Caps[1]}
		if a > b {
			span = interval{b, a, p.Caps[1], p.Caps[0]}
		}
	}
	o2, d2 := polygon.P2{X: lo.X, Y: lo.Y}, polygon.P2{X: ld.X, Y: ld.Y}
	if d2.Norm() < parallel {
		if p.Profile.Contains(o2) {
			out = append(out, crossing{span.a, span.in}, crossing{span.b, span.out})
		}
		return out
	}
	hits := p.Profile.Crossings(o2, d2)
	for i := 0; i+1 < len(hits); i += 2 {
		a := crossing{hits[i].T, tagAt(p.Sides, hits[i].Segment)}
		b := crossing{hits[i+1].T, tagAt(p.Sides, hits[i+1].Segment)}
		if span.a > a.t {
			a = crossing{span.a, span.in}
		}
		if span.b < b.t {
			b = crossing{span.b, span.out}
		}
		if a.t < b.t {
			out = append(out, a, b)
		}
	}
	return out
}
