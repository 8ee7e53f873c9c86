package scantling

import (
	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/output/drawing"
	"scantling/internal/shape"
)

// Solids answers drawings and views with the solids of the plan's parts.
func (r *Result) Solids() drawing.Solids { return solids{r.Shapes} }

type solids struct{ shapes *shape.Shapes }

func (s solids) Solid(part address.Address) *solid.Solid {
	if sh, ok := s.shapes.Of(part); ok {
		return sh.Solid
	}
	return nil
}

func (s solids) Ready(part address.Address) []solid.Placed { return s.shapes.Ready(part) }

func (s solids) Cut(part address.Address, tag solid.Tag) address.Address {
	sh, ok := s.shapes.Of(part)
	if !ok {
		return ""
	}
	if c := sh.Origin(tag).Cut; c != nil {
		return c.Address
	}
	return ""
}
