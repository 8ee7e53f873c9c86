package solid

import (
	"cmp"
	"math"
	"slices"

	"scantling/internal/geom/vec"
)

var inf = math.Inf(1)

func abs(x float64) float64 { return math.Abs(x) }

// parallel is the least component of a unit direction that counts as crossing.
const parallel = 1e-12

// crossing is where a line passes a face: pairs of entry and exit.
type crossing struct {
	t   float64
	tag Tag
}

type interval struct {
	a, b    float64
	in, out Tag
}

// Interval is a stretch of a line that runs inside a solid: from Enter to
// Leave in millimetres along the line, through the faces tagged In and Out.
type Interval struct {
	Enter, Leave float64
	In, Out      Tag
}

// touch is the stretch that counts as nothing along a line: 10 nm, less than
// half of what could show at the 1e-4 mm at which rows are compared.
const touch = 1e-5

// Intervals returns where the line through o in direction d (any length but
// zero) runs in the solid, in order. It is worked out on the true shapes, with
// no facets, so it is exact to rounding (below 1e-9 mm at furniture sizes). A
// line that lies in a face takes the side to its left, whichever that is.
func (s *Solid) Intervals(o, d vec.V3) []Interval {
	u := d.Unit()
	if u == (vec.V3{}) {
		return nil
	}
	type event struct {
		t      float64
		tag    Tag
		cut    bool
		change int
	}
	var events []event
	add := func(list []Primitive, cut bool) {
		for _, p := range list {
			cs := p.crossings(o, u, nil)
			for i, c := range cs {
				events = append(events, event{c.t, c.tag, cut, 1 - 2*(i%2)})
			}
		}
	}
	add(s.bodies, false)
	add(s.cutters, true)
	slices.SortStableFunc(events, func(a, b event) int { return cmp.Compare(a.t, b.t) })
	var out []Interval
	bodies, cuts := 0, 0
	for i := 0; i < len(events); {
		stood := bodies > 0
		before := stood && cuts == 0
		var bodyTag, cutTag Tag
		var hasCut bool
		j := i
		for ; j < len(events) && events[j].t-events[i].t <= touch; j++ {
			if e := events[j]; e.cut {
				cuts += e.change
				if !hasCut {
					hasCut, cutTag = true, e.tag
				}
			} else {
				bodies += e.change
				bodyTag = e.tag
			}
		}
		after := bodies > 0 && cuts == 0
		// Wood ends at the body's own face where the body ends there, and at
		// the cut's where the body would have gone on.
		tag := bodyTag
		if hasCut && (before && bodies > 0 || after && stood) {
			tag = cutTag
		}
		switch {
		case !before && after:
			out = append(out, Interval{Enter: events[i].t, In: tag})
		case before && !after:
			out[len(out)-1].Leave, out[len(out)-1].Out = events[i].t, tag
		}
		i = j
	}
	return out
}
