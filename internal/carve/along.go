package carve

import (
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// along works out where a slot begins and ends along its run; without words it
// runs through.
//
// What lies square-ended in a channel lies flat only as far as the bottom is flat:
// at an end that a turning cutter leaves, the mouth reaches further than the bottom
// by the end's radius, or, where a round nose does not go down to its radius, by
// half the mouth that it leaves. "holds" (in a series "flat") asks for the flat length, "from", "to" and
// "length" for the mouth's.
func (c *cutting) along(s *piece.Slot, run piece.Axis) bool {
	l := c.Maker.Ledger
	whole := c.size(run)
	s.From, s.To = l.Leaf(c.name+".from", 0, ledger.Derived, ""), whole
	stops := false
	for _, word := range []string{"from", "to", "middle", "length"} {
		stops = stops || c.Has(word)
	}
	stops = stops || c.lies() != ""
	if !stops {
		s.StartOpen, s.EndOpen = true, true
		return true
	}
	radius, ok := c.ended(s)
	if !ok {
		return false
	}
	reach := c.reach(s, radius)
	start, end, ok := c.stations(run, whole, reach)
	if !ok {
		return false
	}
	s.From, s.To = c.stretch(run, start, end)
	s.StartOpen, s.EndOpen = s.From.Nm <= 0, s.To.Nm >= whole.Nm
	if radius.Nm <= 0 || s.StartOpen && s.EndOpen {
		return true
	}
	s.EndRadius = radius
	flat := []piece.Figure{s.To, s.From}
	for _, open := range []bool{s.StartOpen, s.EndOpen} {
		if !open {
			flat = append(flat, reach)
		}
	}
	return c.usable(l.Less(c.name+".usable", flat...))
}

// usable sees to it that a channel between two given ends still has the flat
// bottom that is asked for.
func (c *cutting) usable(flat piece.Figure) bool {
	if c.lies() == "" || !c.Has("from") || !c.Has("to") {
		return true
	}
	want, ok := c.lying()
	if ok && flat.Nm < want.Nm {
		c.Fault(fault.CodeShort, c.Where(c.lies()), message.Text("name", c.Name), message.Length("want", want.Nm), message.Length("got", flat.Nm), message.Length("short", want.Nm-flat.Nm))
		return false
	}
	return ok
}

// lies is the word that says what must lie flat: "holds" of a cut; of a series,
// which holds things, "flat". Empty if nothing is said.
func (c *cutting) lies() string {
	word := "holds"
	if c.Block.Type == "series" {
		word = "flat"
	}
	if !c.Has(word) {
		return ""
	}
	return word
}

// lying is the length that must lie flat: what the channel holds, and its play.
func (c *cutting) lying() (piece.Figure, bool) {
	word := c.lies()
	v, ok := c.need(word)
	if !ok || !c.Positive(v, word, c.name+"."+word) {
		return piece.Figure{}, false
	}
	if !c.Has("play") || word == "flat" {
		return c.figure(v), true
	}
	play, ok := c.need("play")
	if !ok {
		return piece.Figure{}, false
	}
	return c.Maker.Ledger.Sum(c.name+".lying", c.figure(v), c.figure(play)), true
}

// reach is how much further the mouth reaches than the flat bottom at a stopped
// end of a radius.
func (c *cutting) reach(s *piece.Slot, radius piece.Figure) piece.Figure {
	l := c.Maker.Ledger
	if radius.Nm <= 0 || s.Corner.Nm <= s.Depth.Nm {
		return radius
	}
	ball, err := l.Call("", "nose_reach", s.Corner.Entry, s.Depth.Entry)
	if err != nil {
		return radius
	}
	return l.Sum(c.name+".reach", l.Less("", radius, s.Corner), ball)
}

// stations works out the two ends of the mouth, as they are written: two of from,
// to and a length, or a middle and a length.
func (c *cutting) stations(run piece.Axis, whole, reach piece.Figure) (start, end formula.Value, ok bool) {
	zero := c.Maker.Ledger.Leaf(c.name+".from", 0, ledger.Derived, "")
	start, end = quantity(zero), quantity(whole)
	for i, at := range []*formula.Value{&start, &end} {
		if word := [2]string{"from", "to"}[i]; c.Has(word) {
			if *at, ok = c.need(word); !ok {
				return start, end, false
			}
		}
	}
	if c.Has("from") && c.Has("to") || !c.Has("middle") && !c.Has("length") && c.lies() == "" {
		return start, end, true
	}
	open := func(v formula.Value) bool {
		at := c.local(run, v)
		return at.Nm <= 0 || at.Nm >= whole.Nm
	}
	switch {
	case c.Has("from"):
		long, ok := c.mouth(reach, open(start))
		return start, c.shifted(start, ledger.OpAdd, long), ok
	case c.Has("to"):
		long, ok := c.mouth(reach, open(end))
		return c.shifted(end, ledger.OpSub, long), end, ok
	case c.Has("middle"):
		middle, okM := c.need("middle")
		long, okL := c.mouth(reach, false)
		if !okM || !okL {
			return start, end, false
		}
		half := c.Maker.Ledger.Half("", long)
		return c.shifted(middle, ledger.OpSub, half), c.shifted(middle, ledger.OpAdd, half), true
	}
	c.Fault(fault.CodeAlong, c.Block.Where, message.Text("name", c.Name))
	return start, end, false
}

// mouth is the length of the mouth: as said, or what must lie flat and the round
// ends.
func (c *cutting) mouth(reach piece.Figure, oneOpen bool) (piece.Figure, bool) {
	if c.lies() == "" {
		v, ok := c.need("length")
		return c.figure(v), ok && c.Positive(v, "length", c.name+".length")
	}
	flat, ok := c.lying()
	if !ok || reach.Nm <= 0 {
		return flat, ok
	}
	if oneOpen {
		return c.Maker.Ledger.Sum(c.name+".mouth", flat, reach), true
	}
	return c.Maker.Ledger.Sum(c.name+".mouth", flat, reach, reach), true
}
