package table

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// estimates begins a table of estimates: of what, how, what it comes to, the range
// that the sources allow, and how well it is known.
func estimates(p *plan.Plan, s Speech, title string) (*builder, *naming.Names) {
	b := newTable(p, s, title).
		column("column.part", text, 1.3).column("column.how", text, 2.2).column("column.comes-to", text, 1.3).
		column("column.between", text, 1.4).column("column.status", text, 1)
	b.table.Note = ""
	return b, naming.Of(p, s)
}

// estimate adds a row for one, unless there is such a row in the group already.
func (b *builder) estimate(what, how string, e plan.Estimate) {
	if !e.Known() {
		var lacks []message.Arg
		for _, d := range e.Missing {
			lacks = append(lacks, message.Word("datum", "datum."+strings.ReplaceAll(cmp.Or(string(d), "load"), " ", "-")))
		}
		b.once(what, how, b.say("estimate.unknown"), b.say("estimate.missing", message.List("data", lacks...)), "–")
		return
	}
	span := "–"
	if low, high := b.amount(e, e.Low), b.amount(e, e.High); low != high {
		span = b.say("supply.range", message.Text("low", low), message.Text("high", high))
	}
	b.once(what, how, b.amount(e, e.Value), span, b.say("figure-status."+cmp.Or(string(e.Source.Status), "memory")))
}

// once adds a row that is not there yet since the last heading: parts of which the same
// is told share one.
func (b *builder) once(cells ...string) {
	for i := len(b.table.Rows) - 1; i >= 0; i-- {
		if r := b.table.Rows[i]; slices.Equal(r[1:], cells[1:]) {
			if !slices.Contains(strings.Split(r[0], ", "), cells[0]) {
				r[0] += ", " + cells[0]
			}
			return
		}
		if _, heading := b.table.Groups[i]; heading {
			break
		}
	}
	b.row(cells...)
}

// amount writes a value of an estimate with its unit, to three digits.
func (b *builder) amount(e plan.Estimate, v unit.Value) string {
	if l, ok := v.Length(); ok {
		shown := b.speech.Length(l)
		if l != 0 && shown == b.speech.Length(0) {
			return b.say("estimate.next-to-nothing")
		}
		return shown
	}
	x, in := v.Float(), cmp.Or(e.Unit, string(v.Dim()))
	if v.Dim() == unit.DimMass {
		x /= 1000
	}
	if x != 0 {
		x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	}
	return b.say("estimate.in."+strings.ReplaceAll(in, " ", "-"), message.Text("value", strconv.FormatFloat(x, 'f', -1, 64)))
}

// marked is the mark of a part, or its name.
func marked(s Speech, names *naming.Names, a address.Address) string {
	if m := names.Mark(a); m != "" {
		return s.Own(m)
	}
	return names.Address(a)
}

// Wood lists what damp and dry air do besides moving fits: pairs that are held across
// the grain, panels in their grooves, boards that cup while they wait, wood on sheets.
func Wood(p *plan.Plan, s Speech) Table {
	b, names := estimates(p, s, "table.wood")
	for i, x := range p.Seasons.Pairs {
		if i == 0 {
			b.group(b.say("wood.pairs"))
		}
		if x.Verdict == plan.MovesFreely {
			continue
		}
		how := b.say("wood.pair", message.Word("restraint", "restraint."+string(x.Restraint)), message.Text("other", marked(s, names, x.Holds)),
			message.Length("size", x.Size.Nm), message.Word("verdict", "verdict."+strings.ReplaceAll(string(x.Verdict), " ", "-")))
		b.estimate(marked(s, names, x.Moves), how, x.Strain)
	}
	b.begin("wood.rooms", len(p.Seasons.Rooms))
	for _, x := range p.Seasons.Rooms {
		b.estimate(marked(s, names, x.Part), b.say("wood.spare"), x.Spare)
		b.estimate(marked(s, names, x.Part), b.say("wood.keeps"), x.Keeps)
	}
	b.begin("wood.cups", len(p.Seasons.Cups))
	for _, x := range p.Seasons.Cups {
		for _, k := range x.Kept {
			if k.How == "stickered" {
				continue // as on edge
			}
			how, e := "wood.cup-for-a-point", k.PerPoint
			if k.Rise.Known() {
				how, e = "wood.cup", k.Rise
			}
			b.estimate(marked(s, names, x.Parts[0]), b.say(how, message.Word("kept", "kept."+strings.ReplaceAll(k.How, " ", "-"))), e)
		}
	}
	b.begin("wood.bows", len(p.Seasons.Bows))
	for _, x := range p.Seasons.Bows {
		b.estimate(marked(s, names, x.Solid), b.say("wood.bow-dry", message.Text("sheet", marked(s, names, x.Sheet))), x.Dry)
		b.estimate(marked(s, names, x.Solid), b.say("wood.bow-wet", message.Text("sheet", marked(s, names, x.Sheet))), x.Wet)
	}
	return b.tidy()
}

// begin begins a group if anything comes in it.
func (b *builder) begin(key string, n int) {
	if n > 0 {
		b.group(b.say(key))
	}
}

// tidy takes a heading away that nothing stands under.
func (b *builder) tidy() Table {
	delete(b.table.Groups, len(b.table.Rows))
	return b.table
}
