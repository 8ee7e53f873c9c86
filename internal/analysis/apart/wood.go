package apart

import (
	"slices"

	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// state says whether one thing stands in the way of another.
type state byte

const (
	unasked state = iota
	free
	blocked
	doubtful // the boxes do not tell
)

// timber is a part as boxes of the piece: all its wood lies in outer, and all of
// inner is wood, where known says so; exact where both are the same.
type timber struct {
	outer, inner []shape.Box
	hull         shape.Box
	known, exact bool
	corners      [8]vec.V3 // of the uncut body as it stands
}

func timberOf(p *piece.Part, cuts []*piece.Cut) timber {
	board := p.Tilt == nil && (p.Form == piece.Board || p.Form == "")
	plain := !slices.ContainsFunc(cuts, func(c *piece.Cut) bool { return c.Slot == nil || !shape.Plain(p, c.Slot) })
	var w timber
	var ok bool
	w.outer, ok = shape.Boxes(p, cuts, false)
	w.exact = ok && board && plain
	if w.inner = w.outer; !w.exact {
		w.inner, w.known = shape.Boxes(p, cuts, true)
	}
	w.known = board && (w.exact || w.known)
	w.hull = around(w.outer)
	f := p.Placed()
	size := vec.Of(p.Length.Nm, p.Width.Nm, p.Thickness.Nm)
	for k := range w.corners {
		at := vec.V3{X: float64(size.X * float64(k&1)), Y: float64(size.Y * float64(k>>1&1)), Z: float64(size.Z * float64(k>>2))}
		w.corners[k] = f.ToWorld(at)
	}
	return w
}

// around returns the box around boxes.
func around(list []shape.Box) (hull shape.Box) {
	for i, b := range list {
		if i == 0 {
			hull = b
		}
		for a := range 3 {
			hull.Lo[a], hull.Hi[a] = min(hull.Lo[a], b.Lo[a]), max(hull.Hi[a], b.Hi[a])
		}
	}
	return hull
}

// meets reports whether two boxes lie in each other's way, seen along an axis.
func meets(a, b shape.Box, axis int) bool {
	for k := range 3 {
		if k != axis && (a.Lo[k] >= b.Hi[k] || b.Lo[k] >= a.Hi[k]) {
			return false
		}
	}
	return true
}

// ahead tells by boxes whether b stands in the way of a that moves up an axis.
func (a *timber) ahead(b *timber, axis int, looks *int) state {
	*looks++
	if !meets(a.hull, b.hull, axis) || b.hull.Hi[axis] <= a.hull.Lo[axis] {
		return free
	}
	if a.known && b.known && someAhead(a.inner, b.inner, axis, false, looks) {
		return blocked
	}
	if a.exact && b.exact || !someAhead(a.outer, b.outer, axis, true, looks) {
		return free
	}
	return doubtful
}

// someAhead reports whether some box of b is ahead of some box of a: wholly, or,
// where partly is set, with any of it.
func someAhead(a, b []shape.Box, axis int, partly bool, looks *int) bool {
	for _, x := range a {
		*looks += len(b)
		for _, y := range b {
			if (y.Lo[axis] >= x.Hi[axis] || partly && y.Hi[axis] > x.Lo[axis]) && meets(x, y, axis) {
				return true
			}
		}
	}
	return false
}

// shadow is the box of a part along a slanting way and across it, in millimetres.
type shadow struct{ lo, hi vec.V3 }

func (w *timber) shadow(f vec.Frame) shadow {
	var s shadow
	for i, c := range w.corners {
		v := f.ToLocal(c)
		if i == 0 {
			s = shadow{v, v}
		}
		s.lo = vec.V3{X: min(s.lo.X, v.X), Y: min(s.lo.Y, v.Y), Z: min(s.lo.Z, v.Z)}
		s.hi = vec.V3{X: max(s.hi.X, v.X), Y: max(s.hi.Y, v.Y), Z: max(s.hi.Z, v.Z)}
	}
	return s
}

// slack is below what can be made, in millimetres: wood that is less deep in the
// way is not in the way.
const slack = 1e-3

// over reports whether two shadows lie over each other, seen along the way.
func (s shadow) over(t shadow) bool {
	return s.lo.X < t.hi.X-slack && t.lo.X < s.hi.X-slack && s.lo.Y < t.hi.Y-slack && t.lo.Y < s.hi.Y-slack
}

// swept tells by solids whether b stands in the way of a; false where the kernel
// cannot say.
func swept(a, b solid.Placed, shift vec.V3) (state, bool) {
	o := solid.InTheWay(a, b, shift)
	switch {
	case o.Status != solid.Verified:
		return blocked, false
	case o.Depth > slack && o.Volume > 0:
		return blocked, true
	}
	return free, true
}
