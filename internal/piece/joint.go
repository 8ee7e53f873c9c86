package piece

import (
	"scantling/internal/address"
	"scantling/internal/diag"
)

// JointKind is the trade's name of a joint.
type JointKind string

// The kinds of joint.
const (
	ButtJoint    JointKind = "butt"
	HousingJoint JointKind = "housing"
	RebateJoint  JointKind = "rebate"
	GrooveJoint  JointKind = "groove"
	BoxJoint     JointKind = "box"
	HalvingJoint JointKind = "halving"
	DowelJoint   JointKind = "dowel"
)

// Joint is where two parts meet. It partitions the overlap of their uncut
// bodies into kept by A, kept by B and kept by neither; the parts themselves are
// already drawn with what the joint adds to them.
type Joint struct {
	Address address.Address `json:"address"`
	// Family is the joint block of the document that this pair comes from.
	Family address.Address `json:"family"`
	Kind   JointKind       `json:"kind"`
	// A goes into B (a shelf into a side); for box joints and halvings A keeps
	// the first finger or the upper half.
	A address.Address `json:"a"`
	B address.Address `json:"b"`
	// Depth is how far A enters B.
	Depth Figure `json:"depth"`
	// StopFront and StopBack are how far short of B's edges the cut ends, at the
	// low and the high end of its run in the piece; A is notched to match.
	StopLow  Figure `json:"stopLow,omitzero"`
	StopHigh Figure `json:"stopHigh,omitzero"`
	// Clearance is added to the cut in B: across A's thickness, and at the bottom
	// of a groove.
	ClearAcross Figure `json:"clearAcross,omitzero"`
	ClearDeep   Figure `json:"clearDeep,omitzero"`
	// Finger is the pitch unit of a box joint and First who keeps the first
	// finger from the low end ("a" or "b").
	Finger Figure `json:"finger,omitzero"`
	// Fingers lists the fingers' sizes from the low end; they add up to the width.
	Fingers []Figure `json:"fingers,omitempty"`
	First   string   `json:"first,omitempty"`
	// Over lists joints whose regions this one yields nothing to: where both
	// claim wood, this joint is cut and the others end at it.
	Over []address.Address `json:"over,omitempty"`
	// Glue is the glue's id, "" for none; Fasteners what holds it besides.
	Glue      string     `json:"glue,omitempty"`
	Fasteners *Fasteners `json:"fasteners,omitempty"`
	// Dowels places dowels of a dowel joint.
	Dowels *Dowels `json:"dowels,omitempty"`
	// Slides says that the parts stay free to move across the joint.
	Slides bool       `json:"slides,omitempty"`
	Where  diag.Place `json:"where"`
}

// Fasteners is what is driven through a joint.
type Fasteners struct {
	Kind  string `json:"kind"` // catalogue id: "panel pin 25", "screw 4 x 30"
	Count int    `json:"count"`
	// Margin is from each end of the joint to the first; the rest are shared.
	Margin Figure `json:"margin"`
	// Pilot is the pilot hole's diameter; 0 for none.
	Pilot Figure `json:"pilot,omitzero"`
	// Depth is how long a pilot hole is, from the surface.
	Depth Figure `json:"depth,omitzero"`
}

// Dowels is a row of dowels.
type Dowels struct {
	Diameter Figure `json:"diameter"`
	Count    int    `json:"count"`
	Margin   Figure `json:"margin"`
	// InA and InB are the depths of the holes.
	InA Figure `json:"inA"`
	InB Figure `json:"inB"`
}
