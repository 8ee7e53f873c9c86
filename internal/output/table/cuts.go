package table

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Cuts lists every cut of a row's part: from which reference it is measured,
// from where to where, how wide and how deep, and whether it runs out.
func Cuts(p *plan.Plan, row plan.PartRow, s Speech) Table {
	b := newTable(s, "table.cuts").
		column("column.cut", false, 1).column("column.opens-on", false, 0.9).column("column.from-reference", false, 1.1).
		column("column.near", true, 0.8).column("column.far", true, 0.8).column("column.depth", true, 0.8).
		column("column.runs", false, 1.6).column("column.for", false, 1.2)
	for _, c := range cutsOf(p.Piece, row.Members[0]) {
		b.cut(p, c)
	}
	return b.table
}

func cutsOf(p *piece.Piece, part address.Address) []piece.Cut {
	var out []piece.Cut
	for _, c := range p.Cuts {
		if c.Part == part {
			out = append(out, c)
		}
	}
	return out
}

func (b *builder) cut(p *plan.Plan, c piece.Cut) {
	kind := b.say("cut." + string(c.Kind))
	purpose := b.purpose(p, c)
	switch {
	case c.Slot != nil:
		s := c.Slot
		runs := b.say("runs.through")
		if !s.StartOpen || !s.EndOpen {
			runs = b.length(s.From) + " – " + b.length(s.To)
		}
		b.row(kind, b.side(s.Open), b.side(piece.SideOf(s.Across(), false)), b.length(s.Near), b.length(s.Far), b.length(s.Depth), runs, purpose)
	case c.Bore != nil:
		depth := b.length(c.Bore.Depth)
		if c.Bore.Through {
			depth = b.say("runs.through")
		}
		b.row(kind+" ⌀ "+b.length(c.Bore.Diameter), b.side(c.Bore.Open), "", b.length(c.Bore.At[0]), b.length(c.Bore.At[1]), depth, "", purpose)
	case c.Dip != nil:
		low := c.Dip.Centre.Nm - c.Dip.Chord.Nm/2
		b.row(kind, b.side(c.Dip.Open), b.side(piece.EndLow), b.speech.Length(low), b.speech.Length(low+c.Dip.Chord.Nm), b.length(c.Dip.Depth), b.say("runs.arc", message.Length("radius", radius(c.Dip))), purpose)
	case c.Ease != nil:
		b.row(kind, b.side(c.Ease.Sides[0]), b.side(c.Ease.Sides[1]), "", "", b.length(c.Ease.Radius), b.say("runs.through"), purpose)
	}
}

// radius of a dip's arc: (chord² + 4 depth²) / (8 depth).
func radius(d *piece.Dip) unit.Length {
	c, h := d.Chord.Nm.Millimetres(), d.Depth.Nm.Millimetres()
	if h == 0 {
		return 0
	}
	return unit.FromMillimetres((float64(c*c) + float64(4*h*h)) / (8 * h))
}

func (b *builder) side(s piece.Side) string { return b.say("side." + string(s)) }

// purpose names what the cut takes: the thing, or the mark of the part that goes
// in.
func (b *builder) purpose(p *plan.Plan, c piece.Cut) string {
	if c.Key != "" {
		return c.Key
	}
	for _, r := range p.Parts {
		if slices.Contains(r.Members, c.With) {
			return r.Mark
		}
	}
	return ""
}
