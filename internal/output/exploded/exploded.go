package exploded

import (
	"math"
	"slices"

	"scantling/internal/address"
	"scantling/internal/geom/vec"
	"scantling/internal/plan"
)

// Of returns how far each part of a group is moved in a view of it taken
// apart: the removals are gone through backwards, and what each of them takes is
// drawn out its own way until it stands clear of what is there already, and by a gap
// more. What was taken away later so stands less far out. The gap is a share of
// the greatest size of the group. It reports false where the plan knows no
// removals of the group.
func Of(p *plan.Plan, group address.Address, gap float64) (map[address.Address]vec.V3, bool) {
	e := explosion{block: map[address.Address]int{}}
	members := e.gather(p, group)
	type step struct {
		taken, rest []int
		along       vec.V3
	}
	var steps []step
	for n, r := range p.Removals {
		if r.Group != group || len(r.Taken) == 0 {
			continue
		}
		s := step{along: vec.V3{X: r.Along[0], Y: r.Along[1], Z: r.Along[2]}}
		from := e.block[r.Taken[0]]
		for i, a := range members {
			switch {
			case slices.Contains(r.Taken, a):
				s.taken = append(s.taken, i)
			case e.block[a] == from:
				s.rest = append(s.rest, i)
			}
		}
		for _, a := range r.Taken {
			e.block[a] = n + 1
		}
		steps = append(steps, s)
	}
	if len(steps) == 0 {
		return nil, false
	}
	room := 0.0
	for _, d := range [3]vec.V3{{X: 1}, {Y: 1}, {Z: 1}} {
		low, high := math.Inf(1), math.Inf(-1)
		for i := range members {
			a, b := e.span(i, d)
			low, high = min(low, a), max(high, b)
		}
		room = max(room, float64((high-low)*gap))
	}
	for _, s := range slices.Backward(steps) {
		far := e.clear(s.taken, s.rest, s.along, room)
		for _, i := range s.taken {
			e.moved[i] = e.moved[i].Add(s.along.Mul(far))
		}
	}
	out := map[address.Address]vec.V3{}
	for i, parts := range e.parts {
		for _, a := range parts {
			out[a] = e.moved[i]
		}
	}
	return out, true
}

// explosion is the members of a group as they are moved.
type explosion struct {
	block   map[address.Address]int
	parts   [][]address.Address
	corners [][]vec.V3
	moved   []vec.V3
}

// gather collects what moves as one: the group's own parts, and the groups in it.
func (e *explosion) gather(p *plan.Plan, group address.Address) []address.Address {
	var members []address.Address
	parent := map[address.Address]address.Address{}
	for _, g := range p.Piece.Groups {
		parent[g.Address] = g.Parent
	}
	for _, part := range p.Piece.Parts {
		if !group.Has(part.Address) {
			continue
		}
		name := part.Address
		if part.Group != group {
			name = part.Group
			for range parent {
				if parent[name] == group {
					break
				}
				name = parent[name]
			}
		}
		k := slices.Index(members, name)
		if k < 0 {
			k = len(members)
			members, e.parts, e.corners, e.moved = append(members, name), append(e.parts, nil), append(e.corners, nil), append(e.moved, vec.V3{})
		}
		e.parts[k] = append(e.parts[k], part.Address)
		frame, size := part.Placed(), vec.Of(part.Length.Nm, part.Width.Nm, part.Thickness.Nm)
		for n := range 8 {
			at := vec.V3{X: float64(size.X * float64(n&1)), Y: float64(size.Y * float64(n>>1&1)), Z: float64(size.Z * float64(n>>2))}
			e.corners[k] = append(e.corners[k], frame.ToWorld(at))
		}
	}
	return members
}

// clear returns how far members have to move along a direction until their boxes
// along it and across it are clear of others that they would pass, by a gap.
func (e *explosion) clear(taken, rest []int, along vec.V3, gap float64) float64 {
	side := vec.V3{X: 1}
	if math.Abs(along.X) > 0.6 {
		side = vec.V3{Y: 1}
	}
	u := side.Cross(along).Unit()
	v := along.Cross(u)
	far := gap
	for _, i := range taken {
		for _, k := range rest {
			if !e.share(i, k, u) || !e.share(i, k, v) {
				continue
			}
			low, _ := e.span(i, along)
			_, top := e.span(k, along)
			far = max(far, top-low+gap)
		}
	}
	return far
}

// share reports whether two members overlap along a direction.
func (e *explosion) share(i, k int, d vec.V3) bool {
	const touch = 1e-3
	a, b := e.span(i, d)
	c, f := e.span(k, d)
	return a < f-touch && c < b-touch
}

func (e *explosion) span(i int, d vec.V3) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range e.corners[i] {
		x := c.Add(e.moved[i]).Dot(d)
		low, high = min(low, x), max(high, x)
	}
	return low, high
}
