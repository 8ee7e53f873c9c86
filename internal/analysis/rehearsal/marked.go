package rehearsal

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
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
		if m := list[0]; m.card.Cutter != "" {
			r.holes(want, c, row, m)
		}
	case c.Bore != nil:
		boreMarks(want, c.Bore)
	case c.Dip != nil:
		dipMarks(want, c.Dip)
	case c.Slice != nil:
		sliceMarks(want, c.Slice)
		r.sled(c, row, list[0])
	case c.Pocket != nil && !c.Pocket.Through:
		want["depth"] = c.Pocket.Depth.Nm
	case c.Ease != nil:
		r.easeMarks(want, c, row, list[0])
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

// holes are the figures of a mortise that is drilled: its first and last hole touch
// its ends, the drill goes in, and where the ends are round it is as wide.
func (r *rehearsal) holes(want map[string]unit.Length, c piece.Cut, row plan.PartRow, m made) {
	size := m.card.CutterSize.Nm
	want["drill"], want["first hole"], want["last hole"] = size, c.Slot.From.Nm+size/2, c.Slot.To.Nm-size/2
	wide := c.Slot.Far.Nm - c.Slot.Near.Nm
	if m.card.CutterShape != string(tool.Drill) || size > wide || want["first hole"] >= want["last hole"] {
		r.fail(CodeCut, "rehearsal.wrong-bottom", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
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
	if s.LeanNear.Nm != 0 {
		want["near wall at the foot"] = s.Near.Nm + s.LeanNear.Nm
	}
	if s.LeanFar.Nm != 0 {
		want["far wall at the foot"] = s.Far.Nm - s.LeanFar.Nm
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
	if s := b.Sink; s != nil {
		word := "countersink"
		if s.Flat {
			word = "counterbore"
		}
		want[word], want[word+" depth"] = s.Diameter.Nm, s.Depth.Nm
	}
}

// easeMarks are the figures of an edge; a machine's cutter must leave just that.
func (r *rehearsal) easeMarks(want map[string]unit.Length, c piece.Cut, row plan.PartRow, m made) {
	word, shape := "radius", tool.RoundOver
	switch {
	case c.Ease.Chamfer:
		word, shape = "leg of the chamfer", tool.Chamfer
	case c.Ease.Cove:
		shape = tool.Cove
	}
	want[word] = c.Ease.Radius.Nm
	if c.Ease.To.Nm != 0 {
		want["begins along the edge"], want["ends along the edge"] = c.Ease.From.Nm, c.Ease.To.Nm
	}
	if m.card.Cutter != "" && (m.card.CutterShape != string(shape) || m.card.CutterSize.Nm != c.Ease.Radius.Nm || c.Ease.To.Nm != 0) {
		r.fail(CodeCut, "rehearsal.wrong-bottom", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
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
