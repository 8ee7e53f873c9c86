package operations

import (
	"cmp"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/tool"
)

// mortiseWays returns the ways to make a mortise by machine: at the router table
// between two stops with a cutter of just its width, or a row of holes at the drill
// press, chopped out to the lines.
func mortiseWays(shop Workshop, l *ledger.Ledger, cut piece.Cut, finished, long *work) ([]Way, []message.Message) {
	routed, refused := slotWays(shop, l, cut, finished, long)
	width := cut.Slot.Far.Nm - cut.Slot.Near.Nm
	routed = slices.DeleteFunc(routed, func(w Way) bool {
		round := cut.Slot.EndRadius.Nm
		return w.Kind != tool.RouterTable || w.Cutter.Diameter != width || round != 0 && round != w.Cutter.Diameter/2
	})
	if way, ok := drilled(shop, l, cut, *finished); ok {
		return append(routed, way), nil
	}
	refused = slices.DeleteFunc(refused, func(m message.Message) bool { return m.Key == "operations.saw-runs-through" })
	return routed, append(refused, message.New("operations.no-drill", message.Length("width", width), message.Length("depth", cut.Slot.Depth.Nm)))
}

// drilled is the row of holes: with the widest drill that goes in, no less than six
// tenths of the width (the rest is chopped), where two holes have room. Common
// practice, no source.
func drilled(shop Workshop, l *ledger.Ledger, cut piece.Cut, w work) (Way, bool) {
	s := cut.Slot
	open, _ := s.Open.Axis()
	width := s.Far.Nm - s.Near.Nm
	if open == piece.AlongLength || s.StartOpen || s.EndOpen || s.Corner.Nm != 0 || leans(s) {
		return Way{}, false
	}
	for _, m := range shop.Of(tool.DrillPress) {
		var fit []tool.Cutter
		for _, c := range shop.Cutters {
			if c.Shape == tool.Drill && c.Diameter <= width && 10*c.Diameter >= 6*width && 2*c.Diameter <= s.To.Nm-s.From.Nm && c.Reaches(s.Depth.Nm) && m.Takes(c) == nil {
				fit = append(fit, c)
			}
		}
		if len(fit) == 0 || len(m.Check(tool.Size{Length: w.size[0].Nm})) > 0 {
			continue
		}
		way := handSlot(cut, w)
		way.Cutter = slices.MaxFunc(fit, func(a, b tool.Cutter) int {
			return cmp.Or(cmp.Compare(a.Diameter, b.Diameter), cmp.Compare(b.Name, a.Name))
		})
		way.Machine, way.Kind, way.Guide, way.Down = m.Name, m.Kind, ByTable, s.Open.Opposite()
		way.Size = l.Leaf("cutter."+way.Cutter.Name+".diameter", way.Cutter.Diameter, ledger.Bought, "")
		return way, true
	}
	return Way{}, false
}

// vee chooses the cutter that leaves walls which lean as the slot's do and meet at
// its foot: one whose point is as steep. A V cutter's edges rise half its diameter
// over their length.
func (t *trial) vee(m tool.Machine, fit []tool.Cutter, f form, s piece.Slot, work work) (tool.Cutter, bool) {
	width := f.far.Nm - f.near.Nm
	inside := f.near.Nm > 0 && f.far.Nm < work.size[f.across].Nm && f.startOpen && f.endOpen
	for _, c := range fit {
		if c.Shape != tool.VGroove || c.CuttingLength <= 0 || !inside || s.LeanNear.Nm != s.LeanFar.Nm || (width-2*s.LeanNear.Nm).Abs() > veeSlack {
			continue
		}
		if opens := veeMouth(c, f.depth.Nm); (opens - width).Abs() <= veeSlack {
			return c, true
		}
	}
	t.refuse("operations.no-leaning-cutter", message.Text("machine", m.Name))
	return tool.Cutter{}, false
}
