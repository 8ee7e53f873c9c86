package plan

import (
	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Seasons is what damp and dry air do to the wood of the piece.
type Seasons struct {
	Air   []Air       `json:"air"`
	Parts []PartMove  `json:"parts,omitempty"`
	Pairs []GrainPair `json:"pairs,omitempty"`
	Rooms []PanelRoom `json:"rooms,omitempty"`
	Cups  []Cup       `json:"cups,omitempty"`
	Bows  []SheetBow  `json:"bows,omitempty"`
}

// Air is the air of one season and the moisture content that wood comes to in it.
type Air struct {
	// When is "now", at the bench, or "dry" or "wet", where the piece will live.
	When        string     `json:"when"`
	Humidity    unit.Value `json:"humidity"`
	Temperature unit.Value `json:"temperature"`
	Moisture    unit.Value `json:"moisture"`
}

// PartMove is what the seasons do to parts of one wood and size across the grain.
type PartMove struct {
	Parts   []address.Address `json:"parts"`
	Species string            `json:"species"`
	// Cut is how the board is sawn: "flat", "quarter" or "" for unknown.
	Cut       string `json:"cut,omitempty"`
	Width     Swell  `json:"width"`
	Thickness Swell  `json:"thickness"`
}

// Swell is a size at the bench, what it gains by the wet end of the year and what it
// loses by the dry one.
type Swell struct {
	Size    Figure   `json:"size"`
	Grows   Estimate `json:"grows"`
	Shrinks Estimate `json:"shrinks"`
}

// Restraint says what keeps two parts from moving against each other.
type Restraint string

// The restraints, tightest first.
const (
	Glued    Restraint = "glued"
	Nailed   Restraint = "nailed"
	Screwed  Restraint = "screwed"
	Slotted  Restraint = "slotted"  // screws in slots: fasteners in a joint that slides
	Floating Restraint = "floating" // in a groove or housing, without glue
)

// Verdict is what comes of wood that is joined across its grain.
type Verdict string

// The verdicts.
const (
	MovesFreely Verdict = "free"
	PutUpWith   Verdict = "put up with" // held, over no more than the limit
	Gives       Verdict = "gives"       // nails and screws bend or crush, over more
	WillBreak   Verdict = "will break"  // glued over more: it splits, bows or breaks the joint
)

// GrainPair is two parts of which one moves along an axis where the other does not.
type GrainPair struct {
	Joint address.Address `json:"joint"`
	// Moves is the part that moves along Axis, Holds the one that does not.
	Moves address.Address `json:"moves"`
	Holds address.Address `json:"holds"`
	Axis  piece.Axis      `json:"axis"`
	// Size is the stretch over which they are joined, along the axis.
	Size      Figure    `json:"size"`
	Restraint Restraint `json:"restraint"`
	Grows     Estimate  `json:"grows"`
	Shrinks   Estimate  `json:"shrinks"`
	// Strain, in percent, is the greatest that is forced on the wood if nothing
	// gives, and Stress, in MPa, what that comes to elastically: where it is held.
	Strain Estimate `json:"strain,omitzero"`
	Stress Estimate `json:"stress,omitzero"`
	// Limit is the width that is put up with.
	Limit   Figure  `json:"limit"`
	Verdict Verdict `json:"verdict"`
	// Remedies are what would help, best first: "slotted", "floating", "sliding",
	// "narrower", "quarter", "sheet".
	Remedies []string `json:"remedies,omitempty"`
}

// PanelRoom is a solid part that lies with its two edges in grooves, housings or
// rebates without glue, as a bottom or a panel in a frame does: it must have room to
// grow, and must not shrink out of them.
type PanelRoom struct {
	Part address.Address `json:"part"`
	Axis piece.Axis      `json:"axis"`
	// Joints are those at its low and its high edge.
	Joints [2]address.Address `json:"joints"`
	Swell  Swell              `json:"swell"`
	// Room is the clearance behind both edges together, Enters how deep the shallower
	// edge lies in.
	Room   Figure `json:"room"`
	Enters Figure `json:"enters"`
	// Spare is what is left of the room at the wet end: below nought it binds. Keeps
	// is what of the shallower edge stays in at the dry end if all of the shrinking
	// comes out on its side: below nought it falls out.
	Spare Estimate `json:"spare"`
	Keeps Estimate `json:"keeps"`
}

// Cup is how parts bend across their width while they wait, because one face was
// machined away more than the other.
type Cup struct {
	Parts []address.Address `json:"parts"`
	// Face is the machined face; Width the part's, Deep how deep the channels are,
	// Share the part of the width that they take.
	Face  piece.Side `json:"face"`
	Width Figure     `json:"width"`
	Deep  Figure     `json:"deep"`
	Share unit.Value `json:"share"`
	// Core is the reading of the wood's core, no value if there is none; Room what
	// wood comes to in the shop's air.
	Core unit.Value `json:"core,omitzero"`
	Room unit.Value `json:"room"`
	// Way is on which face it goes hollow: "hollow on the machined face" if the core is
	// wetter than the room, "hollow on the other face" if drier, "flat", or ""
	// without a reading.
	Way  string `json:"way,omitempty"`
	Kept []Kept `json:"kept"`
	// Flatten is the load, spread evenly, that holds the worst cup flat.
	Flatten Estimate `json:"flatten"`
}

// Kept is what comes of one way of keeping a part.
type Kept struct {
	// How is "flat on the bench", "on edge", "stickered", "machined on both faces" or
	// "stickered under weight", which is what it does if it is let go.
	How string `json:"how"`
	// PerPoint is the worst rise off a straight edge across the width when the core is
	// one point of moisture wetter than the room; positive is hollow on the machined
	// face. As much the other way for a point drier.
	PerPoint Estimate `json:"perPoint"`
	// Rise is the worst for the reading of the core; unknown without one.
	Rise Estimate `json:"rise"`
	// Worst is when that is, in hours, and Later what is left of it after two weeks,
	// for one point.
	Worst Estimate `json:"worst"`
	Later Estimate `json:"later"`
}

// SheetBow is solid wood glued face to face to sheet goods: the pair bows with the
// seasons.
type SheetBow struct {
	Joint address.Address `json:"joint"`
	Solid address.Address `json:"solid"`
	Sheet address.Address `json:"sheet"`
	Width Figure          `json:"width"`
	// Dry and Wet are how far it stands off a straight edge at both ends of the year;
	// positive is hollow on the solid wood.
	Dry Estimate `json:"dry"`
	Wet Estimate `json:"wet"`
}
