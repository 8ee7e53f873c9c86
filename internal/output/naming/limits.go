package naming

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Limits returns the least and greatest place of a cut on each local axis of its
// part: what a letter points at and a figure tells. Exact but for arcs, which are
// to the nanometre.
func Limits(p *piece.Part, c piece.Cut) (low, high [3]unit.Length) {
	for i, f := range p.Sizes() {
		high[i] = f.Nm
	}
	inwards := func(s piece.Side, depth unit.Length) {
		if axis, up := s.Axis(); up {
			low[axis] = high[axis] - depth
		} else {
			high[axis] = depth
		}
	}
	switch {
	case c.Slot != nil:
		inwards(c.Slot.Open, c.Slot.Depth.Nm)
		low[c.Slot.Run], high[c.Slot.Run] = c.Slot.From.Nm, c.Slot.To.Nm
		low[c.Slot.Across()], high[c.Slot.Across()] = c.Slot.Near.Nm, c.Slot.Far.Nm
	case c.Bore != nil:
		inwards(c.Bore.Open, c.Bore.Depth.Nm)
		for i, axis := range c.Bore.Open.Cross() {
			low[axis], high[axis] = c.Bore.At[i].Nm-c.Bore.Diameter.Nm/2, c.Bore.At[i].Nm+c.Bore.Diameter.Nm/2
		}
	case c.Dip != nil:
		inwards(c.Dip.Open, c.Dip.Depth.Nm)
		axis := piece.AlongLength
		if open, _ := c.Dip.Open.Axis(); open == axis {
			axis = piece.AlongWidth
		}
		low[axis], high[axis] = c.Dip.Centre.Nm-c.Dip.Chord.Nm/2, c.Dip.Centre.Nm+c.Dip.Chord.Nm/2
	case c.Ease != nil:
		inwards(c.Ease.Sides[0], c.Ease.Radius.Nm)
		inwards(c.Ease.Sides[1], c.Ease.Radius.Nm)
	case c.Slice != nil:
		slice(c.Slice, &low, &high)
	case c.Pocket != nil:
		if !c.Pocket.Through {
			inwards(c.Pocket.Open, c.Pocket.Depth.Nm)
		}
		outline(c.Pocket, &low, &high)
	}
	return low, high
}

// slice limits a box to what a plane takes where it falls.
func slice(s *piece.Slice, low, high *[3]unit.Length) {
	off, up := s.Off.Axis()
	deepest := s.At[0].Nm
	for k, axis := range s.Off.Cross() {
		fall := s.At[k+1].Nm - s.At[0].Nm
		deepest += fall
		switch {
		case fall == 0:
		case s.From[k].Nm < s.To[k].Nm:
			low[axis] = max(low[axis], s.From[k].Nm)
		default:
			high[axis] = min(high[axis], s.From[k].Nm)
		}
	}
	if up {
		low[off] = deepest
	} else {
		high[off] = deepest
	}
}

// outline limits a box to the part of an outline that lies in it.
func outline(p *piece.Pocket, low, high *[3]unit.Length) {
	outer := make(polygon.Loop, len(p.Outline))
	for i, v := range p.Outline {
		outer[i] = polygon.Vertex{P2: polygon.P2{X: v.Along.Nm.Millimetres(), Y: v.Across.Nm.Millimetres()}, Bulge: v.Bulge}
	}
	if len(outer) == 0 {
		return
	}
	least, most := polygon.Profile{Outer: outer}.Bounds()
	for k, axis := range p.Open.Cross() {
		low[axis] = max(low[axis], unit.FromMillimetres([2]float64{least.X, least.Y}[k]))
		high[axis] = min(high[axis], unit.FromMillimetres([2]float64{most.X, most.Y}[k]))
	}
}
