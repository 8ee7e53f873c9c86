package rehearsal

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// marked compares what is marked out for hand, drill press or band saw with the
// design: it is said once, from the low sides of the part.
func (r *rehearsal) marked(row plan.PartRow, c piece.Cut, list []made) {
	if len(list) > 1 {
		r.fail(CodeTwice, "rehearsal.cut-twice", c.Address, message.Text("mark", row.Mark))
	}
	if c.Slice != nil && isLeaning(list[0].place) {
		r.leaning(row, c, list[0])
		return
	}
	want := map[string]unit.Length{}
	switch {
	case c.Slot != nil:
		slotMarks(want, c.Slot)
	case c.Bore != nil:
		boreMarks(want, c.Bore)
	case c.Dip != nil:
		dipMarks(want, c.Dip)
	case c.Slice != nil:
		sliceMarks(want, c.Slice)
	case c.Ease != nil:
		want["radius"] = c.Ease.Radius.Nm
	}
	settings := list[0].place.Settings
	for _, s := range settings {
		w, ok := want[s.Word]
		delete(want, s.Word)
		if !ok || !same(w, s.Figure.Nm) {
			r.fail(CodeCut, "rehearsal.marked-elsewhere", c.Address, message.Text("mark", row.Mark), message.Word("word", "setting."+s.Word),
				message.Length("is", s.Figure.Nm), message.Length("want", w))
		}
	}
	if len(want) > 0 {
		r.fail(CodeMissing, "rehearsal.mark-missing", c.Address, message.Text("mark", row.Mark), message.Count("figures", len(want)))
	}
}

func slotMarks(want map[string]unit.Length, s *piece.Slot) {
	across, run := string(piece.SideOf(s.Across(), false)), string(piece.SideOf(s.Run, false))
	want["from "+across], want["far side from "+across] = s.Near.Nm, s.Far.Nm
	if !s.StartOpen {
		want["from "+run] = s.From.Nm
	}
	if !s.EndOpen {
		want["far side from "+run] = s.To.Nm
	}
	want["depth"] = s.Depth.Nm
}

func boreMarks(want map[string]unit.Length, b *piece.Bore) {
	open, _ := b.Open.Axis()
	n := 0
	for axis := piece.AlongLength; axis <= piece.AlongThickness; axis++ {
		if axis != open {
			want["centre from "+string(piece.SideOf(axis, false))] = b.At[n].Nm
			n++
		}
	}
	want["drill"] = b.Diameter.Nm
	if !b.Through {
		want["depth"] = b.Depth.Nm
	}
}

func dipMarks(want map[string]unit.Length, d *piece.Dip) {
	along := piece.EndLow
	if open, _ := d.Open.Axis(); open == piece.AlongLength {
		along = piece.EdgeLow
	}
	want["middle from "+string(along)], want["width"], want["depth"] = d.Centre.Nm, d.Chord.Nm, d.Depth.Nm
	if d.Depth.Nm > 0 {
		// (chord² + 4 depth²) / (8 depth), in millimetres: the circle through the
		// ends and the middle of the arc.
		c, h := d.Chord.Nm.Millimetres(), d.Depth.Nm.Millimetres()
		want["radius of the sanding block"] = unit.FromMillimetres((float64(c*c) + float64(4*float64(h*h))) / (8 * h))
	}
}
