package carve

import (
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
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
	"notch": piece.Notch, "recess": piece.Recess, "channel": piece.Channel,
}

const cutKindWords = "trough, groove, rebate, housing, notch, recess, channel, hole, scoop, eased"

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
	case "eased":
		return c.eased()
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
	c.NotKnown(CodeNoCutter, "cutter", id, names)
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
	d, ok := Facing(word, c.Part.Hand)
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
		figure = c.Maker.Ledger.Less("", c.along(axis), figure)
	}
	return figure
}

// along is the part's size along an axis of the piece.
func (c *cutting) along(axis piece.Axis) piece.Figure {
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

// slot works out a straight cut.
func (c *cutting) slot() bool {
	side, openAxis, ok := c.open("side")
	if !ok {
		return false
	}
	run, ok := c.run(openAxis)
	if !ok {
		return false
	}
	across := 3 - openAxis - run
	near, far, ok := c.between(across)
	if !ok {
		return false
	}
	depth, ok := c.need("depth")
	if !ok || !c.Positive(depth, "depth", c.name+".depth") {
		return false
	}
	s := &piece.Slot{Open: side, Depth: c.figure(depth)}
	local, _ := c.Part.Frame.LocalOf(run)
	s.Run = local
	s.Near, s.Far = c.stretch(across, near, far)
	whole := c.along(run)
	s.From, s.To, ok = c.limits(run, whole)
	s.StartOpen, s.EndOpen = s.From.Nm <= 0, s.To.Nm >= whole.Nm
	if k, found := c.Shop.Cutter(c.out.Cutter); found && k.Tool.NoseRadius() > 0 {
		id := c.Maker.Ledger.Given(ledger.Entry{Name: c.name + ".corner", Value: unit.OfLength(k.Tool.NoseRadius()), Origin: ledger.Bought, Where: k.Where})
		s.Corner = c.Maker.Ledger.Figure(id)
	}
	c.out.Slot = s
	return ok && c.fits(s, openAxis, across)
}

// run works out the axis that a slot runs along: as said, or along the grain.
func (c *cutting) run(open piece.Axis) (piece.Axis, bool) {
	if !c.Has("runs") {
		grain, _ := c.Part.Frame.Length.Axis()
		return grain, grain != open
	}
	word := c.Words("runs")
	d, ok := ways[word]
	axis, _ := d.Axis()
	if !ok || axis == open {
		if word != "" {
			c.BadWord("runs", word, splitWords("right, back, up"))
		}
		return 0, false
	}
	return axis, true
}

// between works out where a slot lies across its run: near and far, or a centre
// and a width, or one side and a width.
func (c *cutting) between(across piece.Axis) (near, far formula.Value, ok bool) {
	has := c.Block.Has
	switch {
	case has("near") && has("far"):
		near, okN := c.need("near")
		far, okF := c.need("far")
		return near, far, okN && okF
	case has("centre") && has("width"):
		centre, okC := c.need("centre")
		width, okW := c.need("width")
		if !okC || !okW {
			return near, far, false
		}
		half := c.Maker.Ledger.Half("", c.figure(width))
		return c.shifted(centre, ledger.OpSub, half), c.shifted(centre, ledger.OpAdd, half), true
	case has("near") && has("width"):
		near, okN := c.need("near")
		width, okW := c.need("width")
		if !okN || !okW {
			return near, far, false
		}
		return near, c.shifted(near, ledger.OpAdd, c.figure(width)), true
	}
	c.Fault(CodeCutPlace, c.Block.Where, message.Text("name", c.Name))
	return near, far, false
}

// shifted moves a length or a position by another length.
func (c *cutting) shifted(v formula.Value, op ledger.Op, by piece.Figure) formula.Value {
	out := quantity(c.Maker.Ledger.Figure(c.make(op, v.Entry, by.Entry)))
	if v.Position != nil {
		out.Position = &formula.Position{Axis: v.Position.Axis, Frame: v.Position.Frame}
	}
	return out
}

// limits works out where a slot begins and ends along its run; without words it
// runs through.
func (c *cutting) limits(run piece.Axis, whole piece.Figure) (from, to piece.Figure, ok bool) {
	from, to = c.Maker.Ledger.Leaf(c.name+".from", 0, ledger.Derived, ""), whole
	if !c.Has("from") && !c.Has("to") {
		return from, to, true
	}
	start, end := quantity(from), quantity(whole)
	if c.Has("from") {
		if start, ok = c.need("from"); !ok {
			return from, to, false
		}
	}
	if c.Has("to") {
		if end, ok = c.need("to"); !ok {
			return from, to, false
		}
	}
	from, to = c.stretch(run, start, end)
	return from, to, true
}

// fits sees to it that a slot has a width and leaves something of the part.
func (c *cutting) fits(s *piece.Slot, open, across piece.Axis) bool {
	deep := c.along(open)
	switch {
	case s.Far.Nm <= s.Near.Nm || s.To.Nm <= s.From.Nm:
		c.Fault(formula.CodeNotPositive, c.Block.Where, message.Text("name", c.name), message.Length("got", s.Far.Nm-s.Near.Nm))
		return false
	case s.Far.Nm <= 0 || s.Near.Nm >= c.along(across).Nm:
		c.Fault(CodeCutMisses, c.Block.Where, message.Text("name", c.Name), message.Length("near", s.Near.Nm), message.Length("width", c.along(across).Nm))
		return false
	case s.Depth.Nm >= deep.Nm && c.out.Kind != piece.Notch:
		c.Fault(CodeCutThrough, c.Block.Where, message.Text("name", c.Name), message.Length("depth", s.Depth.Nm), message.Length("thickness", deep.Nm))
		return false
	}
	return true
}
