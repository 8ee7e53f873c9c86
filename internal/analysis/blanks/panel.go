package blanks

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// panel makes strips and the panel that is glued up from them.
func (d *deriver) panel(row plan.PartRow, s Stock, n int, parts []address.Address, length, width ledger.Figure, widest unit.Length, why []message.Message) {
	id := fmt.Sprintf("panel.%s.%d", row.Mark, n)
	widths := d.strips(row, parts[0], width, widest)
	if widths == nil {
		d.refuse(row)
		return
	}
	panel := plan.Workpiece{
		ID: id, Kind: plan.PanelPiece, Mark: row.Mark, Parts: parts, Count: 1,
		Material: row.Material, Length: length, Width: width, Thickness: row.Thickness,
		Why: append(why, message.New("blanks.glued-up", message.Length("width", width.Nm),
			message.Length("widest", widest), message.Count("strips", len(widths)))),
	}
	if d.Limits.Plane > 0 && width.Nm > d.Limits.Plane {
		panel.Why = append(panel.Why, message.New("blanks.wider-than-planer",
			message.Length("width", width.Nm), message.Length("plane", d.Limits.Plane)))
	}
	joint := d.Ledger.Less(id+".start", d.Allowances.Edge, d.Allowances.Edge, d.Allowances.Edge)
	for i, w := range widths {
		strip := fmt.Sprintf("strip.%s.%d.%d", row.Mark, n, i+1)
		d.out = append(d.out, plan.Workpiece{
			ID: strip, Kind: plan.StripPiece, Mark: row.Mark, Count: 1, Material: row.Material, Stock: s.ID,
			Length: length, Width: d.Ledger.Sum(strip+".width", w, d.Allowances.Strip, d.Allowances.Strip), Thickness: row.Thickness,
		})
		panel.From = append(panel.From, strip)
		if joint = d.Ledger.Sum(fmt.Sprintf("%s.joint.%d", id, i+1), joint, w); i < len(widths)-1 {
			panel.Joints = append(panel.Joints, joint)
		}
	}
	d.out = append(d.out, panel)
}

// strips shares a panel's width into strips no wider than widest, their joints
// on lands where the part has channels. It returns nil if that cannot be.
func (d *deriver) strips(row plan.PartRow, member address.Address, width ledger.Figure, widest unit.Length) []ledger.Figure {
	room := widest - 2*d.Allowances.Strip.Nm
	if room <= 0 {
		return nil
	}
	n := int((width.Nm + room - 1) / room)
	for ; n <= 64; n++ {
		if w := d.shareOut(row, member, width, n, room); w != nil {
			return w
		}
	}
	return nil
}

// shareOut tries n strips: equal ones, or with every joint moved to the middle
// of the nearest land.
func (d *deriver) shareOut(row plan.PartRow, member address.Address, width ledger.Figure, n int, room unit.Length) []ledger.Figure {
	lands := d.lands(member)
	if len(lands) == 0 {
		var out []ledger.Figure
		for i := range n {
			out = append(out, d.Ledger.Share(fmt.Sprintf("panel.%s.strip.%d", row.Mark, i+1), width, n, i+1))
		}
		return out
	}
	edge := d.Allowances.Edge
	var out []ledger.Figure
	last := d.Ledger.Less("panel."+row.Mark+".start", edge, edge)
	for i, ideal := range width.Nm.Share(n)[:n-1] {
		target := last.Nm + ideal - edge.Nm
		at := nearest(lands, target)
		end := d.Ledger.Sum(fmt.Sprintf("panel.%s.joint.%d", row.Mark, i+1), at, edge)
		w := d.Ledger.Less(fmt.Sprintf("panel.%s.strip.%d", row.Mark, i+1), end, last)
		if w.Nm <= 0 || w.Nm > room {
			return nil
		}
		out, last = append(out, w), end
	}
	w := d.Ledger.Less("panel."+row.Mark+".strip.last", width, last)
	if w.Nm <= 0 || w.Nm > room {
		return nil
	}
	return append(out, w)
}

// lands returns the middles of the lands of a part's rows across its width.
func (d *deriver) lands(member address.Address) []ledger.Figure {
	var out []ledger.Figure
	for _, s := range d.series[member] {
		if s.Across != piece.AlongWidth {
			continue
		}
		at := d.Ledger.Leaf("edge", 0, ledger.Derived, "")
		for i, t := range s.Terms {
			if !t.Air && i > 0 && i < len(s.Terms)-1 {
				name := fmt.Sprintf("%s.land.%d", s.Address, i)
				out = append(out, d.Ledger.Sum(name, at, d.Ledger.Half(name+".half", t.Figure)))
			}
			at = d.Ledger.Sum(fmt.Sprintf("%s.term.%d", s.Address, i), at, t.Figure)
		}
	}
	return out
}

func nearest(lands []ledger.Figure, to unit.Length) ledger.Figure {
	best := lands[0]
	for _, l := range lands[1:] {
		if (l.Nm - to).Abs() < (best.Nm - to).Abs() {
			best = l
		}
	}
	return best
}
