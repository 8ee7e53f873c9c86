package drawing

import (
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// slices adds the places of a plane: where it begins to fall, and how far in it is
// where it ends.
func (d *partDrawing) slices(c piece.Cut) {
	s := c.Slice
	off, _ := s.Off.Axis()
	for k, axis := range naming.CrossAxes(s.Off) {
		if s.At[k+1].Nm == s.At[0].Nm {
			continue
		}
		d.place(axis, mark{at: s.From[k].Nm, address: c.Address})
		d.place(axis, mark{at: s.To[k].Nm, address: c.Address})
		d.place(off, mark{at: s.At[k+1].Nm, address: c.Address})
	}
}

// pockets adds the places of the corners of a cut within a line, and of the furthest
// that its arcs reach.
func (d *partDrawing) pockets(c piece.Cut) {
	p := c.Pocket
	low, high := naming.Limits(&d.part, c)
	for k, axis := range naming.CrossAxes(p.Open) {
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
