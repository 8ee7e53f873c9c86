package blanks

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// panel makes strips and the panel that is glued up from them.
func (d *deriver) panel(row plan.PartRow, s Stock, n int, parts []address.Address, length, width ledger.Figure, widest unit.Length, why []message.Message) {
	id := fmt.Sprintf("panel.%s.%d", row.Mark, n)
	room := widest - 2*d.Allowances.Strip.Nm
	widths := d.strips(row, parts[0], width, room)
	if widths == nil {
		d.complain(row, message.New("blanks.no-strips", message.Text("mark", row.Mark), message.Length("width", width.Nm), message.Length("room", room)))
		return
	}
	panel := plan.Workpiece{
		ID: id, Kind: plan.PanelPiece, Mark: row.Mark, Parts: parts, Count: 1,
		Material: row.Material, Length: length, Width: width, Thickness: row.Thickness,
		Why: append(why, message.New("blanks.glued-up", message.Length("width", width.Nm),
			message.Length("widest", widest), message.Count("strips", len(widths)))),
	}
	panel.Why = append(panel.Why, d.thin(row, s, room)...)
	if d.Limits.Plane > 0 && width.Nm > d.Limits.Plane {
		panel.Why = append(panel.Why, message.New("blanks.wider-than-planer",
			message.Length("width", width.Nm), message.Length("plane", d.Limits.Plane)))
	}
	joint := d.Ledger.Less(id+".start", d.Allowances.Edge, d.Allowances.Edge, d.Allowances.Edge)
	for i, w := range widths {
		strip := fmt.Sprintf("strip.%s.%d.%d", row.Mark, n, i+1)
		d.add(plan.Workpiece{
			ID: strip, Kind: plan.StripPiece, Mark: row.Mark, Count: 1, Material: row.Material, Stock: s.ID,
			Length: length, Width: d.Ledger.Sum(strip+".width", w, d.Allowances.Strip, d.Allowances.Strip), Thickness: row.Thickness,
		})
		panel.From = append(panel.From, strip)
		if joint = d.Ledger.Sum(fmt.Sprintf("%s.joint.%d", id, i+1), joint, w); i < len(widths)-1 {
			panel.Joints = append(panel.Joints, joint)
		}
	}
	d.add(panel)
}
