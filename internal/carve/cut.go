package carve

import (
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/piece"
)

// cutting is one block on one part while it is worked out.
type cutting struct {
	Site
	name string // of the cut in the ledger
	out  piece.Cut
	more []piece.Cut // where one block makes several
}

// Cuts works out what a cut block takes from one part; nothing where something
// is wrong, which has been reported.
func Cuts(s Site) []piece.Cut {
	c := newCutting(s)
	if c.work() {
		return []piece.Cut{c.out}
	}
	return c.more
}

func newCutting(s Site) *cutting {
	return &cutting{Site: s, name: string(s.Address), out: piece.Cut{Address: s.Address, Part: s.Part.Address, After: s.After, Where: s.Block.Where}}
}

var slotKinds = map[string]piece.CutKind{
	"trough": piece.Trough, "groove": piece.Groove, "rebate": piece.Rebate, "housing": piece.Housing,
	"notch": piece.Notch, "recess": piece.Recess, "channel": piece.Channel, "V channel": piece.VChannel, "mortise": piece.Mortise,
}

const cutKindWords = "groove, rebate, housing, channel, V channel, trough, hole, recess, mortise, notch, taper, bevel, mitre, compound angle, " +
	"curved outline, scoop, chamfer, round-over, cove, eased, lid"

func (c *cutting) work() bool {
	word := c.Words("kind")
	c.out.Cutter = c.cutter()
	switch word {
	case "":
		if !c.Has("kind") {
			c.Missing("kind")
		}
		return false
	case "hole":
		return c.hole()
	case "scoop":
		return c.scoop()
	case "eased", "chamfer", "round-over", "cove":
		return c.eased(word)
	case "taper":
		return c.taper()
	case "bevel":
		return c.bevel()
	case "mitre":
		return c.mitre()
	case "compound angle":
		return c.compound()
	case "curved outline":
		return c.curved()
	case "notch", "recess":
		if c.Has("outline") {
			c.out.Kind = slotKinds[word]
			return c.pocket()
		}
	}
	kind, ok := slotKinds[word]
	if !ok {
		c.BadWord("kind", word, splitWords(cutKindWords))
		return false
	}
	c.out.Kind = kind
	return c.slot()
}

// cutter returns the shop's name of the cutter that the design asks for, by that
// name or by shape and diameter.
func (c *cutting) cutter() string {
	id := c.Words("cutter")
	if id == "" {
		return ""
	}
	if k, ok := c.Shop.CutterFor(id, c.Maker.Bare); ok {
		return k.ID
	}
	var names []string
	for _, k := range c.Shop.Cutters {
		names = append(names, k.ID)
	}
	c.NotKnown(fault.CodeNoCutter, "cutter", id, names)
	return ""
}

// need works out a length that the cut cannot do without.
func (c *cutting) need(attribute string) (formula.Value, bool) {
	return c.Need(attribute, c.name+"."+attribute)
}

// open works out the side that the cut goes into.
func (c *cutting) open(attribute string) (piece.Side, piece.Axis, bool) {
	if !c.Has(attribute) {
		c.Missing(attribute)
		return "", 0, false
	}
	word := c.Words(attribute)
	d, ok := direction.Facing(word, c.Part.Hand)
	if !ok {
		if word != "" {
			c.BadWord(attribute, word, splitWords("left, right, front, back, top, bottom"))
		}
		return "", 0, false
	}
	axis, _ := d.Axis()
	return c.Part.Frame.SideToward(d), axis, true
}

// local turns a distance along an axis of the piece into one along the part's
// own axis, from its local origin. A plain length counts from the part's low end
// there (from the mirrored end for the right one of a pair); a position is where
// it is.
func (c *cutting) local(axis piece.Axis, v formula.Value) piece.Figure {
	figure := c.figure(v)
	mirrored := c.Part.Hand == "right" && axis == piece.Right
	if v.Position != nil && v.Position.Axis == int(axis) {
		figure = c.Maker.Ledger.Less("", c.figure(c.Carried(v)), c.Part.Extent[axis].Low)
		mirrored = false
	}
	if _, sign := c.Part.Frame.LocalOf(axis); (sign < 0) != mirrored {
		figure = c.Maker.Ledger.Less("", c.size(axis), figure)
	}
	return figure
}

// size is the part's size along an axis of the piece.
func (c *cutting) size(axis piece.Axis) piece.Figure {
	local, _ := c.Part.Frame.LocalOf(axis)
	return c.Part.Sizes()[local]
}

// stretch turns two places along an axis into the part's own axis, low first.
func (c *cutting) stretch(axis piece.Axis, from, to formula.Value) (low, high piece.Figure) {
	low, high = c.local(axis, from), c.local(axis, to)
	if low.Nm > high.Nm {
		low, high = high, low
	}
	return low, high
}
