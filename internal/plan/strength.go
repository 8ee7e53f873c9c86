package plan

import (
	"scantling/internal/address"
)

// Strength is what load does to the piece. All of it are estimates.
type Strength struct {
	Shelves  []Shelf     `json:"shelves,omitempty"`
	Cases    []Racking   `json:"cases,omitempty"`
	Standing []Standing  `json:"standing,omitempty"`
	Joints   []JointHold `json:"joints,omitempty"`
	Drawers  []DrawerRun `json:"drawers,omitempty"`
}

// Shelf is a part that lies flat and carries: a shelf, or a bottom.
type Shelf struct {
	Part address.Address `json:"part"`
	// Kind is "shelf", "top", "bottom" or "bottom on feet".
	Kind string `json:"kind"`
	// Span is what it bridges, without what lies in its supports.
	Span Figure `json:"span"`
	// Across says that it spans across its grain, where wood is weak.
	Across bool `json:"across,omitempty"`
	// On is the board on which the upright under this one stands, where that board bridges
	// the same gap: the two go down together, and the upright holds nothing up.
	On    address.Address `json:"on,omitempty"`
	Loads []ShelfSag      `json:"loads"`
	// Seen is the sag from which an eye sees it (1/32 in to the foot, or the rule of the
	// house "sag to the foot") and Design what to
	// design for at once (0.02 in to the foot), common practice; Allowed is 1/144 of
	// the span (Architectural Woodwork Standards, 2009).
	Seen    Figure `json:"seen"`
	Design  Figure `json:"design"`
	Allowed Figure `json:"allowed"`
}

// ShelfSag is what one load does to a shelf.
type ShelfSag struct {
	// Case is "contents" (with its own weight), "shelf load" (the house rule), or, to
	// judge by, "books" and "other" (Architectural Woodwork Standards: 50 and 40 lb
	// to the square foot).
	Case string `json:"case"`
	// Load is the whole load, AtOnce the sag under it, Lasting the sag after years.
	Load    Estimate `json:"load"`
	AtOnce  Estimate `json:"atOnce"`
	Lasting Estimate `json:"lasting"`
	// Upright is what an upright that stands on it hands down besides, in its middle.
	Upright Estimate `json:"upright,omitzero"`
}

// Racking is a case pushed sideways at its top.
type Racking struct {
	Group address.Address `json:"group"`
	High  Figure          `json:"high"`
	Push  Estimate        `json:"push"`
	// Back is "glued", "fixed", "loose" or "open": a back that is glued or fixed all
	// round holds the case, Panel is then how far the top moves.
	Back  string   `json:"back"`
	Panel Estimate `json:"panel,omitzero"`
	// Corners counts the fixed corners; Each is the moment on one, in N m, if the
	// back does not help, and Bears what the weakest bears, with its joint.
	Corners int             `json:"corners"`
	Each    Estimate        `json:"each"`
	Bears   Estimate        `json:"bears"`
	Weakest address.Address `json:"weakest,omitempty"`
}

// Standing is a piece on its feet, with some of its drawers out. A piece without drawers
// that is lower than it is deep has none.
type Standing struct {
	// Case is "empty" or "loaded"; Out are the groups that are out: two thirds of their
	// length, or right out where no out-stop holds them.
	Case string            `json:"case"`
	Out  []address.Address `json:"out,omitempty"`
	Mass Estimate          `json:"mass"`
	// Holds is the moment about the front feet that keeps it standing, in N m; it
	// falls where this is nought or less.
	Holds Estimate `json:"holds"`
	// Soft is the same on a soft floor, its back feet 0.43 in higher (the block of ASTM
	// F2057).
	Soft Estimate `json:"soft"`
	// Pull is the level pull that tips it, at PullHigh over the floor: at the highest
	// drawer, or at the top.
	Pull     Estimate `json:"pull"`
	PullHigh Figure   `json:"pullHigh"`
	// Press is the load on the edge of the drawer that is farthest out, Before the
	// front feet, that tips it.
	Press  Estimate `json:"press,omitzero"`
	Before Figure   `json:"before,omitzero"`
	// Lean, in degrees, is how far it may be tilted forward.
	Lean Estimate `json:"lean"`
}

// JointHold is what a joint bears.
type JointHold struct {
	Joint address.Address `json:"joint"`
	Kind  string          `json:"kind"`
	Ways  []Holding       `json:"ways,omitempty"`
	// Missing says why there is no figure.
	Missing []Datum `json:"missing,omitempty"`
}

// Holding is what a joint bears in one way.
type Holding struct {
	// Way is "dowels pull out", "screws pull out", "nails pull out", "screws pushed sideways",
	// "nails pushed sideways" or "moment".
	Way   string `json:"way"`
	Count int    `json:"count,omitempty"` // of fasteners or dowels
	// Ultimate is the load of tests, of all together, and Allowed what is left of it
	// with the safety factor taken out. Forces in newtons, moments in N m.
	Ultimate Estimate `json:"ultimate"`
	Allowed  Estimate `json:"allowed"`
}

// DrawerRun is how a drawer runs in its opening.
type DrawerRun struct {
	Fit   address.Address `json:"fit"`
	Moves address.Address `json:"moves"`
	Width Figure          `json:"width"`
	Long  Figure          `json:"long"`
	// JamsBeyond is how far off its middle it may be pulled before it sticks, shut;
	// SticksAt how much of it must be in the opening for it to run when it is pulled at
	// one corner. By friction of dry wood; waxed are the same with wax.
	JamsBeyond Estimate `json:"jamsBeyond"`
	SticksAt   Estimate `json:"sticksAt"`
	Waxed      Estimate `json:"waxed"`
	// CornerPull is "runs", "may stick" or "sticks" for a pull at one corner, shut.
	CornerPull string `json:"cornerPull"`
	// Wobble is how far its front swings to each side when it is half out.
	Wobble Estimate `json:"wobble"`
}
