package table

import (
	"strings"

	"scantling/internal/output/naming"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Held lists how each thing lies, under the part that holds it. Things that
// differ by their last letter only and lie alike share a row, which gives the
// least land.
func Held(p *plan.Plan, s Speech) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.held").
		column("column.thing", text, 1.05).column("column.cutter", text, 1.92).
		column("column.depth", length, 0.85).column("column.sinks", length, 0.85).column("column.proud", length, 0.85).column("column.land", length, 0.85)
	var in string
	for i := 0; i < len(p.Held); {
		h := p.Held[i]
		things, land := []string{h.Thing}, h.Land.Nm
		j := i + 1
		for ; j < len(p.Held) && together(h, p.Held[j]); j++ {
			things = append(things, lastWord(p.Held[j].Thing))
			land = least(land, p.Held[j].Land.Nm)
		}
		if string(h.In) != in {
			in = string(h.In)
			b.group(names.Address(h.In) + " · " + s.Own(names.Mark(h.In)))
		}
		b.row(s.Own(strings.Join(things, " ")), own(s, h.Cutter), b.length(h.Depth), b.length(h.Sinks), b.length(h.Proud), s.Figure(land))
		i = j
	}
	return b.table
}

func least(a, b unit.Length) unit.Length {
	if a == 0 || b != 0 && b < a {
		return b
	}
	return a
}

func together(a, b plan.Held) bool {
	return a.In == b.In && a.Cutter == b.Cutter && a.Depth.Nm == b.Depth.Nm && a.Sinks.Nm == b.Sinks.Nm && a.Proud.Nm == b.Proud.Nm &&
		strings.TrimSuffix(a.Thing, lastWord(a.Thing)) == strings.TrimSuffix(b.Thing, lastWord(b.Thing)) && a.Thing != lastWord(a.Thing)
}

func lastWord(s string) string { return s[strings.LastIndexByte(s, ' ')+1:] }

// Readings lists what to take for one measure, with room to write.
func Readings(p *plan.Plan, m plan.Measure, s Speech) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.readings").
		column("column.where", text, 2).column("column.what", text, 1.4).column("column.planned", length, 1).column("column.found", length, 1)
	for _, r := range m.Readings {
		found := ""
		if r.Found != nil {
			found = b.length(*r.Found)
		}
		b.row(names.Address(r.Of), b.say("reading."+r.What), Expected(r, s), found)
	}
	return b.table
}

// Expected says what a reading should come to.
func Expected(r plan.Reading, s Speech) string {
	if r.Planned.Nm != 0 {
		return s.Figure(r.Planned.Nm)
	}
	b := builder{speech: s}
	if r.What == "diagonals" {
		return b.say("reading.even")
	}
	return b.say("reading.nothing")
}

// Seasons lists what the year does to every fit; parts of one mark that fare
// alike share a row.
func Seasons(p *plan.Plan, s Speech) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.seasons").
		column("column.mark", text, 0.7).column("column.moves", text, 1.4).column("column.where", text, 1).column("column.species", text, 1.6).
		column("column.size", length, 1).column("column.leave", length, 1).column("column.at-wet", length, 1).column("column.at-dry", length, 1)
	seen := map[string]bool{}
	for _, c := range p.Clearances {
		row, _ := names.RowOf(c.Moves)
		name := names.Address(c.Moves)
		if len(row.Members) > 0 {
			name = names.Row(row)
		}
		cells := []string{own(s, row.Mark), name, b.say("across." + c.Across), s.Own(c.Species), b.length(c.Size), b.length(c.Leave), b.length(c.AtWet), b.length(c.AtDry)}
		if k := strings.Join(cells, "\n"); !seen[k] {
			seen[k] = true
			b.row(cells...)
		}
	}
	return b.table
}
