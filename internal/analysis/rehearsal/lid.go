package rehearsal

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// mostWeb is the most that may be left of a wall for the knife. Common practice, no
// source.
const mostWeb = 3 * unit.Millimetre

// lid carries out how a wall of a closed box is sawn through: on its outside, the lid
// against the fence, the blade a little lower than the wall is thick. The kerf must lie
// between what is planed off base and lid, and nothing may come loose at the saw.
func (r *rehearsal) lid(row plan.PartRow, c piece.Cut, list []made) {
	for _, m := range list {
		s := r.Plan.Piece.SawnBy(&c)
		if s == nil {
			r.fail(CodeMissing, "rehearsal.cut-missing", c.Address, message.Text("mark", row.Mark))
			return
		}
		fence, okFence := setting(m.place.Settings, "blade to fence")
		height, okHeight := sunk(m.card)
		part := r.partAt(c)
		if !okFence || !okHeight || part == nil || m.place.Down != c.Slot.Open || m.place.Fence != part.Frame.SideToward(piece.ToUp) || !handed(m.place.Leads, m.place.Fence, m.place.Down) {
			r.fail(CodeCut, "rehearsal.cannot-lie-so", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
			return
		}
		top := s.Whole.Nm - fence.Figure.Nm // over the box's foot
		is, want := span{top - m.card.CutterSize.Nm, top}, span{s.Base.Nm + s.Clean.Nm, s.Whole.Nm - s.Lid.Nm - s.Clean.Nm}
		if !lies(is, want, unit.Micrometre) {
			r.lands(row, c, c.Slot.Across(), is, want)
		}
		if web := c.Slot.Depth.Nm - height.Figure.Nm; web <= 0 || web > mostWeb {
			r.fail(CodeHold, "rehearsal.lid-web", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID), message.Length("left", web), message.Length("most", mostWeb))
		}
	}
}

func (r *rehearsal) partAt(c piece.Cut) *piece.Part {
	for i := range r.Plan.Piece.Parts {
		if r.Plan.Piece.Parts[i].Address == c.Part {
			return &r.Plan.Piece.Parts[i]
		}
	}
	return nil
}
