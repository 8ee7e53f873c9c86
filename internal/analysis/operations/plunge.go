package operations

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/tool"
)

// plunge tries a cut that begins inside the work with a plunge router: the work is
// clamped, face up, the router's guide runs along an edge, and two stops bound its
// travel. Nothing is too short for it that can be clamped. Cuts that a table makes
// from their open end, and those on edges and ends, where the router has nothing to
// stand on, are left to others.
func (t *trial) plunge(f form, w work, cut piece.Cut) {
	if down, _ := f.down.Axis(); down != piece.AlongThickness || w.long || cut.Kind == piece.Mortise || cut.Kind == piece.ScrewSlot || leans(cut.Slot) {
		return
	}
	if f.startOpen || f.endOpen || f.near.Nm <= 0 || f.far.Nm >= w.size[f.across].Nm {
		return
	}
	for _, m := range t.shop.Of(tool.Router) {
		if m.Plunges != tool.PlungesYes {
			continue
		}
		cutter, ok := t.cutterFor(m, f, cut, w)
		if !ok {
			continue
		}
		way := t.offered(m, f, w, ByEdge)
		way.Cutter, way.Raise = cutter, true
		way.Size = t.ledger.Leaf("cutter."+cutter.Name+".diameter", cutter.Diameter, ledger.Bought, "")
		way.Opens = mouthOf(cutter, f.depth.Nm)
		t.across(&way, f.sides(w), m, step(cutter))
		if heights, err := tool.Passes(f.depth.Nm, tool.DepthPerPass(cutter, t.shop.Rules.PassDepth).Value); err == nil {
			way.Heights = heights
			t.offer(way)
		}
	}
}
