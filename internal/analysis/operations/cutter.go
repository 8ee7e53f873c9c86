package operations

import (
	"cmp"
	"slices"

	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/share"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// cutterFor chooses the router cutter: the one that the design asks for, the
// round-nose of just the corner's radius, the narrowest straight cutter that
// makes a rebate in one path (the fence covers the rest), or the widest that
// goes into a groove.
func (t *trial) cutterFor(m tool.Machine, f form, cut piece.Cut, w work) (tool.Cutter, bool) {
	opensAtFence := f.opensAtFence(w)
	fit := t.fit[:0]
	for _, c := range t.shop.Cutters {
		if m.Takes(c) == nil && c.Reaches(f.depth.Nm) {
			fit = append(fit, c)
		}
	}
	t.fit = fit
	width := f.far.Nm - f.near.Nm
	if leans(cut.Slot) {
		return t.vee(m, fit, f, *cut.Slot, w)
	}
	if f.corner.Nm > 0 {
		return t.roundNose(m, fit, f, cut.Cutter, width)
	}
	if i := slices.IndexFunc(fit, func(c tool.Cutter) bool { return c.Name == cut.Cutter && c.Shape == tool.Straight }); i >= 0 && cut.Cutter != "" {
		if c := fit[i]; c.Diameter <= width || opensAtFence {
			return c, true
		}
	}
	if opensAtFence {
		if c, ok := narrowestOver(fit, width); ok {
			return c, true
		}
	}
	across, err := tool.ForWidth(fit, width, f.depth.Nm)
	if err != nil {
		t.refuse("operations.no-straight-cutter", message.Text("machine", m.Name), message.Length("width", width), message.Length("depth", f.depth.Nm))
		return tool.Cutter{}, false
	}
	return across.Cutter, true
}

func (t *trial) roundNose(m tool.Machine, fit []tool.Cutter, f form, asked string, width unit.Length) (tool.Cutter, bool) {
	var best []tool.Cutter
	for _, c := range fit {
		if c.Shape == tool.RoundNose && c.NoseRadius() == f.corner.Nm {
			best = append(best, c)
		}
	}
	if len(best) == 0 {
		t.refuse("operations.no-round-nose", message.Text("machine", m.Name), message.Length("radius", f.corner.Nm), message.Length("depth", f.depth.Nm))
		return tool.Cutter{}, false
	}
	if i := slices.IndexFunc(best, func(c tool.Cutter) bool { return c.Name == asked }); i > 0 {
		best[0] = best[i]
	}
	if best[0].Diameter > width+unit.Micrometre {
		t.refuse("operations.channel-too-narrow", message.Length("width", width), message.Length("mouth", best[0].Diameter))
		return tool.Cutter{}, false
	}
	return best[0], true
}

// narrowestOver returns the straight cutter of the least diameter that covers a
// width.
func narrowestOver(fit []tool.Cutter, width unit.Length) (tool.Cutter, bool) {
	var wide []tool.Cutter
	for _, c := range fit {
		if c.Shape == tool.Straight && c.Diameter >= width {
			wide = append(wide, c)
		}
	}
	if len(wide) == 0 {
		return tool.Cutter{}, false
	}
	return slices.MinFunc(wide, func(a, b tool.Cutter) int {
		return cmp.Or(cmp.Compare(a.Diameter, b.Diameter), cmp.Compare(a.Name, b.Name))
	}), true
}

// veeSlack is how much wider or narrower than a V channel its cutter may open: what
// rounding a tangent leaves. Common practice, no source.
const veeSlack = 20 * unit.Micrometre

// veeMouth is how wide a V cutter opens at a depth.
func veeMouth(c tool.Cutter, depth unit.Length) unit.Length {
	return unit.FromMillimetres(float64(c.Diameter.Millimetres()*depth.Millimetres()) / c.CuttingLength.Millimetres())
}

// mouthOf is the width that one path leaves at the surface.
func mouthOf(c tool.Cutter, depth unit.Length) unit.Length {
	if c.Shape != tool.RoundNose {
		return c.Diameter
	}
	return share.Groove{Radius: c.NoseRadius(), Depth: depth}.Mouth()
}
