package contents

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
)

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{
		"seat of a rod": seat, "seat of a lined rod": lined,
		"seat with a corner down": prism(share.CornerDown), "seat on a flat": prism(share.FlatDown),
	}
}

// Derive returns how every thing that has a channel is held, in the order of
// the contents. A thing whose figures are no lengths that lie anywhere (a channel
// without a round bottom, a rod without a diameter) is left out.
func Derive(p *piece.Piece, l *ledger.Ledger) []plan.Held {
	d := deriver{cuts: map[address.Address]piece.Cut{}, series: map[address.Address]piece.Series{},
		troughs: map[address.Address][]piece.Cut{}, parts: map[address.Address]piece.Part{}, ledger: l}
	for _, c := range p.Cuts {
		d.cuts[c.Address] = c
		if c.Kind == piece.Trough && c.Slot != nil {
			d.troughs[c.Part] = append(d.troughs[c.Part], c)
		}
	}
	for _, s := range p.Series {
		d.series[s.Address] = s
	}
	for _, part := range p.Parts {
		d.parts[part.Address] = part
	}
	var out []plan.Held
	for _, contents := range p.Contents {
		for _, t := range contents.Things {
			if held, ok := d.held(t, contents.Lining); ok {
				held.Of = contents.Address
				out = append(out, held)
			}
		}
	}
	return out
}

type deriver struct {
	cuts    map[address.Address]piece.Cut
	series  map[address.Address]piece.Series
	troughs map[address.Address][]piece.Cut // by part
	parts   map[address.Address]piece.Part
	ledger  *ledger.Ledger
}

func (d deriver) held(t piece.Thing, lining piece.Figure) (plan.Held, bool) {
	cut, ok := d.cuts[t.Cut]
	if !ok || cut.Slot == nil {
		return plan.Held{}, false
	}
	held := plan.Held{Thing: t.Key, In: t.In, Cut: t.Cut, Cutter: cut.Cutter, Depth: cut.Slot.Depth}
	if !d.sinks(&held, t, cut, lining) {
		return plan.Held{}, false
	}
	held.Land = landBeside(d.series[cut.Series], cut.Address)
	if t.HeadWidth.Nm > 0 {
		d.head(&held, t, cut)
	}
	return held, true
}

// head finds the trough at an end of the channel and how far the head hangs clear
// of its bottom: the trough's depth less what the rod sinks and the head is thicker
// on either side.
func (d deriver) head(held *plan.Held, t piece.Thing, channel piece.Cut) {
	part := d.parts[t.In]
	run := channel.Slot.Run
	for _, low := range []bool{true, false} {
		for _, c := range d.troughs[t.In] {
			s := c.Slot
			if s.Open != channel.Slot.Open || s.Across() != run || low && s.Near.Nm > 0 || !low && s.Far.Nm < part.Sizes()[run].Nm {
				continue
			}
			name := string(t.Cut) + ".head"
			thicker := d.ledger.Half(name+".thicker", d.ledger.Less(name+".thicker.both", t.HeadWidth, t.Diameter))
			held.HeadLow = low
			held.HeadFree = d.ledger.Less(name+".free", s.Depth, held.Sinks, thicker)
			return
		}
	}
}

// landBeside returns the lesser of the two stretches of wood beside a channel,
// lands or margins.
func landBeside(s piece.Series, cut address.Address) ledger.Figure {
	i := slices.IndexFunc(s.Terms, func(t piece.Term) bool { return t.Air && t.Of == cut })
	if i < 1 || i+1 >= len(s.Terms) {
		return ledger.Figure{}
	}
	before, after := s.Terms[i-1].Figure, s.Terms[i+1].Figure
	if before.Nm < after.Nm {
		return before
	}
	return after
}
