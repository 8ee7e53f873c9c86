package solid

import (
	"fmt"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Tag is the caller's own number for a face: which body or which cut it comes
// from. The kernel carries tags and never reads them.
type Tag int32

// Primitive is a closed body from which solids are built: [Prism] or [Turned].
// The interface is sealed; more kinds join it here.
type Primitive interface {
	// polyhedron returns the faceted body, perHalf facets to a half circle.
	polyhedron(perHalf int) (*poly, error)
	// crossings appends the parameters at which the line o + t·d enters and
	// leaves the true body (round faces as round), with the faces' tags.
	crossings(o, d vec.V3, out []crossing) []crossing
	// appendKey appends bytes that differ where the bodies do.
	appendKey(key []byte) []byte
	// mirrored returns the body with world coordinate X turned to -X.
	mirrored() Primitive
}

// Prism is a profile drawn out along the W axis of its frame from From to To
// (millimetres, either way round). The profile lies in the frame's U and V.
type Prism struct {
	Frame    vec.Frame
	Profile  polygon.Profile
	From, To float64
	// Sides are the tags of the profile's segments in order, the outer loop
	// first. A short list is continued with its last tag, an empty one with 0.
	Sides []Tag
	// Caps are the tags of the faces at the lesser and the greater W.
	Caps [2]Tag
}

// Turned is a profile turned a full circle about the W axis of its frame. In
// the profile X is the distance from the axis (never negative) and Y runs
// along W.
type Turned struct {
	Frame   vec.Frame
	Profile polygon.Profile
	Sides   []Tag // as for Prism
}

// Whole returns a tag list for a primitive of which every face has one tag.
func Whole(t Tag) ([]Tag, [2]Tag) { return []Tag{t}, [2]Tag{t, t} }

// Block returns the box between two corners in a frame, every face tagged t.
func Block(f vec.Frame, a, b vec.V3, t Tag) Prism {
	sides, caps := Whole(t)
	return Prism{
		Frame: f, Profile: polygon.Rect(polygon.P2{X: a.X, Y: a.Y}, polygon.P2{X: b.X, Y: b.Y}),
		From: a.Z, To: b.Z, Sides: sides, Caps: caps,
	}
}

// facet is a flat face of a polyhedron: n·x = d with n pointing out; loops run
// anticlockwise seen from outside, holes clockwise.
type facet struct {
	loops [][]int32
	n     vec.V3
	d     float64
	plane int32 // index into the plane table of the run
	surf  int32 // index into the surfaces, -1 where the face is flat
	tag   Tag
	reach float64 // how far the true surface bulges: its radius, negative where inwards
	// edges are the facets beyond the edges of the only loop, where known.
	edges []int32
}

// poly is a closed polyhedron.
type poly struct {
	verts  []vec.V3
	facets []facet
	surfs  []surface
	lo, hi vec.V3
	convex bool
}

func (p *poly) bound() {
	p.lo, p.hi = boundsOf(p.verts)
}

func boundsOf(verts []vec.V3) (lo, hi vec.V3) {
	if len(verts) == 0 {
		return lo, hi
	}
	lo, hi = verts[0], verts[0]
	for _, v := range verts[1:] {
		lo = vec.V3{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
		hi = vec.V3{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
	}
	return lo, hi
}

// MaxSize bounds the coordinates that the kernel works with: 100 m.
const MaxSize = 1e5

// checkFrame refuses frames that are not rigid and right-handed, and sizes
// that the tolerances were not chosen for.
func checkFrame(f vec.Frame) error {
	const slack = 1e-9
	for _, u := range [3]vec.V3{f.U, f.V, f.W} {
		if n := u.Dot(u); !(n > 1-slack && n < 1+slack) {
			return fmt.Errorf("the frame is not rigid: a direction has length² %g, not 1", n)
		}
	}
	if off := f.U.Cross(f.V).Sub(f.W).Norm(); !(off < slack) {
		return fmt.Errorf("the frame is not square and right-handed: U × V misses W by %g", off)
	}
	return checkSize(f.Origin)
}

func checkSize(v vec.V3) error {
	for axis := range 3 {
		if c := v.At(axis); !(c > -MaxSize && c < MaxSize) {
			return fmt.Errorf("coordinate %g is beyond the limit of %g mm", c, float64(MaxSize))
		}
	}
	return nil
}

// tagAt picks the tag of a segment.
func tagAt(tags []Tag, segment int) Tag {
	if len(tags) == 0 {
		return 0
	}
	return tags[min(segment, len(tags)-1)]
}

// mirrorPoint turns X to -X.
func mirrorPoint(v vec.V3) vec.V3 { return vec.V3{X: -v.X, Y: v.Y, Z: v.Z} }

// mirrorFrame mirrors a frame and turns its U over, so that the result is
// right-handed again and the mirrored content has x turned to -x in it.
func mirrorFrame(f vec.Frame) vec.Frame {
	return vec.Frame{
		Origin: mirrorPoint(f.Origin), U: mirrorPoint(f.U).Mul(-1),
		V: mirrorPoint(f.V), W: mirrorPoint(f.W),
	}
}
