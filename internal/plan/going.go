package plan

import (
	"scantling/internal/address"
	"scantling/internal/unit"
)

// Goes is what a size does at its ends.
type Goes string

// What sizes do. Matches is the zero value: a length that must be as others are.
const (
	Matches Goes = ""
	GoesIn  Goes = "in"    // goes into something: too large, it cannot be put there
	Takes   Goes = "takes" // something must go between
)

// Going is what a size does, and the joint, fit or space that it follows from.
type Going struct {
	What Goes            `json:"what,omitempty"`
	By   address.Address `json:"by,omitempty"`
}

// Rounding is the side to which such a size is rounded: what goes in down, what takes
// something up, what must match others to the nearest.
func (g Goes) Rounding() unit.Rounding {
	switch g {
	case GoesIn:
		return unit.Down
	case Takes:
		return unit.Up
	}
	return unit.Nearest
}

// Sizes returns length, width and thickness.
func (r PartRow) Sizes() [3]Figure { return [3]Figure{r.Length, r.Width, r.Thickness} }

// Units returns what the plan is worked to and printed in: for an edition in both,
// what the shop works to.
func (p *Plan) Units() unit.System {
	switch e := unit.System(p.Piece.Edition); {
	case e == unit.Inches, e == unit.Both && p.Shop.Units == string(unit.Inches):
		return unit.Inches
	}
	return unit.Metric
}

// Second returns what the sheet of second sizes is in, if the edition asks for one.
func (p *Plan) Second() (unit.System, bool) {
	switch {
	case unit.System(p.Piece.Edition) != unit.Both:
		return "", false
	case p.Units() == unit.Inches:
		return unit.Metric, true
	}
	return unit.Inches, true
}

// Show is how the plan's lengths are shown in one system.
func (p *Plan) Show(system unit.System) unit.Show {
	return unit.Show{System: system, Resolution: p.Shop.Resolution.Nm, Denominator: p.Shop.Denominator}
}
