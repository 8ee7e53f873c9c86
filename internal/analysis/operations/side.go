package operations

import "scantling/internal/piece"

// Work passes a cutter with one side down, one against the fence and one ahead.
// Seen from where the operator stands, fence behind the cutter of a router table
// and feed from right to left, or fence to the right of a saw and feed away: in
// both the outward normals obey ahead × fence = down. As a part's own axes are
// right-handed, two of the three sides give the third.

// Leads returns the side that goes ahead when down lies on the table and fence
// against the fence. It returns "" if both are sides of one axis.
func Leads(down, fence piece.Side) piece.Side { return cross(fence, down) }

// FenceFor returns the side against the fence when down lies on the table and
// ahead goes first; "" if both are sides of one axis.
func FenceFor(down, ahead piece.Side) piece.Side { return cross(down, ahead) }

// cross is the vector product of two outward normals.
func cross(a, b piece.Side) piece.Side {
	i, highA := a.Axis()
	j, highB := b.Axis()
	if i == j {
		return ""
	}
	cyclic := (int(i)+1)%3 == int(j)
	return piece.SideOf(piece.Local(3-int(i)-int(j)), cyclic == (highA == highB))
}
