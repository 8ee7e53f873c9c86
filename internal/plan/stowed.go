package plan

import (
	"scantling/internal/address"
	"scantling/internal/piece"
)

// Stowed is how a lot of equal things stands in one space.
type Stowed struct {
	// Of is the contents, In the space; empty where the document names none.
	Of address.Address `json:"of"`
	In address.Address `json:"in,omitempty"`
	// Count is how many stand there, Places how many could in its cells, More how
	// many cells besides the space would still take.
	Count  int `json:"count"`
	Places int `json:"places"`
	More   int `json:"more,omitempty"`
	// Needs is what they need across, along and up, made up of Sums; Has what is
	// clear there, Spare what is left: below nought they do not go in.
	Needs [3]Figure         `json:"needs"`
	Sums  [3][]piece.Addend `json:"sums"`
	Has   [3]Figure         `json:"has,omitzero"`
	Spare [3]Figure         `json:"spare,omitzero"`
	// Beside names the other contents of the same space, which stand beside it in the
	// direction Along ("right", "back", "up"); Spare is then what is left of all.
	Beside []address.Address `json:"beside,omitempty"`
	Along  string            `json:"along,omitempty"`
	// Grams is the mass of what stands there; nought where it is not said.
	Grams float64 `json:"grams,omitempty"`
}
