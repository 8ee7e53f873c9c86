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

	TongueJoint   JointKind = "tongue"           // a tongue of A in a groove of B, edge to edge or end to face
	MitreJoint    JointKind = "mitre"            // both give way at the half angle; splined or keyed
	DovetailJoint JointKind = "dovetail"         // A has the tails; with a lap it is half-blind
	SlidingJoint  JointKind = "sliding dovetail" // A's dovetailed end or edge slides into B
	TenonJoint    JointKind = "tenon"            // A's tenon in B's mortise
	BridleJoint   JointKind = "bridle"           // A's tenon, as wide as A, in an open slot of B's end
	LooseJoint    JointKind = "loose tenon"      // separate tenons in mortises of both
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
	// Dowels places dowels of a dowel joint; the others likewise, by kind.
	Dowels *Dowels `json:"dowels,omitempty"`
	Tongue *Tongue `json:"tongue,omitempty"`
	Spline *Spline `json:"spline,omitempty"`
	Keys   *Keys   `json:"keys,omitempty"`
	Tails  *Tails  `json:"tails,omitempty"`
	Slide  *Slide  `json:"slide,omitempty"`
	Tenon  *Tenon  `json:"tenon,omitempty"`
	Loose  *Loose  `json:"loose,omitempty"`
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
	// Clearance is the hole through the first part that lets a screw's shank pass; 0
	// where that is bored like the pilot. Sink widens its mouth for the head or, flat,
	// for a plug over it.
	Clearance Figure `json:"clearance,omitzero"`
	Sink      *Sink  `json:"sink,omitempty"`
	// Slot is how far a screw's shank may move to either side in the first part: its
	// hole is that much longer at both ends, across the second part's grain. The screw
	// in the middle of a row of an odd number stays in a round hole. 0 for round holes.
	Slot Figure `json:"slot,omitzero"`
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

// Tongue is the tongue of a tongue and groove; Depth of the joint is its length.
type Tongue struct {
	// Thickness of the tongue and how far it lies from A's low face (of those two
	// sides across which the tongue is thin).
	Thickness Figure `json:"thickness"`
	From      Figure `json:"from"`
	// Gap is how far A's shoulders stand off B, so that A has room to swell.
	Gap Figure `json:"gap,omitzero"`
}

// Spline is a loose strip in a groove in both faces of a mitre.
type Spline struct {
	Thickness Figure `json:"thickness"`
	// Depth is how far it enters each part, square to the mitre.
	Depth Figure `json:"depth"`
	// Heel is the distance of the groove from the inner corner of the mitre, along it.
	Heel Figure `json:"heel"`
}

// Keys are slips let into a mitre from outside, across the corner, after glue-up.
type Keys struct {
	Thickness Figure `json:"thickness"`
	// Depth is how far they enter, square to the corner's outer edge.
	Depth Figure `json:"depth"`
	// At are their middles from the low end of the corner.
	At []Figure `json:"at"`
}

// Tails is a dovetail's row of tails, on A, from the low end of the joint's run.
type Tails struct {
	// Tails are the widths of the tails at their wide ends, Pins those of the pins
	// at their narrow ends, from the low end on, a pin first and a pin last: one
	// more than tails. They add up to the joint's width.
	Tails []Figure `json:"tails"`
	Pins  []Figure `json:"pins"`
	// Lean is how far a tail's side leans in over the length of the tail.
	Lean Figure `json:"lean"`
	// Lap is the wood that B keeps before the tails' ends; 0 for a through dovetail.
	Lap Figure `json:"lap,omitzero"`
}

// Slide is the shape of a sliding dovetail; Depth of the joint is its height.
type Slide struct {
	// Neck is its thickness where it leaves A's shoulders and Lean how much wider
	// each side is at its end.
	Neck Figure `json:"neck"`
	Lean Figure `json:"lean"`
	// OneSide leaves the low side square: a half dovetail.
	OneSide bool `json:"oneSide,omitempty"`
}

// Tenon is a tenon of A and its mortise in B; Depth of the joint is its length.
type Tenon struct {
	// Thickness across A's thickness and From its distance from A's low face.
	Thickness Figure `json:"thickness"`
	From      Figure `json:"from"`
	// Low and High are the shoulders across A's width, at the low and the high end
	// of the joint's run.
	Low  Figure `json:"low,omitzero"`
	High Figure `json:"high,omitzero"`
	// Haunch is how far the tenon keeps its full width into the shoulder at HaunchHigh
	// (or the low one): its length; 0 for none.
	Haunch     Figure `json:"haunch,omitzero"`
	HaunchHigh bool   `json:"haunchHigh,omitempty"`
	// Through says that the mortise goes right through B.
	Through bool `json:"through,omitempty"`
	// Round says that the mortise keeps the round ends of its cutter and the tenon is
	// rounded to match.
	Round bool `json:"round,omitempty"`
	// Mitred says that its end is mitred where it meets another mitred tenon in B.
	Mitred bool `json:"mitred,omitempty"`
}

// Loose is a row of loose tenons, as dowels are.
type Loose struct {
	Thickness Figure `json:"thickness"`
	// Width is that of each tenon, over its round ends.
	Width  Figure `json:"width"`
	Count  int    `json:"count"`
	Margin Figure `json:"margin"`
	InA    Figure `json:"inA"`
	InB    Figure `json:"inB"`
}
