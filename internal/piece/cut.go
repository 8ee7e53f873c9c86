package piece

import (
	"scantling/internal/address"
	"scantling/internal/diag"
)

// Side is one of the six sides of a part in local terms.
type Side string

// The sides: ends are end grain, edges the long narrow sides, faces the wide ones.
const (
	EndLow   Side = "end 1"  // length = 0
	EndHigh  Side = "end 2"  // length = whole
	EdgeLow  Side = "edge 1" // width = 0
	EdgeHigh Side = "edge 2"
	FaceLow  Side = "face 1" // thickness = 0
	FaceHigh Side = "face 2"
)

// SideOf returns the side at the low or high limit of a local axis.
func SideOf(axis Local, high bool) Side {
	sides := [3][2]Side{{EndLow, EndHigh}, {EdgeLow, EdgeHigh}, {FaceLow, FaceHigh}}
	if high {
		return sides[axis][1]
	}
	return sides[axis][0]
}

// Axis returns the local axis that the side limits and whether it is the high one.
func (s Side) Axis() (Local, bool) {
	switch s {
	case EndLow:
		return AlongLength, false
	case EndHigh:
		return AlongLength, true
	case EdgeLow:
		return AlongWidth, false
	case EdgeHigh:
		return AlongWidth, true
	case FaceLow:
		return AlongThickness, false
	}
	return AlongThickness, true
}

// Cross returns the two local axes of a side's plane, in the order length, width,
// thickness.
func (s Side) Cross() [2]Local {
	axis, _ := s.Axis()
	switch axis {
	case AlongLength:
		return [2]Local{AlongWidth, AlongThickness}
	case AlongWidth:
		return [2]Local{AlongLength, AlongThickness}
	}
	return [2]Local{AlongLength, AlongWidth}
}

// Opposite returns the other side of the same axis.
func (s Side) Opposite() Side {
	a, high := s.Axis()
	return SideOf(a, !high)
}

// CutKind is the trade's name of a cut.
type CutKind string

// The kinds of cut.
const (
	Rebate  CutKind = "rebate"  // along an edge or an end, open on two sides
	Groove  CutKind = "groove"  // along the grain
	Housing CutKind = "housing" // across the grain
	Channel CutKind = "channel" // round-bottomed
	Trough  CutKind = "trough"  // wide and shallow, across channels
	Hole    CutKind = "hole"
	Recess  CutKind = "recess"
	Notch   CutKind = "notch"  // out of an edge or a corner
	Socket  CutKind = "socket" // between the fingers of a box joint
	Scoop   CutKind = "scoop"  // an outline cut out of an edge
	Eased   CutKind = "eased"  // an edge rounded or chamfered
	Halving CutKind = "halving"

	VChannel  CutKind = "V channel"
	Mortise   CutKind = "mortise"        // closed all round, square or with round ends
	Cheek     CutKind = "tenon cheek"    // beside a tenon
	Tongued   CutKind = "tongue rebate"  // beside a tongue
	Tail      CutKind = "tail socket"    // between the tails of a dovetail
	Pin       CutKind = "pin socket"     // between its pins
	Flank     CutKind = "dovetail cheek" // beside a sliding dovetail
	KeySlot   CutKind = "key slot"       // across a mitre's corner, for a slip
	ScrewSlot CutKind = "screw slot"     // a hole that is longer than wide, in which a screw moves with the wood
	Taper     CutKind = "taper"          // an edge or a face that runs off along the part
	Bevel     CutKind = "bevel"          // an edge or a face that leans
	Mitre     CutKind = "mitre"          // an end at an angle
	Compound  CutKind = "compound angle" // an end at two angles
	Curve     CutKind = "curved outline"
)

// Cut is wood removed from one part, in local coordinates from the part's local
// origin. Exactly one of Slot, Bore, Dip, Ease, Slice and Pocket is set.
type Cut struct {
	Address address.Address `json:"address"`
	Kind    CutKind         `json:"kind"`
	Part    address.Address `json:"part"`
	// Joint is the joint that makes the cut and With the part that goes in; empty
	// for a cut of the part's own.
	Joint  address.Address `json:"joint,omitempty"`
	With   address.Address `json:"with,omitempty"`
	Slot   *Slot           `json:"slot,omitempty"`
	Bore   *Bore           `json:"bore,omitempty"`
	Dip    *Dip            `json:"dip,omitempty"`
	Ease   *Ease           `json:"ease,omitempty"`
	Slice  *Slice          `json:"slice,omitempty"`
	Pocket *Pocket         `json:"pocket,omitempty"`
	// Series is the series that the cut belongs to, Nth its place in it from 1
	// and Key the thing that it holds.
	Series address.Address `json:"series,omitempty"`
	Nth    int             `json:"nth,omitempty"`
	Key    string          `json:"key,omitempty"`
	// Cutter is the shop's id of the cutter that the design asks for, if it does.
	Cutter string `json:"cutter,omitempty"`
	// AfterGlueUp says that the cut is made on the assembled group.
	AfterGlueUp address.Address `json:"afterGlueUp,omitempty"`
	// After lists cuts of the same part that must be made before this one.
	After []address.Address `json:"after,omitempty"`
	Where diag.Place        `json:"where"`
}

// Slot is a straight trench: from one side, along one axis, of one width and
// depth. Rebates, grooves, housings, channels, troughs, notches, sockets, mortises
// and sliding dovetails are slots.
type Slot struct {
	// Open is the side that the slot is cut into.
	Open Side `json:"open"`
	// Run is the axis that it runs along; not the axis of Open.
	Run Local `json:"run"`
	// From and To limit it along Run; StartOpen and EndOpen say whether it runs
	// out through the part there.
	From      Figure `json:"from"`
	To        Figure `json:"to"`
	StartOpen bool   `json:"startOpen"`
	EndOpen   bool   `json:"endOpen"`
	// Near and Far limit the cutter's path across, along the third axis. Where the
	// bottom's corners are round and Depth is less than Corner, the mouth at the
	// surface is narrower; a series says how wide its mouths are.
	Near Figure `json:"near"`
	Far  Figure `json:"far"`
	// Depth is measured from Open inwards.
	Depth Figure `json:"depth"`
	// Corner is the radius of the bottom's corners, as the cutter leaves them; 0
	// is square. A channel cut to its radius has Far - Near = 2 Corner.
	Corner Figure `json:"corner,omitzero"`
	// EndRadius is the radius, seen from Open, of the corners of the stopped ends,
	// as a turning cutter leaves them; 0 is square. It is at most half of
	// Far - Near, and then the end is a half circle; with Corner as well the end is
	// what the cutter leaves when it is plunged or lifted there: a ball end.
	// From and To are the furthest that is cut.
	EndRadius Figure `json:"endRadius,omitzero"`
	// LeanNear and LeanFar are how far the foot of each wall lies inside its mouth:
	// in a V channel half the width, negative where the wall is undercut, as in the
	// housing of a sliding dovetail. Corner is then 0.
	LeanNear Figure `json:"leanNear,omitzero"`
	LeanFar  Figure `json:"leanFar,omitzero"`
}

// Open is the side that a cut is made from; "" for an edge that is eased and a plane.
func (c Cut) Open() Side {
	switch {
	case c.Slot != nil:
		return c.Slot.Open
	case c.Bore != nil:
		return c.Bore.Open
	case c.Dip != nil:
		return c.Dip.Open
	case c.Pocket != nil:
		return c.Pocket.Open
	}
	return ""
}

// Across returns the local axis across the slot: neither Open's nor Run.
func (s Slot) Across() Local {
	open, _ := s.Open.Axis()
	return Local(3 - int(open) - int(s.Run))
}

// Bore is a round hole from a side inwards.
type Bore struct {
	Open Side `json:"open"`
	// At is the centre along the two axes that are not Open's, in the order
	// length, width, thickness.
	At       [2]Figure `json:"at"`
	Diameter Figure    `json:"diameter"`
	Depth    Figure    `json:"depth"`
	Through  bool      `json:"through"`
	// Sink widens the mouth, for a screw's head or a plug.
	Sink *Sink `json:"sink,omitempty"`
}

// Sink is the widened mouth of a hole: a cone from Diameter at the surface down
// to the hole's own diameter at Depth, or flat-bottomed of that depth.
type Sink struct {
	Diameter Figure `json:"diameter"`
	Depth    Figure `json:"depth"`
	Flat     bool   `json:"flat,omitempty"`
}

// Dip is an arc cut out of an edge or end, right through the thickness: a scoop.
type Dip struct {
	// Open is the edge or end that it dips into.
	Open Side `json:"open"`
	// Centre is the middle along the edge, Chord the width at the edge, Depth the
	// greatest depth. The arc's radius follows: (chord² + 4 depth²) / (8 depth).
	Centre Figure `json:"centre"`
	Chord  Figure `json:"chord"`
	Depth  Figure `json:"depth"`
}

// Ease is an edge taken off: rounded over, chamfered or hollowed by a cove.
type Ease struct {
	// Sides are the two sides whose common edge is taken off.
	Sides [2]Side `json:"sides"`
	// Radius is that of the round or the cove, or the leg of the chamfer.
	Radius Figure `json:"radius"`
	// Chamfer tells a chamfer of that leg from a round, Cove a hollow of that radius
	// about the edge.
	Chamfer bool `json:"chamfer,omitempty"`
	Cove    bool `json:"cove,omitempty"`
	// From and To limit it along the edge; both nought is the whole length.
	From Figure `json:"from,omitzero"`
	To   Figure `json:"to,omitzero"`
}

// Slice takes off all that lies beyond a plane: a taper, a bevel, a mitre or an
// end at a compound angle.
//
// The plane is given by where it crosses Off's axis at three stations. The other
// two axes are first and second, in the order length, width, thickness: At[0] is
// the crossing at (From[0], From[1]), At[1] at (To[0], From[1]), At[2] at
// (From[0], To[1]), measured from the local origin. Where a plane leaves the part
// it takes nothing, so a taper that begins at 60 has From[0] = 60 and At[0] at the
// part's full size there.
type Slice struct {
	// Off is the side that the plane takes off.
	Off  Side      `json:"off"`
	From [2]Figure `json:"from"`
	To   [2]Figure `json:"to"`
	At   [3]Figure `json:"at"`
}

// Pocket is wood taken out within a closed line, from one side inwards: a notch of
// any shape, a recess, a curved outline, the socket of a dovetail. Where the line
// runs outside the part the cut is open there.
type Pocket struct {
	Open Side `json:"open"`
	// Outline is the line, anticlockwise as the two axes that are not Open's lie in
	// the order length, width, thickness (Along is the first of them, Across the
	// second).
	Outline []OutlinePoint `json:"outline"`
	Depth   Figure         `json:"depth"`
	Through bool           `json:"through,omitempty"`
}

// Series is a row of equal or graduated cuts, which closes: margin, then mouths
// and lands by turns, then margin, add up to Whole.
type Series struct {
	Address address.Address `json:"address"`
	Part    address.Address `json:"part"`
	Kind    CutKind         `json:"kind"`
	// Across is the local axis of the row.
	Across Local `json:"across"`
	// Terms alternate wood and air from the local origin.
	Terms []Term     `json:"terms"`
	Whole Figure     `json:"whole"`
	Where diag.Place `json:"where"`
}

// Term is one stretch of a row.
type Term struct {
	// Air is true for a stretch without wood.
	Air    bool   `json:"air"`
	Figure Figure `json:"figure"`
	// Of is what the stretch is: a part, a cut or a space.
	Of address.Address `json:"of,omitempty"`
	// Word is the catalogue's word for it: "land", "margin", "channel", "clearance".
	Word string `json:"word,omitempty"`
}
