package drawing

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// crossAxes returns the two local axes that are not a side's own.
func crossAxes(s piece.Side) [2]piece.Local { return boreAxes(s) }

// slices adds the places of a plane: where it begins to fall, and how far in it is
// where it ends.
func (d *partDrawing) slices(c piece.Cut) {
	s := c.Slice
	off, _ := s.Off.Axis()
	for k, axis := range crossAxes(s.Off) {
		if s.At[k+1].Nm == s.At[0].Nm {
			continue
		}
		d.place(axis, mark{at: s.From[k].Nm, address: c.Address})
		d.place(axis, mark{at: s.To[k].Nm, address: c.Address})
		d.place(off, mark{at: s.At[k+1].Nm, address: c.Address})
	}
}

// sliceLimits is the box around what a plane takes.
func (d *partDrawing) sliceLimits(s *piece.Slice) (low, high [3]unit.Length) {
	for i, f := range d.part.Sizes() {
		high[i] = f.Nm
	}
	off, up := s.Off.Axis()
	deepest := s.At[0].Nm
	for k, axis := range crossAxes(s.Off) {
		if fall := s.At[k+1].Nm - s.At[0].Nm; fall != 0 {
			deepest += fall
			if s.From[k].Nm < s.To[k].Nm {
				low[axis] = max(low[axis], s.From[k].Nm)
			} else {
				high[axis] = min(high[axis], s.From[k].Nm)
			}
		}
	}
	if up {
		low[off] = deepest
	} else {
		high[off] = deepest
	}
	return low, high
}

// pockets adds the places of the corners of a cut within a line, and of the furthest
// that its arcs reach.
func (d *partDrawing) pockets(c piece.Cut) {
	p := c.Pocket
	low, high := d.pocketLimits(p)
	for k, axis := range crossAxes(p.Open) {
		for _, v := range p.Outline {
			d.place(axis, mark{at: [2]unit.Length{v.Along.Nm, v.Across.Nm}[k], address: c.Address})
		}
		d.place(axis, mark{at: low[axis], address: c.Address})
		d.place(axis, mark{at: high[axis], address: c.Address})
	}
	if !p.Through {
		d.inwards(p.Open, p.Depth.Nm, c.Address)
	}
}

// pocketLimits is the box around what a cut within a line takes.
func (d *partDrawing) pocketLimits(p *piece.Pocket) (low, high [3]unit.Length) {
	outer := make(polygon.Loop, len(p.Outline))
	for i, v := range p.Outline {
		outer[i] = polygon.Vertex{P2: polygon.P2{X: v.Along.Nm.Millimetres(), Y: v.Across.Nm.Millimetres()}, Bulge: v.Bulge}
	}
	least, most := polygon.Profile{Outer: outer}.Bounds()
	for k, axis := range crossAxes(p.Open) {
		size := d.part.Sizes()[axis].Nm
		low[axis] = max(unit.FromMillimetres([2]float64{least.X, least.Y}[k]), 0)
		high[axis] = min(unit.FromMillimetres([2]float64{most.X, most.Y}[k]), size)
	}
	open, up := p.Open.Axis()
	high[open] = d.part.Sizes()[open].Nm
	switch {
	case p.Through:
	case up:
		low[open] = high[open] - p.Depth.Nm
	default:
		high[open] = p.Depth.Nm
	}
	return low, high
}
