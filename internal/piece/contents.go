package piece

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Contents is what goes inside: rods that lie in channels, each with its place, or
// a lot of equal things in columns and rows.
type Contents struct {
	Address address.Address `json:"address"`
	Label   string          `json:"label,omitempty"`
	// Kind is "rod", "jar", "bottle", "box", "sheet" or "coin".
	Kind string `json:"kind"`
	// Things are the rods, one by one; Lot is what all other kinds have instead.
	Things []Thing `json:"things"`
	Lot    *Lot    `json:"lot,omitempty"`
	// Count is how many there are in all; they are dealt out to Among equal places
	// (drawers, boxes), 1 where nothing is said. For rods it is as many as Things.
	Count int `json:"count,omitempty"`
	Among int `json:"among,omitempty"`
	Spare int `json:"spare,omitempty"`
	// Wanted is how many room is made for, with growth and spare places; nought for rods.
	Wanted int `json:"wanted,omitempty"`
	// Play is the room beside a thing in its cell, or at the ends of a rod; Lining
	// the thickness of what a channel or floor is lined with; Finger the room for
	// thumb and finger (between rods; in front of a lot); nought where not said.
	Play   Figure `json:"play"`
	Lining Figure `json:"lining,omitzero"`
	Finger Figure `json:"finger,omitzero"`
	// Mass is that of one thing; no value where it is not said.
	Mass Amount `json:"mass,omitzero"`
	// Sharp is whether they have cutting edges that a hand can meet.
	Sharp bool `json:"sharp,omitempty"`
	// In lists the spaces that hold it, Through those that it is put in and taken out
	// through.
	In      []address.Address `json:"in,omitempty"`
	Through []address.Address `json:"through,omitempty"`
	// From names the row of a catalogue that sizes were taken from, with its status
	// ("memory"), for all that are not measured.
	From   string     `json:"from,omitempty"`
	Status string     `json:"status,omitempty"`
	Where  diag.Place `json:"where"`
}

// All returns how many things there may be once: those of today, those that will have been
// added, and those that spare places wait for.
func (c Contents) All() int { return max(c.Count, c.Wanted) }

// Each returns how many things may stand in one of the equal places, the fullest.
func (c Contents) Each() int {
	if c.Among < 2 {
		return c.All()
	}
	return (c.All() + c.Among - 1) / c.Among
}

// Grams returns the mass of one thing in grams; false where it is not said.
func (c Contents) Grams() (float64, bool) {
	return c.Mass.Value.Float(), c.Mass.Value.Dim() == unit.DimMass
}

// Amount is a quantity other than a length with its line in the ledger.
type Amount struct {
	Value unit.Value `json:"value"`
	Entry ledger.ID  `json:"entry"`
}

// Thing is one thing of the contents. A rod has a diameter, a length and, if it
// has a head, the head's diameter and length (the length over all includes it).
type Thing struct {
	Key string `json:"key"` // "4.0 a": the size and a letter
	// Diameter of a rod with flats is its size across corners.
	Diameter   Figure `json:"diameter"`
	Length     Figure `json:"length"`
	HeadWidth  Figure `json:"headWidth,omitzero"`
	HeadLength Figure `json:"headLength,omitzero"`
	// Sides is how many flats it has, 0 for a round one; Flats the size across them.
	Sides int    `json:"sides,omitempty"`
	Flats Figure `json:"flats,omitzero"`
	// In is the part that holds it and Cut the channel that it lies in.
	In  address.Address `json:"in,omitempty"`
	Cut address.Address `json:"cut,omitempty"`
	// Note carries what the author wants said of it.
	Note message.Message `json:"note,omitzero"`
}

// Lot is equal things in columns (side by side), rows (one behind the other) and
// stacks, in cells.
type Lot struct {
	// Size is one thing as it stands: across, along, up.
	Size [3]Figure `json:"size"`
	// Diameter, Cap and Shoulder are a bottle's: the shoulder is the height up to
	// which it is as thick as its diameter. Thick is a sheet's or coin's.
	Diameter Figure `json:"diameter,omitzero"`
	Cap      Figure `json:"cap,omitzero"`
	Shoulder Figure `json:"shoulder,omitzero"`
	Thick    Figure `json:"thick,omitzero"`

	Columns int `json:"columns"`
	Rows    int `json:"rows"`
	Stack   int `json:"stack"`
	// Cell is a cell's clear size across and along.
	Cell [2]Figure `json:"cell"`
	// Divider parts two cells, DividerHigh is how high it stands on the lining;
	// Around is left on every side, Above over the things. Nought where not said.
	Divider     Figure `json:"divider,omitzero"`
	DividerHigh Figure `json:"dividerHigh,omitzero"`
	Around      Figure `json:"around,omitzero"`
	Above       Figure `json:"above,omitzero"`
	// Needs is the least clear inside size across, along and up; Sums how each is
	// made up.
	Needs [3]Figure   `json:"needs"`
	Sums  [3][]Addend `json:"sums"`
	// Lid is a hinged lid that must swing clear of them.
	Lid *Lid `json:"lid,omitempty"`
}

// Places returns how many cells there are in one place, stacks counted.
func (l Lot) Places() int { return l.Columns * l.Rows * l.Stack }

// Addend is one part of a sum: so many times a figure.
type Addend struct {
	// Word says what it is: "things", "play", "flip", "dividers", "around",
	// "finger", "lining", "above".
	Word   string `json:"word"`
	Times  int    `json:"times"`
	Each   Figure `json:"each"`
	Figure Figure `json:"figure"`
}

// Lid is a lid hinged at the back, seen from the side: Arm is from the hinge line
// to the inner edge of its front wall, Rim how high over the inside floor the base
// ends, Back from the hinge line to the inside face of the back wall.
type Lid struct {
	Arm  Figure `json:"arm"`
	Rim  Figure `json:"rim"`
	Back Figure `json:"back"`
}
