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
	if d.Limits.Plane > 0 {
		room = min(room, d.Limits.Plane-2*d.Allowances.Strip.Nm)
	}
	widths := d.shared(glued{row, s, parts, width, room})
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
	joint := d.Ledger.Less(id+".start", d.Allowances.Edge, d.Allowances.Edge, d.Allowances.Edge)
	var strips []plan.Workpiece
	for i, w := range widths {
		strip := fmt.Sprintf("strip.%s.%d.%d", row.Mark, n, i+1)
		strips = append(strips, plan.Workpiece{
			ID: strip, Kind: plan.StripPiece, Mark: row.Mark, Count: 1, Material: row.Material, Stock: s.ID,
			Length: length, Width: d.Ledger.Sum(strip+".width", w, d.Allowances.Strip, d.Allowances.Strip), Thickness: row.Thickness,
		})
		if joint = d.Ledger.Sum(fmt.Sprintf("%s.joint.%d", id, i+1), joint, w); i < len(widths)-1 {
			panel.Joints = append(panel.Joints, joint)
		}
	}
	for _, s := range strips {
		d.add(s)
	}
	d.planed(&panel, n, strips, widths)
	d.add(panel)
}

// planed says what a panel is glued up from: its strips, where it goes through the
// thicknesser in one; else narrow panels that do, as wide as they may be from the low
// edge on, and strips that are left over.
func (d *deriver) planed(panel *plan.Workpiece, n int, strips []plan.Workpiece, widths []ledger.Figure) {
	if d.Limits.Plane <= 0 || panel.Width.Nm <= d.Limits.Plane {
		for _, s := range strips {
			panel.From = append(panel.From, s.ID)
		}
		return
	}
	panel.InWidths = true
	for i := 0; i < len(strips); {
		k, wide := i+1, widths[i].Nm
		for k < len(strips) && wide+widths[k].Nm <= d.Limits.Plane {
			wide, k = wide+widths[k].Nm, k+1
		}
		if k == i+1 {
			panel.From = append(panel.From, strips[i].ID)
			i = k
			continue
		}
		id := fmt.Sprintf("narrow.%s.%d.%d", panel.Mark, n, len(panel.From)+1)
		narrow := plan.Workpiece{
			ID: id, Kind: plan.NarrowPanel, Mark: panel.Mark, Count: 1, Material: panel.Material, Length: panel.Length,
			Width: d.Ledger.Sum(id+".width", widths[i:k]...), Thickness: panel.Thickness,
		}
		at := widths[i]
		for j := i; j < k; j++ {
			narrow.From = append(narrow.From, strips[j].ID)
			if j > i {
				narrow.Joints = append(narrow.Joints, at)
				at = d.Ledger.Sum(fmt.Sprintf("%s.joint.%d", id, j), at, widths[j])
			}
		}
		d.add(narrow)
		panel.From = append(panel.From, id)
		i = k
	}
	panel.Why = append(panel.Why, message.New("blanks.wider-than-planer",
		message.Length("width", panel.Width.Nm), message.Length("plane", d.Limits.Plane), message.Count("widths", len(panel.From))))
}
