package shape

import (
	"scantling/internal/geom/solid"
	"scantling/internal/piece"
)

// Wall is a face that a cut leaves.
type Wall string

// The walls of a cut. Of a slot, near and far are the walls across, start and
// end those at its stopped ends.
const (
	Bottom Wall = "bottom"
	Near   Wall = "near"
	Far    Wall = "far"
	Start  Wall = "start"
	End    Wall = "end"
	Round  Wall = "round" // of a bore, a dip, an eased edge or a pocket
	Sunk   Wall = "sunk"  // of the widened mouth of a bore
	Slope  Wall = "slope" // of a slice
	Flank  Wall = "flank" // a straight wall of a pocket
)

// Origin is where a face of a solid comes from: a cut of the part, or a side of
// its uncut body.
type Origin struct {
	// Cut is the cut that left the face, nil for a side of the body.
	Cut  *piece.Cut
	Wall Wall
	// Side is the side of the body, where Cut is nil; "" on the curved or slanting
	// side of an outline or a round part, which Segment numbers from 1.
	Side    piece.Side
	Segment int
}

// Tags: the sides of the body have 1 to 6, the segments of an outline -1 and
// down, the walls of cut number i 16 (i + 1) and up.
const perCut = 16

var sides = [6]piece.Side{piece.EndLow, piece.EndHigh, piece.EdgeLow, piece.EdgeHigh, piece.FaceLow, piece.FaceHigh}

var walls = [...]Wall{Bottom, Near, Far, Start, End, Round, Sunk, Slope, Flank}

// sideTag returns the tag of a side of the body.
func sideTag(s piece.Side) solid.Tag {
	for i, x := range sides {
		if x == s {
			return solid.Tag(i + 1)
		}
	}
	return 0
}

// wallTag returns the tag of a wall of cut number i.
func wallTag(i int, w Wall) solid.Tag {
	for k, x := range walls {
		if x == w {
			return solid.Tag(perCut*(i+1) + k)
		}
	}
	return solid.Tag(perCut * (i + 1))
}

// Origin returns where the faces with a tag come from.
func (s *Shape) Origin(t solid.Tag) Origin {
	switch n := int(t); {
	case n < 0:
		return Origin{Segment: -n}
	case n >= 1 && n <= len(sides):
		return Origin{Side: sides[n-1]}
	case n >= perCut:
		i, k := n/perCut-1, n%perCut
		if i < len(s.Cuts) && k < len(walls) {
			return Origin{Cut: s.Cuts[i], Wall: walls[k]}
		}
	}
	return Origin{}
}
