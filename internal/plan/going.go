package plan

import (
	"scantling/internal/address"
	"scantling/internal/piece"
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

// WidthOf is what the width of a cut does: a part of the piece goes into a groove,
// housing, halving, mortise or rebate, and into a hole what is bought. A cut that
// nothing is let into, and one as wide as what cuts it, matches.
func WidthOf(c piece.Cut) Goes {
	switch c.Kind {
	case piece.Groove, piece.Housing, piece.Halving, piece.Mortise, piece.Rebate:
		if c.With != "" {
			return Takes
		}
	case piece.Hole, piece.ScrewSlot:
		if c.With != "" || c.Joint != "" {
			return Takes
		}
	}
	return Matches
}

// DepthOf is what the depth of a cut does: what stands in a groove or a mortise must
// not touch its bottom before its shoulders close or its panel has moved. What stands
// in a housing or a halving touches it, and a depth there says where parts come.
func DepthOf(c piece.Cut) Goes {
	if c.With != "" && (c.Kind == piece.Groove || c.Kind == piece.Mortise) {
		return Takes
	}
	return Matches
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
