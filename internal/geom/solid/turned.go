package solid

import (
	"errors"

	"scantling/internal/geom/vec"
)

func (t Turned) polyhedron(perHalf int) (*poly, error) {
	return nil, errors.New("turned bodies cannot be built yet")
}

func (t Turned) crossings(o, d vec.V3, out []crossing) []crossing { return out }

func (t Turned) mirrored() Primitive {
	t.Frame = mirrorFrame(t.Frame)
	return t
}
