package table

import (
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Stowed lists the inside sizes that jars, boxes, sheets and coins need, each as a
// sum that adds up as it is printed, with what is clear there and what is spare.
// Places that are alike share their rows.
func Stowed(p *plan.Plan, s Speech, show unit.Show) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.stowed").
		column("column.inside", text, 0.7).column("column.sum", text, 3.6).
		column("column.needs", length, 0.8).column("column.has", length, 0.8).column("column.spare", length, 0.8)
	seen := map[string]bool{}
	for i := range p.Stowed {
		x := &p.Stowed[i]
		var rows [][]string
		for axis, what := range []string{"size.wide", "size.deep", "size.high"} {
			cells := []string{b.say(what), b.addends(x.Sums[axis], show), s.Figure(show.Round(x.Needs[axis].Nm)), "–", "–"}
			if x.Has[axis].Entry != 0 {
				cells[3], cells[4] = s.Figure(x.Has[axis].Nm), s.Figure(x.Spare[axis].Nm)
			}
			rows = append(rows, cells)
		}
		title := b.title(x, names)
		key := title
		for _, r := range rows {
			key += "\n" + strings.Join(r, "\t")
		}
		if seen[key] {
			continue
		}
		seen[key] = true
		b.group(title)
		for _, r := range rows {
			b.row(r...)
		}
	}
	return b.table
}

// title says what stands where: how many in how many places, and how many more
// would still go in.
func (b *builder) title(x *plan.Stowed, names *naming.Names) string {
	out := b.say("table.stowed-count", message.Text("contents", names.Address(x.Of)), message.Count("count", x.Count), message.Count("places", x.Places))
	if x.In != "" {
		out += " · " + names.Address(x.In)
	}
	if len(x.Beside) > 0 {
		out += " · " + b.say("table.stowed-beside", message.Word("along", "along."+x.Along))
	}
	if x.More > 0 {
		out += " · " + b.say("table.stowed-more", message.Count("more", x.More))
	}
	return out
}

// addends writes a sum whose terms add up as they are printed.
func (b *builder) addends(all []piece.Addend, show unit.Show) string {
	terms := make([]unit.Length, len(all))
	for i, a := range all {
		terms[i] = a.Figure.Nm
	}
	var out []string
	for i, shown := range unit.ShowRow(terms, show) {
		times, each := all[i].Times, all[i].Each.Nm
		args := []message.Arg{message.Count("times", times), message.Word("what", "addend."+all[i].Word), message.Text("figure", b.speech.Figure(shown))}
		switch {
		case times < 2:
			out = append(out, b.say("table.addend", args...))
		case show.Round(each) == each && unit.Length(times)*each == shown:
			out = append(out, b.say("table.addends", append(args, message.Text("each", b.speech.Figure(each)))...))
		default: // what one takes is finer than what is printed
			out = append(out, b.say("table.addend-in", args...))
		}
	}
	return strings.Join(out, " + ")
}
