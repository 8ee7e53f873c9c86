package shape

import (
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// beyond is how far a cutter reaches out of the part where the cut is open, in
// millimetres.
const beyond = 1.0

// cutters returns what cut number i takes away, in local axes: one body, or
// several that are united, or none where nothing is taken.
func cutters(p *piece.Part, c *piece.Cut, i int) []solid.Primitive {
	switch {
	case c.Slot != nil:
		return slot(p, c.Slot, i)
	case c.Bore != nil:
		return []solid.Primitive{bore(p, c.Bore, i)}
	case c.Dip != nil:
		return []solid.Primitive{dip(p, c.Dip, i)}
	case c.Ease != nil:
		return []solid.Primitive{ease(p, c.Ease, i)}
	case c.Slice != nil:
		return slice(p, c.Slice, i)
	case c.Pocket != nil:
		return []solid.Primitive{pocket(p, c.Pocket, i)}
	}
	return nil
}

// impossible has no section: a solid with it comes out unverified.
func impossible() []solid.Primitive { return []solid.Primitive{solid.Prism{}} }

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
