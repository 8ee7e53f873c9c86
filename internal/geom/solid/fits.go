package solid

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// roundFits adds the contact of cylinders with hollows of their own radius on
// their own axis: the faces of both are unrolled, angle times radius against
// height, and laid over one another.
func (r *pairRun) roundFits(out *Patch, f vec.Frame) string {
	a, b := r.polys[0], r.polys[1]
	sa, sb := a.cylinders(), b.cylinders()
	for _, i := range sa {
		for _, k := range sb {
			if !fits(&a.surfs[i.surf], &b.surfs[k.surf]) || i.body == k.body {
				continue
			}
			t, ok := r.unroll(i, k)
			if !ok {
				return "the outlines on a cylinder could not be put in order"
			}
			if t.Area > 0 {
				t.Middle = f.ToWorld(t.Middle)
				out.Area += t.Area
				out.Places = append(out.Places, t)
			}
		}
	}
	return ""
}

// cylinderUse is a cylinder of a polyhedron: its tag, and whether wood lies on
// the side of the axis.
type cylinderUse struct {
	surf int32
	tag  Tag
	body bool
}

func (p *poly) cylinders() []cylinderUse {
	var out []cylinderUse
	last := int32(-1)
	seen := make([]bool, len(p.surfs))
	for i := range p.facets {
		f := &p.facets[i]
		if f.surf < 0 || f.surf == last || seen[f.surf] || p.surfs[f.surf].kind != cylinder {
			continue
		}
		last, seen[f.surf] = f.surf, true
		_, g := p.surfs[f.surf].side(p.verts[f.loops[0][0]])
		out = append(out, cylinderUse{f.surf, f.tag, g.Dot(f.n) > 0})
	}
	return out
}

// fits says whether two cylinders share axis and radius, to a micrometre.
func fits(a, b *surface) bool {
	const slack = 1e-3
	d := b.origin.Sub(a.origin)
	return abs(a.radius-b.radius) < slack && abs(a.axis.Dot(b.axis)) > 1-1e-9 &&
		d.Sub(a.axis.Mul(d.Dot(a.axis))).Norm() < slack
}

// unroll lays the faces of two cylinders over one another and measures where
// both lie.
func (r *pairRun) unroll(i, k cylinderUse) (Touch, bool) {
	axis := r.polys[0].surfs[i.surf]
	e1, e2 := across(axis.axis)
	arr := &r.sheet.arr
	arr.reset(r.tol, 1, 256)
	turn := 2 * math.Pi * axis.radius
	for bit, use := range [2]cylinderUse{i, k} {
		p := r.polys[bit]
		row := arr.row()
		setBit(arr.mask(row), bit)
		for n := range p.facets {
			f := &p.facets[n]
			if f.surf != use.surf {
				continue
			}
			for _, loop := range f.loops {
				ring := unrolled(p, loop, &axis, e1, e2)
				for _, shift := range [3]float64{-turn, 0, turn} {
					layRing(arr, ring, shift, turn, row)
				}
			}
		}
	}
	if !arr.settle() {
		return Touch{}, false
	}
	area, mid, ok := r.sheet.common()
	return Touch{Area: area, Middle: axis.origin.Add(axis.axis.Mul(mid.Y)), Round: true, TagA: i.tag, TagB: k.tag}, ok
}

// unrolled returns a loop in the unrolled plane, unbroken where it passes the
// half turn.
func unrolled(p *poly, loop []int32, s *surface, e1, e2 vec.V3) []polygon.P2 {
	var out []polygon.P2
	prev := 0.0
	for n, v := range loop {
		d := p.verts[v].Sub(s.origin)
		angle := math.Atan2(d.Dot(e2), d.Dot(e1))
		if n > 0 {
			angle += float64(2 * math.Pi * math.Round((prev-angle)/(2*math.Pi)))
		}
		prev = angle
		out = append(out, polygon.P2{X: float64(angle * s.radius), Y: d.Dot(s.axis)})
	}
	return out
}

// layRing adds a ring, shifted by whole turns, as far as it lies in the strip
// of one turn.
func layRing(arr *arrangement, ring []polygon.P2, shift, turn float64, row int32) {
	lo, hi := polygon.P2{X: -turn / 2, Y: -10 * MaxSize}, polygon.P2{X: turn / 2, Y: 10 * MaxSize}
	least, most := inf, -inf
	for _, q := range ring {
		least, most = min(least, q.X+shift), max(most, q.X+shift)
	}
	if most <= lo.X || least >= hi.X {
		return
	}
	prev := ring[len(ring)-1]
	for _, q := range ring {
		a, b := polygon.P2{X: prev.X + shift, Y: prev.Y}, polygon.P2{X: q.X + shift, Y: q.Y}
		clip(a, b, lo, hi, func(a, b polygon.P2, _ bool) { arr.add(a, b, row, 0) })
		prev = q
	}
}

// common returns the area where the first two bits of the masks are both set,
// and its centre.
func (s *sheet) common() (area float64, mid polygon.P2, ok bool) {
	s.pairs = s.pairs[:0]
	for _, e := range s.arr.edges {
		s.pairs = append(s.pairs, [2]int32{e.u, e.v})
	}
	at := s.arr.points.at
	s.sweep.prepare(at, s.pairs)
	states := make([]uint64, len(s.arr.edges))
	var first polygon.P2
	ok = s.sweep.run(func(_ int32, place int, _, starting []int32) {
		state := uint64(0)
		if place > 0 {
			state = states[s.sweep.status[place-1]]
		}
		for _, e := range starting {
			under := state
			state ^= s.arr.mask(s.arr.edges[e].mask)[0]
			states[e] = state
			if (under == 3) == (state == 3) {
				continue
			}
			p, q := at[s.arr.edges[e].u], at[s.arr.edges[e].v]
			t := float64(p.Cross(q) / 2)
			if under == 3 {
				t = -t
			}
			area += t
			first = first.Add(p.Add(q).Mul(t / 3))
		}
	})
	if area > 0 {
		mid = first.Mul(1 / area)
	}
	return area, mid, ok
}
