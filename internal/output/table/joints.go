package table

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Joints lists how the parts are joined, one row for each joint of the document
// that comes out alike: what goes into what, how deep, how far it is stopped, the
// glue, and the fasteners with their distance from the ends.
func Joints(p *plan.Plan, s Speech) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.joints").
		column("column.joint", text, 1).column("column.parts", text, 1.8).column("column.quantity", number, 0.5).
		column("column.depth", length, 0.6).column("column.stopped", length, 0.8).column("column.glue", text, 0.8).column("column.fasteners", text, 3)
	type row struct {
		first       piece.Joint
		count       int
		goes, takes []string
	}
	var rows []*row
	for _, j := range p.Piece.Joints {
		family := bareFamily(j.Family)
		i := slices.IndexFunc(rows, func(r *row) bool { return bareFamily(r.first.Family) == family && sameJoint(r.first, j) })
		if i < 0 {
			rows = append(rows, &row{first: j})
			i = len(rows) - 1
		}
		r := rows[i]
		r.count++
		r.goes, r.takes = add(r.goes, names.Mark(j.A)), add(r.takes, names.Mark(j.B))
	}
	for _, r := range rows {
		j := r.first
		stopped := ""
		if far := max(j.StopLow.Nm, j.StopHigh.Nm); far > 0 {
			stopped = s.Figure(far)
		}
		depth := ""
		if j.Depth.Nm > 0 {
			depth = b.length(j.Depth)
		}
		parts := b.say("joint-parts", message.Text("goes", strings.Join(names.Marks(r.goes), " ")), message.Text("takes", strings.Join(names.Marks(r.takes), " ")))
		glue := own(s, j.Glue)
		if j.Glue == "" {
			glue = b.say("joint-dry")
		}
		b.row(b.say("joint."+string(j.Kind)), parts, b.count(r.count), depth, stopped, glue, b.held(j))
	}
	return b.table
}

// bareFamily is the joint block of the document, whatever repeat it stands in.
func bareFamily(a address.Address) address.Address {
	steps, err := a.Steps()
	if err != nil {
		return a
	}
	for i := range steps {
		steps[i].Index = 0
	}
	return address.Join(steps...)
}

func sameJoint(a, b piece.Joint) bool {
	if (a.Fasteners == nil) != (b.Fasteners == nil) || (a.Dowels == nil) != (b.Dowels == nil) {
		return false
	}
	if f, g := a.Fasteners, b.Fasteners; f != nil && (f.Kind != g.Kind || f.Count != g.Count || f.Margin.Nm != g.Margin.Nm) {
		return false
	}
	return sameShape(a, b) && a.Kind == b.Kind && a.Depth.Nm == b.Depth.Nm && a.Glue == b.Glue && a.StopLow.Nm == b.StopLow.Nm && a.StopHigh.Nm == b.StopHigh.Nm
}

func add(list []string, mark string) []string {
	if mark == "" || slices.Contains(list, mark) {
		return list
	}
	return append(list, mark)
}

// held says what holds a joint besides glue: its shape, and what is driven through.
func (b *builder) held(j piece.Joint) string {
	shaped, driven := b.shaped(j), b.fasteners(j)
	if shaped != "" && driven != "" {
		return shaped + "; " + driven
	}
	return shaped + driven
}

// fasteners says what is driven through a joint, and where.
func (b *builder) fasteners(j piece.Joint) string {
	switch f, d := j.Fasteners, j.Dowels; {
	case f != nil:
		row := b.say("joint-fasteners", message.Count("n", f.Count), message.Text("kind", f.Kind), message.Text("margin", b.length(f.Margin)))
		if f.Slot.Nm > 0 {
			row += "; " + b.say("joint-slots", message.Text("slot", b.length(f.Slot)))
		}
		return row
	case d != nil:
		return b.say("joint-dowels", message.Count("n", d.Count), message.Text("diameter", b.length(d.Diameter)), message.Text("margin", b.length(d.Margin)),
			message.Text("a", b.length(d.InA)), message.Text("b", b.length(d.InB)))
	}
	return ""
}
