package plan

import (
	"scantling/internal/address"
	"scantling/internal/piece"
)

// Removal is one step of taking a group apart by hand: what is taken slides off
// what is left. The removals of a group are in order; turned round, they put it
// together. What is taken together comes apart among itself in later removals.
type Removal struct {
	// Group is what is taken apart; "" is the whole piece.
	Group address.Address `json:"group,omitempty"`
	// Taken are parts of the group, or groups in it, that move as one.
	Taken []address.Address `json:"taken"`
	// Way is the way that they slide, "" if it lies along no axis of the piece.
	Way piece.Direction `json:"way,omitempty"`
	// Along is the same as a vector of length one by right, back and up.
	Along [3]float64 `json:"along"`
	// Far is how far they slide until they are clear of what is left; nought where
	// nothing lies over them.
	Far Figure `json:"far"`
}
