package operations

import (
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// saw tries the form at every table saw: through cuts with a flat bottom, kerf
// beside kerf at one height.
func (t *trial) saw(f form, w work) {
	for _, m := range t.shop.Of(tool.TableSaw) {
		if !f.startOpen || !f.endOpen || f.corner.Nm > 0 {
			t.refuse("operations.saw-runs-through", message.Text("machine", m.Name))
			continue
		}
		guide, ok := t.fits(m, f, w)
		if !ok || !t.blade(m, f) {
			continue
		}
		fences := f.fences(w)
		opens := f.opensAtFence(w)
		if len(fences) == 0 {
			continue
		}
		way := t.offered(m, f, w, guide)
		way.Clears = opens
		way.Size = t.ledger.Leaf("machine."+m.Name+".kerf", m.Kerf.Value, ledger.Bought, "")
		way.Opens = way.Size.Nm
		way.Heights = []unit.Length{f.depth.Nm}
		t.across(&way, fences, m, step(tool.Cutter{Diameter: m.Kerf.Value}))
		t.offer(way)
	}
}

// blade reports whether the saw's blade goes into the cut and reaches its depth.
func (t *trial) blade(m tool.Machine, f form) bool {
	switch width := f.far.Nm - f.near.Nm; {
	case !m.Kerf.Known() || width < m.Kerf.Value:
		t.refuse("operations.narrower-than-kerf", message.Text("machine", m.Name), message.Length("width", width), message.Length("kerf", m.Kerf.Value))
		return false
	case m.Greatest.Thickness.Known() && f.depth.Nm > m.Greatest.Thickness.Value:
		t.refuse("operations.deeper-than-blade", message.Text("machine", m.Name), message.Length("depth", f.depth.Nm), message.Length("limit", m.Greatest.Thickness.Value))
		return false
	}
	return true
}

// sled tries a socket of a box joint: the work stands on its end against a
// sled's fence, edge against a stop, at the router table with a cutter of just
// the socket's width, or else at the saw, kerf beside kerf.
func (t *trial) sled(f form, w work) {
	down, _ := f.down.Axis()
	if down != piece.AlongLength || f.run != piece.AlongThickness {
		t.refuse("operations.socket-not-on-end")
		return
	}
	fences := []piece.Side{piece.SideOf(f.across, false), piece.SideOf(f.across, true)}
	width := f.far.Nm - f.near.Nm
	for _, m := range t.shop.Of(tool.RouterTable) {
		if !t.long(m, w) {
			continue
		}
		for _, c := range t.shop.Cutters {
			if c.Shape != tool.Straight || c.Diameter != width || !c.Reaches(f.depth.Nm) || m.Takes(c) != nil {
				continue
			}
			way := t.offered(m, f, w, BySled)
			way.Cutter = c
			way.Size = t.ledger.Leaf("cutter."+c.Name+".diameter", c.Diameter, ledger.Bought, "")
			way.Opens = way.Size.Nm
			if heights, err := tool.Passes(f.depth.Nm, tool.DepthPerPass(c, t.shop.Rules.PassDepth).Value); err == nil {
				way.Heights = heights
				t.across(&way, fences, m, step(c))
				t.offer(way)
			}
		}
	}
	for _, m := range t.shop.Of(tool.TableSaw) {
		if !t.blade(m, f) || !t.long(m, w) {
			continue
		}
		way := t.offered(m, f, w, BySled)
		way.Size = t.ledger.Leaf("machine."+m.Name+".kerf", m.Kerf.Value, ledger.Bought, "")
		way.Opens = way.Size.Nm
		way.Heights = []unit.Length{f.depth.Nm}
		t.across(&way, fences, m, step(tool.Cutter{Diameter: m.Kerf.Value}))
		t.offer(way)
	}
}

// long reports whether the part is long enough for the machine.
func (t *trial) long(m tool.Machine, w work) bool {
	excess := m.Check(tool.Size{Length: max(w.size[0].Nm, w.size[1].Nm)})
	if len(excess) > 0 {
		t.refused = append(t.refused, excess[0].Message())
	}
	return len(excess) == 0
}
