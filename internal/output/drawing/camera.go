package drawing

import (
	"scantling/internal/geom/vec"
	"scantling/internal/page"
	"scantling/internal/piece"
)

// camera is a direction of sight with what is right and up on paper.
type camera struct {
	right, up vec.V3
}

// toward points from the work to the eye.
func (c camera) toward() vec.V3 { return c.right.Cross(c.up) }

// flat returns the paper coordinates of a point, up positive, unscaled.
func (c camera) flat(p vec.V3) page.Point { return page.Point{X: p.Dot(c.right), Y: p.Dot(c.up)} }

// isometric sees the front, the right and the top.
func isometric() camera {
	toward := vec.V3{X: 1, Y: -1, Z: 1}.Unit()
	right := vec.V3{X: 1, Y: 1}.Unit()
	return camera{right: right, up: toward.Cross(right)}
}

// Local directions of a part as vectors of its own frame.
var (
	alongLength    = vec.V3{X: 1}
	alongWidth     = vec.V3{Y: 1}
	alongThickness = vec.V3{Z: 1}
)

// views are the three directions of a part drawing: of the face that is worked,
// of an edge (drawn below it) and of an end (drawn at its right).
type views struct{ face, edge, end camera }

// partViews returns the views of a part whose shown face is face, arranged by
// the first-angle method (ISO 128-3, from memory: a view from above lies below,
// one from the left lies at the right) or by the third-angle method (each view
// lies on the side that it is seen from).
func partViews(face piece.Side, thirdAngle bool) views {
	up := alongWidth
	if face == piece.FaceLow {
		up = up.Mul(-1)
	}
	main := camera{right: alongLength, up: up}
	edgeEye, endEye := up, alongLength.Mul(-1)
	if thirdAngle {
		edgeEye, endEye = up.Mul(-1), alongLength
	}
	return views{
		face: main,
		edge: camera{right: alongLength, up: edgeEye.Cross(alongLength)},
		end:  camera{right: up.Cross(endEye), up: up},
	}
}
