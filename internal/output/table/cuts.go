package table

import (
	"cmp"
	"slices"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/output/tape"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Cuts lists every cut of a row's part, by the letter that it has on the
// drawing: into which side, from where to where measured from which reference,
// how wide and how deep, and whether it runs out. Equal cuts of a series share a
// row.
func Cuts(p *plan.Plan, row plan.PartRow, s Speech) Table {
	names, rounded := naming.Of(p, s), tape.Of(p, p.Units())
	b := newTable(p, s, "table.cuts").
		column("column.letter", text, 0.4).column("column.cut", text, 1.15).column("column.opens-on", text, 1.05).column("column.from-reference", text, 0.7).
		column("column.places", text, 2.2).column("column.wide", length, 0.65).column("column.depth", length, 0.65).
		column("column.runs", text, 1.35).column("column.for", text, 1.35)
	part, ok := partOf(p.Piece, row)
	if !ok {
		return b.table
	}
	for _, r := range naming.CutRows(p.Piece, part.Address) {
		b.cut(names, rounded, part, r)
	}
	return b.table
}

func partOf(p *piece.Piece, row plan.PartRow) (piece.Part, bool) {
	for _, q := range p.Parts {
		if len(row.Members) > 0 && q.Address == row.Members[0] {
			return q, true
		}
	}
	return piece.Part{}, false
}

func (b *builder) cut(names *naming.Names, rounded *tape.Tape, part piece.Part, r naming.CutRow) {
	c := r.Cuts[0]
	kind := b.say("cut." + string(c.Kind))
	if n := len(r.Cuts); n > 1 {
		kind = b.say("cut-times", message.Text("cut", kind), message.Count("n", n))
	}
	letter := b.speech.Own(r.Letter)
	side := func(s piece.Side) string { return b.say(naming.Side(part, s)) }
	switch {
	case c.Slot != nil:
		s := c.Slot
		runs := b.say("runs.through")
		if !s.StartOpen || !s.EndOpen {
			runs = b.length(s.From) + " – " + b.length(s.To)
		}
		b.row(letter, kind, side(s.Open), b.side(piece.SideOf(s.Across(), false)), b.places(r), b.speech.Figure(rounded.Width(c, naming.Wide(s))), b.speech.Figure(rounded.Depth(c, s.Depth.Nm)), runs, b.purpose(names, r))
	case c.Bore != nil:
		depth := b.length(c.Bore.Depth)
		if c.Bore.Through {
			depth = b.say("runs.through")
		}
		b.row(letter, kind, side(c.Bore.Open), b.centre(c.Bore.Open), b.length(c.Bore.At[0])+" · "+b.length(c.Bore.At[1]), "⌀ "+b.speech.Figure(rounded.Width(c, c.Bore.Diameter.Nm)), depth, b.mouth(c.Bore.Sink), b.purpose(names, r))
	case c.Dip != nil:
		low := c.Dip.Centre.Nm - c.Dip.Chord.Nm/2
		along := piece.EndLow
		if axis, _ := c.Dip.Open.Axis(); axis == piece.AlongLength {
			along = piece.EdgeLow
		}
		b.row(letter, kind, side(c.Dip.Open), b.side(along), b.speech.Figure(low)+" – "+b.speech.Figure(low+c.Dip.Chord.Nm), b.length(c.Dip.Chord), b.length(c.Dip.Depth),
			b.say("runs.arc", message.Text("radius", b.speech.Figure(naming.Radius(c.Dip)))), "")
	case c.Ease != nil:
		runs := b.say("runs.through")
		if c.Ease.To.Nm > 0 {
			runs = b.length(c.Ease.From) + " – " + b.length(c.Ease.To)
		}
		b.row(letter, b.eased(c.Ease), side(c.Ease.Sides[0]), "", b.say("runs.along", message.Text("side", side(c.Ease.Sides[1]))), "", b.length(c.Ease.Radius), runs, "")
	case c.Slice != nil:
		b.slice(letter, kind, part, c.Slice)
	case c.Pocket != nil:
		b.pocket(letter, kind, part, c.Pocket)
	}
}

// eased names an edge taken off by its shape.
func (b *builder) eased(e *piece.Ease) string {
	switch {
	case e.Chamfer:
		return b.say("cut.chamfer")
	case e.Cove:
		return b.say("cut.cove")
	}
	return b.say("cut.eased")
}

// places gives the stretch of a cut, or the middles of several.
func (b *builder) places(r naming.CutRow) string {
	s := r.Cuts[0].Slot
	if r.Cuts[0].Kind != piece.Channel && len(r.Cuts) == 1 {
		return b.length(s.Near) + " – " + b.length(s.Far)
	}
	var at []unit.Length
	for _, c := range byPlace(r.Cuts) {
		at = append(at, (c.Slot.Near.Nm+c.Slot.Far.Nm)/2)
	}
	var middles []string
	for _, m := range at {
		middles = append(middles, b.speech.Figure(m))
	}
	return b.say("places.middles", message.Text("places", strings.Join(middles, " · ")))
}

func (b *builder) side(s piece.Side) string { return b.say("side." + string(s)) }

// byPlace orders the slots of a row from the low edge, so that places and what they
// are for stand in one order.
func byPlace(cuts []piece.Cut) []piece.Cut {
	return slices.SortedStableFunc(slices.Values(cuts), func(a, b piece.Cut) int {
		if a.Slot == nil || b.Slot == nil {
			return 0
		}
		return cmp.Compare(a.Slot.Near.Nm+a.Slot.Far.Nm, b.Slot.Near.Nm+b.Slot.Far.Nm)
	})
}

// purpose names what the cuts take: the things, or the mark of the part that goes
// in.
func (b *builder) purpose(names *naming.Names, r naming.CutRow) string {
	var keys []string
	last := ""
	for _, c := range byPlace(r.Cuts) {
		if c.Key == "" {
			continue
		}
		stem := strings.TrimSuffix(c.Key, lastWord(c.Key))
		if stem != "" && stem == last {
			keys[len(keys)-1] += " " + lastWord(c.Key)
			continue
		}
		last = stem
		keys = append(keys, c.Key)
	}
	if len(keys) > 0 {
		return b.speech.Own(strings.Join(keys, ", "))
	}
	return own(b.speech, names.Mark(r.Cuts[0].With))
}
